package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.MeanCurve;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.reliability.FixtureFeature.Curve;
import org.twinrig.reliability.FixtureFeature.Estimate;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

class FixtureFeaturesTest {
  private static final BandGrid TWELFTHS = BandGrid.covering(325, 20_600, 12);

  /** Units whose level on the old fixture is 0, so that the new one shows the difference. */
  private static PairedUnits kind(BandGrid grid, double[][] differences) {
    double[][] zero = new double[differences.length][grid.size()];
    return kind(grid, zero, differences);
  }

  private static PairedUnits kind(BandGrid grid, double[][] from, double[][] to) {
    List<String> names = IntStream.range(0, to.length).mapToObj(i -> "Alder " + (i + 1)).toList();
    return new PairedUnits("in-ear", grid, names, onFixture(grid, from), onFixture(grid, to));
  }

  /** One seating a unit: nothing is repeated. */
  private static PairedUnits.OnFixture onFixture(BandGrid grid, double[][] levels) {
    List<Levels> means = Arrays.stream(levels).map(l -> Levels.copyOf(grid, l)).toList();
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(levels.length, Collections.nCopies(grid.size(), 1)),
        Levels.copyOf(grid, unknown),
        means.stream().map(List::of).toList());
  }

  private static double[][] referenceUnits() {
    List<Map<String, String>> rows = ReferenceTable.rows("features_units.csv");
    double[][] units = new double[rows.size()][TWELFTHS.size()];
    for (int i = 0; i < units.length; i++) {
      for (int b = 0; b < TWELFTHS.size(); b++) {
        units[i][b] = Double.parseDouble(rows.get(i).get("b" + b));
      }
    }
    return units;
  }

  /** features.R beside the values: t.test, all sign patterns and plain loops in R 4.2.2. */
  @Test
  void agreesWithTheDefinitionWorkedOutInAnotherLanguage() {
    List<FixtureFeature> found =
        new FixtureFeatures(0.95, 1, 1)
            .of(kind(TWELFTHS, referenceUnits()))
            .of(Curve.TRANSFER)
            .features();
    List<Map<String, String>> expected = ReferenceTable.rows("features_results.csv");
    assertEquals(expected.size(), found.size());
    for (int k = 0; k < found.size(); k++) {
      FixtureFeature f = found.get(k);
      Map<String, String> row = expected.get(k);
      assertEquals(row.get("shape"), f.shape().name());
      assertEquals(number(row, "centre_hz"), f.centre().value(), 1e-6);
      assertEquals(number(row, "height_db"), f.height().value(), 1e-10);
      assertEquals(number(row, "low_db"), f.height().low(), 1e-9);
      assertEquals(number(row, "high_db"), f.height().high(), 1e-9);
      assertEquals(number(row, "sim_half_db"), f.simultaneousHalfDb(), 1e-9);
      assertEquals(number(row, "width_octaves"), f.width().orElseThrow().value(), 1e-4);
      assertEquals(number(row, "sharing"), f.sharing(), 0);
    }
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void theContrastIsTheMeanTransferMinusItsOwnOctave() {
    SplittableRandom random = new SplittableRandom(5);
    double[][] from = random(random, 6, TWELFTHS.size());
    double[][] to = random(random, 6, TWELFTHS.size());
    PairedUnits paired = kind(TWELFTHS, from, to);
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
    List<Optional<MeanCurve.Mean>> bands =
        new FixtureFeatures(0.95, 1, 1).of(paired).of(Curve.TRANSFER).bands();
    for (int b = 6; b < TWELFTHS.size() - 6; b++) {
      double smooth = (mean(estimate, b - 6) + mean(estimate, b + 6)) / 2;
      for (int k = b - 5; k <= b + 5; k++) {
        smooth += mean(estimate, k);
      }
      assertEquals(
          mean(estimate, b) - smooth / 12, bands.get(b).orElseThrow().estimate().meanDb(), 1e-12);
    }
    assertTrue(bands.get(5).isEmpty());
    assertTrue(bands.get(TWELFTHS.size() - 6).isEmpty());
  }

  private static double mean(KindEstimate estimate, int band) {
    return ((BandOutcome.Fitted) estimate.bands().get(band)).mean().meanDb();
  }

  private static double[][] random(SplittableRandom random, int units, int bands) {
    double[][] values = new double[units][bands];
    for (double[] unit : values) {
      Arrays.setAll(unit, b -> random.nextDouble(-3, 3));
    }
    return values;
  }

  @Test
  void aUnitThatIsLouderOrTiltedChangesNothing() {
    double[][] units = referenceUnits();
    double[][] changed = new double[units.length][TWELFTHS.size()];
    for (int i = 0; i < units.length; i++) {
      int unit = i;
      // An octave has its middle in the middle: what rises evenly is its own smooth.
      Arrays.setAll(changed[i], b -> units[unit][b] + 7 * unit + 0.02 * (unit - 4) * b);
    }
    List<FixtureFeature> plain = new FixtureFeatures(0.95, 1, 1).of(kind(TWELFTHS, units)).all();
    List<FixtureFeature> found = new FixtureFeatures(0.95, 1, 1).of(kind(TWELFTHS, changed)).all();
    assertEquals(plain.size(), found.size());
    for (int k = 0; k < plain.size(); k++) {
      assertEquals(plain.get(k).curve(), found.get(k).curve());
      assertEquals(plain.get(k).centre().value(), found.get(k).centre().value(), 1e-6);
      assertEquals(plain.get(k).height().value(), found.get(k).height().value(), 1e-9);
    }
  }

  /** Swapping the fixtures turns peaks into notches and keeps all else. */
  @Test
  void theOtherWayRoundAPeakIsANotch() {
    double[][] units = referenceUnits();
    double[][] zero = new double[units.length][TWELFTHS.size()];
    List<FixtureFeature> there =
        new FixtureFeatures(0.95, 1, 1)
            .of(kind(TWELFTHS, zero, units))
            .of(Curve.TRANSFER)
            .features();
    List<FixtureFeature> back =
        new FixtureFeatures(0.95, 1, 1)
            .of(kind(TWELFTHS, units, zero))
            .of(Curve.TRANSFER)
            .features();
    assertEquals(there.size(), back.size());
    for (int k = 0; k < there.size(); k++) {
      assertTrue(there.get(k).shape() != back.get(k).shape());
      assertEquals(there.get(k).centre(), back.get(k).centre());
      assertEquals(there.get(k).height().value(), -back.get(k).height().value(), 0);
      assertEquals(there.get(k).width(), back.get(k).width());
    }
  }

  /** A feature that one unit in four lacks is not shared, however tall it is on the others. */
  @Test
  void fourUnitsInFiveMustShareTheSign() {
    assertEquals(1, peaksNear8kHz(12, 2));
    assertEquals(0, peaksNear8kHz(12, 3));
  }

  private static long peaksNear8kHz(int units, int without) {
    double[][] d = new double[units][TWELFTHS.size()];
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < units; i++) {
      double height = i < without ? -0.3 : 5 + 0.1 * random.nextDouble();
      Arrays.setAll(
          d[i],
          b -> {
            double octaves = Math.log(TWELFTHS.band(b).midHz() / 8000) / Math.log(2);
            return height * Math.exp(-0.5 * octaves * octaves / 0.01)
                + random.nextDouble(-0.05, 0.05);
          });
    }
    return new FixtureFeatures(0.95, 1, 1)
        .of(kind(TWELFTHS, d)).of(Curve.TRANSFER).features().stream()
            .filter(f -> f.shape() == Resonance.Shape.PEAK)
            .filter(f -> Math.abs(Math.log(f.centre().value() / 8000)) < Math.log(2) / 12)
            .count();
  }

  @Test
  void aCurveOfOctavesIsItsOwnSmooth() {
    BandGrid octaves = BandGrid.covering(31.5, 16_000, 1);
    double[][] units = random(new SplittableRandom(1), 5, octaves.size());
    assertEquals(List.of(), new FixtureFeatures(0.95, 1, 1).of(kind(octaves, units)).all());
  }

  @Test
  void twoUnitsShareNothing() {
    FixtureFeatures.Result found =
        new FixtureFeatures(0.95, 1, 1)
            .of(kind(TWELFTHS, random(new SplittableRandom(1), 2, TWELFTHS.size())));
    assertEquals(List.of(), found.all());
    assertTrue(found.of(Curve.TO).bands().stream().allMatch(Optional::isEmpty));
  }

  @Test
  void aUnitTakesNoPartWhereItsOctaveHasAGap() {
    double[][] units = referenceUnits();
    units[2][40] = Double.NaN;
    List<Optional<MeanCurve.Mean>> bands =
        new FixtureFeatures(0.95, 1, 1).of(kind(TWELFTHS, units)).of(Curve.TRANSFER).bands();
    for (int b = 6; b < TWELFTHS.size() - 6; b++) {
      int expected = Math.abs(b - 40) <= 6 ? units.length - 1 : units.length;
      assertEquals(expected, bands.get(b).orElseThrow().estimate().units());
    }
  }

  @Test
  void intervalsHoldTheirEstimates() {
    for (FixtureFeature f :
        new FixtureFeatures(0.95, 1, 1).of(kind(TWELFTHS, referenceUnits())).all()) {
      List<Estimate> all = new ArrayList<>(List.of(f.centre(), f.height()));
      f.width().ifPresent(all::add);
      all.forEach(e -> assertTrue(e.low() <= e.value() && e.value() <= e.high(), e::toString));
    }
  }

  @Test
  void aFeatureWhoseIntervalHoldsZeroIsNone() {
    Estimate height = new Estimate(1, 0.5, 1.5);
    Estimate centre = new Estimate(8000, 7900, 8100);
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new FixtureFeature(
                Curve.TO, Resonance.Shape.PEAK, centre, height, 1, Optional.empty(), 8, 8));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new FixtureFeature(
                Curve.TO, Resonance.Shape.PEAK, centre, height, 0.9, Optional.empty(), 8, 9));
    FixtureFeature sound =
        new FixtureFeature(
            Curve.TO, Resonance.Shape.PEAK, centre, height, 0.9, Optional.empty(), 8, 6);
    assertEquals(0.75, sound.share());
  }

  @Test
  void confidenceNarrowsAndThreadsChangeNothing() {
    PairedUnits paired = kind(TWELFTHS, referenceUnits());
    FixtureFeatures procedure = new FixtureFeatures(0.95, 1, 1);
    List<FixtureFeature> at95 = procedure.of(paired).all();
    assertEquals(at95, new FixtureFeatures(0.95, 1, 3).of(paired).all());
    List<FixtureFeature> reseeded = new FixtureFeatures(0.95, 2, 1).of(paired).all();
    List<FixtureFeature> at90 = new FixtureFeatures(0.9, 1, 1).of(paired).all();
    FixtureFeature wide = at95.get(0);
    FixtureFeature narrow = matching(at90, wide);
    // R 4.2.2: qt(c(.975, .95), 7) is 2.364624 and 1.894579.
    assertEquals(
        1.894579 / 2.364624,
        (narrow.height().high() - narrow.height().low())
            / (wide.height().high() - wide.height().low()),
        1e-6);
    FixtureFeature again = matching(reseeded, wide);
    assertEquals(wide.centre().value(), again.centre().value());
    assertEquals(wide.height(), again.height());
  }

  private static FixtureFeature matching(List<FixtureFeature> all, FixtureFeature wanted) {
    return all.stream()
        .filter(f -> f.curve() == wanted.curve())
        .filter(f -> f.centre().value() == wanted.centre().value())
        .findFirst()
        .orElseThrow();
  }

  /** A step of one band, 6 dB high, at 12 bands per octave: the band less a twelfth of itself. */
  @Test
  void theContrastOfASingleBandIsWhatItsOctaveLeaves() {
    double[] db = new double[40];
    db[20] = 6;
    BandGrid grid = new BandGrid(TWELFTHS.bands().subList(0, 40));
    Levels contrast = FixtureFeatures.contrast(Levels.copyOf(grid, db));
    for (int b = 0; b < 40; b++) {
      assertEquals(b >= 6 && b < 34, contrast.has(b));
      if (contrast.has(b)) {
        int away = Math.abs(b - 20);
        double smooth = away < 6 ? 6.0 / 12 : away == 6 ? 6.0 / 24 : 0;
        assertEquals(db[b] - smooth, contrast.db(b), 1e-12);
      }
    }
  }
}
