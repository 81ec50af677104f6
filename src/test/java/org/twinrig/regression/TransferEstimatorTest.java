package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

class TransferEstimatorTest {
  private static final BandGrid GRID = BandGrid.covering(100, 10_000, 3);

  /** With three to five units there are fewer sign patterns than a 95 % quantile needs. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 6, 12, 13})
  void theSimultaneousIntervalIsNeverNarrowerThanThePointwise(int units) {
    for (BandOutcome outcome : TransferEstimator.withDefaults().fit(random(units)).bands()) {
      BandOutcome.Fitted fitted = (BandOutcome.Fitted) outcome;
      assertTrue(fitted.simultaneousHalfDb() >= fitted.mean().halfWidthDb());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void fewerThanThreeUnitsGiveNoEstimate(int units) {
    for (BandOutcome outcome : TransferEstimator.withDefaults().fit(random(units)).bands()) {
      assertEquals(
          new BandOutcome.NotFitted(outcome.band(), units, BandOutcome.Why.FEWER_THAN_THREE_UNITS),
          outcome);
    }
  }

  private static PairedUnits random(int units) {
    Random random = new Random(units);
    List<String> names = new ArrayList<>();
    List<Levels> from = new ArrayList<>();
    List<Levels> to = new ArrayList<>();
    for (int i = 0; i < units; i++) {
      names.add("Rowan " + i);
      from.add(Levels.copyOf(GRID, random.doubles(GRID.size(), -3, 3).toArray()));
      to.add(Levels.copyOf(GRID, random.doubles(GRID.size(), -3, 3).toArray()));
    }
    List<List<Integer>> ones = Collections.nCopies(units, Collections.nCopies(GRID.size(), 1));
    double[] none = new double[GRID.size()];
    java.util.Arrays.fill(none, Double.NaN);
    Levels unknown = Levels.copyOf(GRID, none);
    return new PairedUnits(
        "kind",
        GRID,
        names,
        new PairedUnits.OnFixture(from, ones, unknown, from.stream().map(List::of).toList()),
        new PairedUnits.OnFixture(to, ones, unknown, to.stream().map(List::of).toList()));
  }
}
