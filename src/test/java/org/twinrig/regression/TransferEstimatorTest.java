package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

class TransferEstimatorTest {
  private static final BandGrid GRID = BandGrid.covering(100, 10_000, 3);

  /** With three to five units there are fewer sign patterns than a 95 % quantile needs. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 5, 6, 12, 13})
  void theSimultaneousIntervalIsNeverNarrowerThanThePointwise(int units) {
    for (BandOutcome outcome :
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(random(units)).bands()) {
      BandOutcome.Fitted fitted = (BandOutcome.Fitted) outcome;
      assertTrue(fitted.simultaneousHalfDb() >= fitted.mean().halfWidthDb());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void fewerThanThreeUnitsGiveNoEstimate(int units) {
    for (BandOutcome outcome :
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(random(units)).bands()) {
      assertEquals(
          new BandOutcome.NotFitted(outcome.band(), units, BandOutcome.Why.FEWER_THAN_THREE_UNITS),
          outcome);
    }
  }

  /**
   * Differences 1, 2, 3 and 6 dB at every band: their mean misses each, left out, by 4/3 of its
   * departure from 3 dB, and √(14/4) of that is the root mean square. Seating variances of 0.6 and
   * 0.2 dB² over 1, 2, 3, 6 and 2 seatings. R 4.2.2: qt(.975, 3) 3.182446, qt(.95, 3) 2.353363.
   */
  @Test
  void predictionAndScatterAreWorkedOutByHand() {
    double[] differences = {1, 2, 3, 6};
    int[] seatings = {1, 2, 3, 6};
    PairedUnits paired = constant(differences, seatings, 0.6, 0.2);
    TransferEstimator procedure = new TransferEstimator(0.95, PredictionModel.OFFSET, 1);
    for (BandOutcome outcome : procedure.fit(paired).bands()) {
      BandOutcome.Fitted fitted = (BandOutcome.Fitted) outcome;
      assertEquals(4, fitted.units());
      double rms = 4.0 / 3 * Math.sqrt(14.0 / 4);
      assertEquals(rms, fitted.prediction().errors().looRmsDb(), 1e-12);
      assertEquals(rms, fitted.prediction().offset().looRmsDb(), 1e-12);
      assertEquals(3.182446305 * rms, fitted.prediction().halfDb(), 1e-8);
      assertEquals(
          0.6 * (1 + 0.5 + 1.0 / 3 + 1.0 / 6) / 4 + 0.1, fitted.scatter().seatingVariance(), 1e-12);
      assertEquals(0.6, fitted.scatter().seatVarianceFrom().orElseThrow());
      assertEquals(0.2, fitted.scatter().seatVarianceTo().orElseThrow());
      assertEquals(2, fitted.scatter().seatingsFrom(), 1e-12);
    }
    BandOutcome.Fitted at90 =
        (BandOutcome.Fitted)
            new TransferEstimator(0.9, PredictionModel.OFFSET, 1).fit(paired).bands().get(0);
    assertEquals(2.353363435 * 4.0 / 3 * Math.sqrt(14.0 / 4), at90.prediction().halfDb(), 1e-8);
    assertEquals(2.353363435 * at90.mean().standardErrorDb(), at90.mean().halfWidthDb(), 1e-8);
  }

  @Test
  void withoutAnyLevelThereIsNoData() {
    double[] none = {Double.NaN, Double.NaN, Double.NaN};
    PairedUnits paired = constant(none, new int[] {1, 1, 1}, 0.1, 0.1);
    for (BandOutcome outcome :
        new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(paired).bands()) {
      assertEquals(new BandOutcome.NotFitted(outcome.band(), 0, BandOutcome.Why.NO_DATA), outcome);
    }
  }

  /** Units that differ by one number at all bands, each seated so often on the old fixture. */
  private static PairedUnits constant(
      double[] differences, int[] seatings, double varianceFrom, double varianceTo) {
    List<String> names = new ArrayList<>();
    List<Levels> from = new ArrayList<>();
    List<Levels> to = new ArrayList<>();
    List<List<Integer>> counts = new ArrayList<>();
    for (int i = 0; i < differences.length; i++) {
      names.add("Rowan " + i);
      from.add(flat(0));
      to.add(flat(differences[i]));
      counts.add(Collections.nCopies(GRID.size(), seatings[i]));
    }
    List<List<Integer>> twice =
        Collections.nCopies(names.size(), Collections.nCopies(GRID.size(), 2));
    return new PairedUnits(
        "kind",
        GRID,
        names,
        new PairedUnits.OnFixture(
            from, counts, flat(varianceFrom), from.stream().map(List::of).toList()),
        new PairedUnits.OnFixture(to, twice, flat(varianceTo), to.stream().map(List::of).toList()));
  }

  private static Levels flat(double db) {
    double[] levels = new double[GRID.size()];
    java.util.Arrays.fill(levels, db);
    return Levels.copyOf(GRID, levels);
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
