package org.twinrig.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/** Against values computed with 40 digits, numerical integration, and closed forms by hand. */
class LevelsOfResponseTest {

  @Test
  void levelsAreThoseComputedWithFortyDigits() {
    Response capture =
        Response.copyOf(
            new double[] {900, 950, 1000, 1050, 1120}, new double[] {60, 63.5, 58, 58, 71});
    Response prolonged =
        Response.copyOf(
            new double[] {880, 900, 950, 1000, 1050, 1120, 1130},
            new double[] {60, 60, 63.5, 58, 58, 71, 71});
    for (Map<String, String> row : ReferenceTable.rows("band_level_closed_form.csv")) {
      int n = Integer.parseInt(row.get("bands_per_octave"));
      Band band = Band.ofIndex(Integer.parseInt(row.get("x")), n);
      Levels levels = Levels.of(capture, new BandGrid(List.of(band)));
      if (row.get("band_level_db").isEmpty()) {
        // The three bands that reach beyond the ends do so by less than a quarter.
        assertEquals(Levels.of(prolonged, levels.grid()).db(0), levels.db(0), 2e-11);
      } else {
        assertEquals(Double.parseDouble(row.get("band_level_db")), levels.db(0), 2e-11);
      }
    }
  }

  @Test
  void aFlatResponseHasItsLevelInEveryBand() {
    Levels levels = Levels.of(flat(10, 30_000, 94), BandGrid.covering(20, 20_000, 12));
    for (int b = 0; b < 120; b++) {
      assertEquals(94, levels.db(b), 1e-12);
    }
  }

  @Test
  void aTiltHasTheMeanSquareOfAnExponential() {
    // L = s·u: the mean of e^{ku} over a band of width w is e^{k·mid}·sinh(kw/2)/(kw/2).
    double dbPerNeper = 20;
    double[] hz = {10, 30_000};
    Response tilt =
        Dense.curve(hz, new double[] {dbPerNeper * Math.log(hz[0]), dbPerNeper * Math.log(hz[1])});
    Levels levels = Levels.of(tilt, BandGrid.covering(20, 20_000, 3));
    Band band = levels.grid().band(17);
    double k = dbPerNeper * Math.log(10) / 10;
    double half = k * Math.log(band.upperHz() / band.lowerHz()) / 2;
    double expected = dbPerNeper * Math.log(band.midHz()) + 10 * Math.log10(Math.sinh(half) / half);
    assertEquals(expected, levels.db(17), 1e-9);
  }

  @Test
  void aStepInsideABandCountsByItsShareOfLogFrequency() {
    Band band = Band.ofMidFrequency(1000, 1);
    double step = band.lowerHz() * Math.pow(band.upperHz() / band.lowerHz(), 0.25);
    Response response =
        Dense.curve(
            new double[] {100, step, step * (1 + 1e-12), 10_000}, new double[] {60, 60, 80, 80});
    double expected = 10 * Math.log10(0.25 * 1e6 + 0.75 * 1e8);
    assertEquals(expected, Levels.of(response, new BandGrid(List.of(band))).db(0), 1e-8);
  }

  @Property(tries = 60)
  void theClosedFormAgreesWithNumericalIntegration(@ForAll("responses") Response response) {
    Band band = Band.ofMidFrequency(1000, 1);
    double low = Math.log(band.lowerHz());
    double high = Math.log(band.upperHz());
    // Integrated piece by piece with Commons Math, so that no kink lies inside an interval.
    double sum = 0;
    double left = low;
    for (int k = 0; k <= response.size(); k++) {
      double right =
          k == response.size()
              ? high
              : Math.min(high, Math.max(low, Math.log(response.frequencyHz(k))));
      if (right > left + 1e-13) {
        sum +=
            new IterativeLegendreGaussIntegrator(12, 1e-10, 1e-12, 1, 30)
                .integrate(
                    1_000_000,
                    u ->
                        Math.pow(
                            10,
                            response
                                    .levelAt(
                                        Math.min(
                                            response.toHz(),
                                            Math.max(response.fromHz(), Math.exp(u))))
                                    .orElseThrow()
                                / 10),
                    left,
                    right);
        left = right;
      }
    }
    double expected = 10 * Math.log10(sum / (high - low));
    assertEquals(expected, Levels.of(response, new BandGrid(List.of(band))).db(0), 1e-7);
  }

  @Provide
  Arbitrary<Response> responses() {
    return Combinators.combine(
            Arbitraries.doubles().between(0.01, 0.4).list().ofSize(12),
            Arbitraries.doubles().between(-30, 30).list().ofSize(13))
        .as(
            (steps, levels) -> {
              double[] hz = new double[13];
              hz[0] = 500;
              for (int k = 1; k < 13; k++) {
                hz[k] = hz[k - 1] * Math.exp(steps.get(k - 1));
              }
              hz[12] = Math.max(hz[12], 3000);
              return Dense.curve(hz, levels.stream().mapToDouble(Double::doubleValue).toArray());
            });
  }

  @Property(tries = 60)
  void shiftingAResponseShiftsItsBandLevels(@ForAll("responses") Response response) {
    BandGrid grid = new BandGrid(List.of(Band.ofMidFrequency(1000, 1)));
    assertEquals(
        Levels.of(response, grid).db(0) + 7, Levels.of(response.plus(7), grid).db(0), 1e-9);
  }

  @Test
  void aBandThatTheResponseDoesNotReachHasNoLevel() {
    BandGrid grid = BandGrid.covering(20, 20_000, 12);
    // The first 1/12-octave band begins at 19.95 Hz, and a quarter of it is over at 20.24 Hz; the
    // last one ends at 19.95 kHz, and its last quarter begins at 19.67 kHz.
    Levels from20 = Levels.of(flat(20, 20_000, 3), grid);
    assertEquals(120, from20.present());
    assertEquals(3, from20.db(0), 1e-12);
    assertTrue(Levels.of(flat(20.24, 20_000, 3), grid).has(0));
    Levels late = Levels.of(flat(20.25, 19_660, 3), grid);
    assertFalse(late.has(0));
    assertTrue(late.has(1));
    assertTrue(late.has(118));
    assertFalse(late.has(119));
    assertTrue(Levels.of(flat(20.25, 19_670, 3), grid).has(119));
    assertThrows(IllegalStateException.class, () -> late.db(0));
  }

  /** What lies beyond the ends is the level of the outermost points, over a quarter of a band. */
  @Property(tries = 200)
  void aResponseGoesOnFlatOverAQuarterOfABandAtMost(
      @ForAll @IntRange(min = 1, max = 99) int cutLow,
      @ForAll @IntRange(min = 1, max = 99) int cutHigh,
      @ForAll @DoubleRange(min = -40, max = 40) double slope,
      @ForAll("octaves") int perOctave) {
    Band band = Band.ofMidFrequency(1000, perOctave);
    BandGrid grid = new BandGrid(List.of(band));
    double span = Math.log(band.upperHz() / band.lowerHz());
    double[] hz = {
      band.lowerHz() * Math.exp(span * cutLow / 200),
      band.midHz() * Math.exp(span * 0.001),
      band.upperHz() / Math.exp(span * cutHigh / 200)
    };
    double[] db = {60, 60 + slope, 60 - slope};
    Levels levels = Levels.of(Response.copyOf(hz, db), grid);
    if (cutLow > 50 || cutHigh > 50) {
      assertFalse(levels.has(0));
    } else {
      double[] on = {band.lowerHz(), hz[0], hz[1], hz[2], band.upperHz()};
      double[] flat = {db[0], db[0], db[1], db[2], db[2]};
      assertEquals(Levels.of(Response.copyOf(on, flat), grid).db(0), levels.db(0), 1e-9);
    }
  }

  @Provide
  Arbitrary<Integer> octaves() {
    return Arbitraries.of(3, 6, 12, 24, 48);
  }

  /** A window of 200 ms tells 5 Hz apart: 1/12 octave is as wide from 87 Hz on. */
  @Test
  void bandsNarrowerThanTheResolutionAreCoarse() {
    BandGrid grid = BandGrid.covering(20, 20_000, 12);
    Response blurred = flat(10, 21_000, 0).resolving(5);
    for (Response curve :
        List.of(
            blurred,
            blurred.plus(3),
            blurred.plus(flat(10, 21_000, 1)).orElseThrow(),
            flat(10, 21_000, 1).plus(blurred).orElseThrow(),
            new Smoothing(3).apply(blurred))) {
      Levels levels = Levels.of(curve, grid);
      for (int b = 0; b < grid.size(); b++) {
        assertEquals(grid.band(b).midHz() < 87, levels.isCoarse(b), "band " + b);
      }
    }
    assertFalse(Levels.of(flat(10, 21_000, 0), grid).isCoarse(0));
    assertNotEquals(blurred, flat(10, 21_000, 0));
  }

  @Test
  void steepSlopesDoNotOverflow() {
    Response steep = Dense.curve(new double[] {10, 30_000}, new double[] {-3000, 3000});
    Levels levels = Levels.of(steep, BandGrid.covering(20, 20_000, 3));
    for (int b = 0; b < levels.grid().size(); b++) {
      assertTrue(Double.isFinite(levels.db(b)));
    }
  }

  @Test
  void anAnchorIsTheMeanOfItsBandLevels() {
    Response tilt = Dense.curve(new double[] {10, 30_000}, new double[] {50, 70});
    Levels bands = Levels.of(tilt, BandGrid.covering(300, 1000, 12));
    double sum = 0;
    for (int b = 0; b < bands.grid().size(); b++) {
      sum += bands.db(b);
    }
    assertEquals(
        sum / bands.grid().size(),
        new Anchor.Range(300, 1000).levelOf(tilt, 12).orElseThrow(),
        1e-12);
    assertEquals(
        tilt.levelAt(1000).orElseThrow(),
        new Anchor.Frequency(1000).levelOf(tilt, 12).orElseThrow());
    assertEquals(0, new Anchor.None().levelOf(tilt, 12).orElseThrow());
    assertTrue(new Anchor.Range(300, 1000).levelOf(flat(400, 2000, 1), 12).isEmpty());
  }

  private static Response flat(double fromHz, double toHz, double db) {
    return Dense.curve(new double[] {fromHz, toHz}, new double[] {db, db});
  }
}
