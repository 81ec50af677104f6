package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Fixture;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.reliability.MarkRule;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

class ValidationTest {
  private static final BandGrid GRID = BandGrid.covering(50, 15_000, 3);

  private static PairedUnits kind(List<String> names, double[][] from, double[][] to) {
    return new PairedUnits("in-ear", GRID, names, onFixture(from), onFixture(to));
  }

  private static PairedUnits.OnFixture onFixture(double[][] levels) {
    double[] unknown = new double[GRID.size()];
    Arrays.fill(unknown, Double.NaN);
    List<Levels> means = Arrays.stream(levels).map(l -> Levels.copyOf(GRID, l)).toList();
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(levels.length, Collections.nCopies(GRID.size(), 1)),
        Levels.copyOf(GRID, unknown),
        means.stream().map(List::of).toList());
  }

  private static double[][] random(long seed, int units) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] values = new double[units][GRID.size()];
    for (double[] unit : values) {
      Arrays.setAll(unit, b -> random.nextDouble(-3, 3));
    }
    return values;
  }

  private static KindEstimate offset(PairedUnits paired) {
    return new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
  }

  private static List<Trial> heldOut(PairedUnits study, PairedUnits unseen) {
    KindEstimate estimate = offset(study);
    Fixture fixture = new Fixture("plate", "Plate", "", 20, 20_000);
    Settings settings = Settings.defaults();
    MarkRule rule = new MarkRule(settings, List.of(fixture), List.of(), Map.of());
    TransferFunction transfer =
        new TransferFunction("in-ear", study.units(), GRID, rule.mark(estimate.bands()));
    Translation translation =
        new Translation(
            new Translation.Origin("a", "b", "c", "d", "e"),
            new Anchor.Range(300, 1000),
            GRID,
            0.95,
            settings.tolerance(),
            settings.minUnits(),
            Translation.Handling.plain(),
            List.of(transfer),
            List.of());
    return Trial.heldOut(translation, estimate, unseen);
  }

  /** With the plain offset, a unit left out and a unit held out are the same thing. */
  @Test
  void aUnitHeldOutIsMissedAsIfItWereLeftOut() {
    double[][] from = random(1, 7);
    double[][] to = random(2, 7);
    List<String> names = List.of("Alder 1", "Oak 2", "Elm 3", "Fir 4", "Yew 5", "Ash 6", "Box 7");
    List<Trial> leftOut = Trial.leftOut(offset(kind(names, from, to)));
    for (int i = 0; i < 7; i++) {
      PairedUnits others = kind(without(names, i), without(from, i), without(to, i));
      PairedUnits one =
          kind(List.of(names.get(i)), new double[][] {from[i]}, new double[][] {to[i]});
      Trial trial = heldOut(others, one).get(0);
      assertEquals(names.get(i), trial.unit());
      for (int b = 0; b < GRID.size(); b++) {
        assertEquals(leftOut.get(i).errors().db(b), trial.errors().db(b), 1e-9);
        assertEquals(leftOut.get(i).offsetErrors().db(b), trial.offsetErrors().db(b), 1e-9);
      }
    }
  }

  private static List<String> without(List<String> names, int i) {
    List<String> rest = new ArrayList<>(names);
    rest.remove(i);
    return rest;
  }

  private static double[][] without(double[][] rows, int i) {
    List<double[]> rest = new ArrayList<>(List.of(rows));
    rest.remove(i);
    return rest.toArray(double[][]::new);
  }

  /** The half-width of a held-out unit's interval is the study's own. */
  @Test
  void aHeldOutUnitIsHeldAgainstTheStudysInterval() {
    PairedUnits study = kind(List.of("A", "B", "C", "D", "E", "F"), random(3, 6), random(4, 6));
    Trial trial = heldOut(study, kind(List.of("G"), random(5, 1), random(6, 1))).get(0);
    KindEstimate estimate = offset(study);
    for (int b = 0; b < GRID.size(); b++) {
      double freedom = trial.degreesOfFreedom().get(b);
      double half = StudentT.twoSided(0.95, freedom) * trial.scale().db(b);
      assertTrue(freedom >= 5 && freedom <= 9, "five of its own, at most four lent: " + freedom);
      assertEquals(
          ((org.twinrig.regression.BandOutcome.Fitted) estimate.bands().get(b))
              .prediction()
              .halfDb(),
          half,
          1e-9);
    }
  }

  @Test
  void aUnitIsJudgedByTheErrorsOfTheOthers() {
    KindEstimate estimate = offset(kind(List.of("A", "B", "C", "D"), random(7, 4), random(8, 4)));
    List<Trial> trials = Trial.leftOut(estimate);
    for (int b = 0; b < GRID.size(); b++) {
      double squares = 0;
      for (int j = 1; j < 4; j++) {
        squares += Math.pow(estimate.errors().get(j).db(b), 2);
      }
      assertEquals(Math.sqrt(squares / 3), trials.get(0).scale().db(b), 1e-12);
      assertEquals(2, trials.get(0).degreesOfFreedom().get(b), 1e-12);
    }
  }

  @Test
  void threeUnitsHaveErrorsAndNoInterval() {
    KindEstimate estimate = offset(kind(List.of("A", "B", "C"), random(7, 3), random(8, 3)));
    Validation found = Validation.of(GRID, Trial.leftOut(estimate), 0.95);
    assertEquals(List.of(), found.coverage());
    assertEquals(4, found.regions().size());
    assertTrue(found.regions().get(0).inside().isEmpty());
    assertEquals(3, found.ofUnits(Optional.empty()).size());
  }

  @Test
  void theWorstUnitIsTheOneWithTheGreatestError() {
    double[][] to = random(9, 8);
    Arrays.setAll(to[5], b -> to[5][b] + 20);
    KindEstimate estimate =
        offset(
            kind(List.of("A", "B", "C", "D", "E", "F", "G", "H"), new double[8][GRID.size()], to));
    Validation found = Validation.of(GRID, Trial.leftOut(estimate), 0.95);
    assertEquals("F", found.worst(Optional.empty()).orElseThrow().unit());
    assertEquals("F", found.worst(Optional.of(Region.TOP)).orElseThrow().unit());
    assertEquals(Optional.empty(), Validation.of(GRID, List.of(), 0.95).worst(Optional.empty()));
  }

  /** Where bands of a unit go together the interval is the exact one of a share of units. */
  @Test
  void unitsThatAreWhollyInOrOutHaveTheExactInterval() {
    Coverage found =
        Coverage.of(Optional.empty(), 0.9, List.of(1.0, 1.0, 1.0, 0.0, 1.0, 1.0), 0.95);
    ClopperPearson exact = ClopperPearson.of(5, 6, 0.95);
    assertEquals(6, found.units());
    assertEquals(5.0 / 6, found.reached(), 1e-15);
    assertEquals(exact.low(), found.low());
    assertEquals(exact.high(), found.high());
  }

  @Test
  void sharesBetweenAreRoundedOutwards() {
    Coverage found = Coverage.of(Optional.empty(), 0.9, List.of(0.9, 0.8, 0.7, 1.0), 0.95);
    assertEquals(0.85, found.reached(), 1e-15);
    assertEquals(ClopperPearson.of(3, 4, 0.95).low(), found.low());
    assertEquals(1, found.high());
    // Ten tenths are a whole, whatever their floating sum.
    Coverage tenths = Coverage.of(Optional.empty(), 0.9, Collections.nCopies(10, 0.7), 0.95);
    assertEquals(ClopperPearson.of(7, 10, 0.95).low(), tenths.low());
    assertEquals(ClopperPearson.of(7, 10, 0.95).high(), tenths.high());
  }

  /** A wider interval never holds fewer. */
  @Test
  void reachedCoverageRisesWithTheStated() {
    KindEstimate estimate = offset(kind(Collections.nCopies(9, "A"), random(10, 9), random(11, 9)));
    List<Coverage> rows =
        Validation.of(GRID, Trial.leftOut(estimate), 0.95).coverage(Optional.empty());
    assertEquals(Coverage.STATED, rows.stream().map(Coverage::stated).toList());
    for (int k = 1; k < rows.size(); k++) {
      assertTrue(rows.get(k).reached() >= rows.get(k - 1).reached());
    }
  }
}
