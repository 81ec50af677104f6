package org.twinrig.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.response.Smoothing.Domain;

/** Smoothing against a direct average of powers, and what must hold of any smoothing. */
class SmoothingTest {
  private static final double OCTAVE = Math.pow(10, 0.3);

  private static Response drawn(long seed, int points) {
    Random random = new Random(seed);
    double[] hz = new double[points];
    double[] db = new double[points];
    double lg = Math.log(15);
    for (int k = 0; k < points; k++) {
      lg += Math.log(22_000.0 / 15) / points * (0.2 + 1.6 * random.nextDouble());
      hz[k] = Math.exp(lg);
      db[k] = 70 + 12 * random.nextGaussian();
    }
    return Response.copyOf(hz, db);
  }

  /**
   * Mean of {@code 10^(L/10)}, or of {@code L}, over 20 000 samples of the stretch, evenly spaced
   * in ln f.
   */
  private static double direct(Response curve, double hz, Smoothing by) {
    int fraction = by.fraction();
    double lower = Math.log(Math.max(curve.fromHz(), hz * Math.pow(OCTAVE, -0.5 / fraction)));
    double upper = Math.log(Math.min(curve.toHz(), hz * Math.pow(OCTAVE, 0.5 / fraction)));
    int samples = 20_000;
    double sum = 0;
    for (int k = 0; k < samples; k++) {
      double f = Math.exp(lower + (upper - lower) * (k + 0.5) / samples);
      f = Math.min(Math.max(f, curve.fromHz()), curve.toHz());
      double db = curve.levelAt(f).orElseThrow();
      sum += by.domain() == Domain.DB ? db : Math.pow(10, db / 10);
    }
    return by.domain() == Domain.DB ? sum / samples : 10 * Math.log10(sum / samples);
  }

  @Property(tries = 30)
  void everyPointIsTheMeanAroundIt(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 48) int n, @ForAll Domain domain) {
    Response curve = drawn(seed, 60);
    Smoothing by = new Smoothing(n, domain);
    Response smooth = by.apply(curve);
    for (int k = 0; k < curve.size(); k += 7) {
      assertEquals(curve.frequencyHz(k), smooth.frequencyHz(k));
      assertEquals(direct(curve, curve.frequencyHz(k), by), smooth.levelDb(k), 2e-4);
    }
  }

  @Property(tries = 50)
  void aLevelAddedBeforeIsThereAfter(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 48) int n) {
    Response curve = drawn(seed, 40);
    Response shifted = new Smoothing(n).apply(curve.plus(-31.4));
    Response smooth = new Smoothing(n).apply(curve);
    for (int k = 0; k < curve.size(); k++) {
      assertEquals(smooth.levelDb(k) - 31.4, shifted.levelDb(k), 1e-9);
    }
  }

  /** scipy.integrate and numpy: see the source lines of the table. */
  @Test
  void aNotchReadsAsNumericalIntegrationSays() {
    for (Map<String, String> row : ReferenceTable.rows("smoothed_notch.csv")) {
      double depth = Double.parseDouble(row.get("depth_db"));
      double q = Double.parseDouble(row.get("q"));
      double[] hz = new double[3001]; // 500 Hz to 2 kHz, with points at 1 kHz and 1000·10^0.04 Hz
      double[] db = new double[hz.length];
      for (int k = 0; k < hz.length; k++) {
        hz[k] = 1000 * Math.pow(10, (k - 1500) / 5000.0);
        db[k] = notchDb(hz[k] / 1000, depth, q);
      }
      Smoothing by =
          new Smoothing(Integer.parseInt(row.get("fraction")), Domain.valueOf(row.get("domain")));
      Response smooth = by.apply(Response.copyOf(hz, db));
      double at = Double.parseDouble(row.get("at_hz"));
      assertEquals(Double.parseDouble(row.get("level_db")), smooth.levelAt(at).orElseThrow(), 1e-3);
    }
  }

  /** What a lab finds on the two sorts of smoothed graphs. */
  @Test
  void aDeepNotchIsShallowerInPowerThanInDecibels() {
    assertEquals(-6.6, smoothedNotchDb(new Smoothing(6)), 0.05);
    assertEquals(-7.9, smoothedNotchDb(new Smoothing(6, Domain.DB)), 0.05);
  }

  private static double smoothedNotchDb(Smoothing by) {
    double[] hz = new double[401];
    double[] db = new double[hz.length];
    for (int k = 0; k < hz.length; k++) {
      hz[k] = 1000 * Math.pow(2, (k - 200) / 200.0);
      db[k] = notchDb(hz[k] / 1000, 15, 8);
    }
    return by.apply(Response.copyOf(hz, db)).levelAt(1000).orElseThrow();
  }

  /** {@code |1-x²+jx·10^(-d/20)/Q|² / |1-x²+jx/Q|²} in dB. */
  private static double notchDb(double x, double depthDb, double q) {
    double real = 1 - x * x;
    double pole = x / q;
    double zero = pole * Math.pow(10, -depthDb / 20);
    return 10 * Math.log10((real * real + zero * zero) / (real * real + pole * pole));
  }

  /** Closed form: over a straight line the mean of powers is the line's plus a constant. */
  @Test
  void aStraightLineKeepsItsSlope() {
    Response line = Dense.curve(new double[] {10, 100, 1000, 10_000}, new double[] {0, 20, 40, 60});
    Response smooth = new Smoothing(3).apply(line);
    double z = 20 * Math.log(10) / 10 * Math.log10(OCTAVE) / 3; // nepers over a third octave
    double constant = 10 * Math.log10(Math.sinh(z / 2) / (z / 2));
    assertEquals(20 + constant, smooth.levelAt(100).orElseThrow(), 1e-9);
    assertEquals(40 + constant, smooth.levelAt(1000).orElseThrow(), 1e-9);
  }

  @Test
  void noneLeavesTheCurveAlone() {
    Response curve = drawn(3, 20);
    assertSame(curve, Smoothing.NONE.apply(curve));
  }

  @Test
  void itIsWrittenAsPartsOfAnOctave() {
    assertEquals(Optional.of(Smoothing.NONE), Smoothing.of("none"));
    assertEquals(Optional.of(new Smoothing(12)), Smoothing.of(" 1/12 "));
    assertEquals(Optional.of(new Smoothing(6)), Smoothing.of("1/6 power"));
    assertEquals(Optional.of(new Smoothing(6, Domain.DB)), Smoothing.of("1/6 dB"));
    for (String wrong :
        new String[] {
          "", "0", "1/0", "1/49", "1/012", "2/3", "12", "1 / 3", "None", "none db", "1/6 oct"
        }) {
      assertEquals(Optional.empty(), Smoothing.of(wrong), wrong);
    }
    assertEquals("1/3", new Smoothing(3).word());
    assertEquals("smoothed to 1/3 octave", new Smoothing(3).plain());
    assertEquals("1/6 db", new Smoothing(6, Domain.DB).word());
    assertEquals("smoothed to 1/6 octave in decibels", new Smoothing(6, Domain.DB).plain());
    assertEquals("not smoothed", Smoothing.NONE.plain());
    assertEquals(
        "smoothing must be 1/1 to 1/48 octave or none, but is 1/49",
        assertThrows(IllegalArgumentException.class, () -> new Smoothing(49)).getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Smoothing(-1));
    assertThrows(IllegalArgumentException.class, () -> new Smoothing(0, Domain.DB));
  }

  @Test
  void widerMeansMoreOfTheAxis() {
    assertTrue(new Smoothing(3).widerThan(new Smoothing(12)));
    assertTrue(new Smoothing(48).widerThan(Smoothing.NONE));
    assertFalse(Smoothing.NONE.widerThan(new Smoothing(48)));
    assertFalse(new Smoothing(6).widerThan(new Smoothing(6)));
    assertFalse(Smoothing.NONE.widerThan(Smoothing.NONE));
    Smoothing decibels = new Smoothing(6, Domain.DB);
    assertFalse(decibels.widerThan(new Smoothing(6)));
    assertTrue(decibels.contradicts(new Smoothing(6)));
    assertFalse(decibels.contradicts(decibels));
    assertFalse(decibels.contradicts(new Smoothing(12)));
    assertFalse(Smoothing.NONE.contradicts(Smoothing.NONE));
  }
}
