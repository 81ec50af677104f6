package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A short sweep at 8 kHz, so that every transform can be summed from its definition. */
class DeconvolutionTest {
  private static final double RATE_HZ = 8000;
  private static final Sweep SWEEP = new Sweep(100, 2000, 0.06, 0, 0);

  /** Farina's sweep and its fades, written out. */
  @Test
  void aSweepIsTheSineOfItsPhaseUnderItsFades() {
    Sweep faded = new Sweep(100, 2000, 0.06, 10, 5);
    Signal signal = faded.signal(RATE_HZ);
    assertEquals(480, signal.size());
    double scale = 0.06 / Math.log(20);
    for (int i = 0; i < 480; i++) {
      double t = i / RATE_HZ;
      double sine = Math.sin(2 * Math.PI * 100 * scale * (Math.exp(t / scale) - 1));
      double in = t >= 0.01 ? 1 : Math.pow(Math.sin(Math.PI / 2 * t / 0.01), 2);
      double left = 0.06 - t;
      double out = left >= 0.005 ? 1 : Math.pow(Math.sin(Math.PI / 2 * left / 0.005), 2);
      assertEquals(sine * in * out, signal.sample(i), 1e-12);
    }
  }

  /** The instantaneous frequency runs from the first to the last: the phase at the end is known. */
  @Test
  void anUnfadedSweepEndsAtItsLastFrequency() {
    Signal signal = SWEEP.signal(1e6);
    int last = signal.size() - 1;
    double slope = (signal.sample(last) - signal.sample(last - 2)) / 2e-6;
    double cosine = Math.sqrt(1 - Math.pow(signal.sample(last - 1), 2));
    assertEquals(2000, Math.abs(slope) / cosine / (2 * Math.PI), 2);
    assertEquals(2 * Math.PI * 100 / 1e6, signal.sample(1), 1e-6);
  }

  /**
   * The definition {@code H = Y X* W/(|X|² + ε)}, with {@code Y} the recording less its mean, by
   * sums over a length of our own choice: the impulse response must be its inverse transform.
   */
  @Test
  void isTheRegularisedQuotientOfItsDefinition() throws Exception {
    Signal played = SWEEP.signal(RATE_HZ);
    double[] recorded = new double[700];
    Arrays.setAll(
        recorded,
        i ->
            0.01
                + 0.1 * Math.sin(0.3 * i * i)
                + (i >= 40 && i < 520 ? 0.5 * played.sample(i - 40) : 0)
                + (i >= 60 && i < 540 ? -0.2 * played.sample(i - 60) : 0));
    Deconvolution.Result result = Deconvolution.of(Signal.copyOf(recorded, RATE_HZ), SWEEP);
    assertEquals(480, result.lead());
    int size = result.impulse().size();
    assertEquals(2048, size, "the least power of two that holds both");
    double[] line = new double[size];
    Arrays.setAll(line, i -> result.impulse().sample((i + 480) % size));
    double mean = Arrays.stream(recorded).average().orElseThrow();
    double[] y = Arrays.stream(recorded).map(v -> v - mean).toArray();
    double[] x = new double[480];
    Arrays.setAll(x, played::sample);
    double[][] sweeps = new double[size / 2 + 1][];
    double largest = 0;
    for (int k = 0; k <= size / 2; k++) {
      sweeps[k] = transform(x, k, size);
      largest = Math.max(largest, square(sweeps[k]));
    }
    for (int k = 0; k <= size / 2; k++) {
      double[] h = transform(line, k, size);
      double[] top = transform(y, k, size);
      double gain = weight(k * RATE_HZ / size) / (square(sweeps[k]) + 1e-8 * largest);
      double re = gain * (top[0] * sweeps[k][0] + top[1] * sweeps[k][1]);
      double im = gain * (top[1] * sweeps[k][0] - top[0] * sweeps[k][1]);
      double scale = 1e-9 + 1e-7 * Math.hypot(re, im);
      assertEquals(re, h[0], scale, "real part of bin " + k);
      assertEquals(im, h[1], scale, "imaginary part of bin " + k);
    }
  }

  /** Half a period of a raised cosine over the sixth of an octave above the sweep's end. */
  private static double weight(double hz) {
    double share = 6 * Math.log(hz / 2000) / Math.log(2);
    return share <= 0 ? 1 : share >= 1 ? 0 : Math.pow(Math.cos(Math.PI / 2 * share), 2);
  }

  private static double[] transform(double[] x, int k, int size) {
    double re = 0;
    double im = 0;
    for (int n = 0; n < x.length; n++) {
      double angle = 2 * Math.PI * ((long) k * n % size) / size;
      re += x[n] * Math.cos(angle);
      im -= x[n] * Math.sin(angle);
    }
    return new double[] {re, im};
  }

  private static double square(double[] z) {
    return z[0] * z[0] + z[1] * z[1];
  }

  /** Where a sweep has no energy the quotient is held down: a tone there is not raised. */
  @Test
  void aToneOutsideTheSweepIsNotRaised() throws Exception {
    double[] recorded = new double[1000];
    Arrays.setAll(recorded, i -> 0.5 * Math.sin(2 * Math.PI * 3500 * i / RATE_HZ));
    Signal impulse = Deconvolution.of(Signal.copyOf(recorded, RATE_HZ), SWEEP).impulse();
    assertTrue(impulse.peak(0, impulse.size()) < 0.05, "above the sweep nothing is let through");
  }

  @ParameterizedTest
  @CsvSource({"480, 4000, true", "479, 4000, false", "480, 4001, false"})
  void aRecordingMustBeAsLongAsTheSweepAndReachAsHigh(int samples, double toHz, boolean fits)
      throws Exception {
    double[] recorded = new double[samples];
    recorded[5] = 0.5;
    Signal recording = Signal.copyOf(recorded, RATE_HZ);
    Sweep sweep = new Sweep(100, toHz, 0.06, 0, 0);
    if (fits) {
      assertEquals(480, Deconvolution.of(recording, sweep).lead());
    } else {
      assertThrows(UnusableSound.class, () -> Deconvolution.of(recording, sweep));
    }
  }

  /** 2^23 samples together are read, one more is not. */
  @Test
  void recordingAndSweepTogetherHaveABound() {
    Sweep half = new Sweep(100, 2000, (1 << 22) / RATE_HZ, 0, 0);
    Signal tooLong = Signal.of(new double[(1 << 22) + 1], RATE_HZ);
    UnusableSound refusal =
        assertThrows(UnusableSound.class, () -> Deconvolution.of(tooLong, half));
    assertEquals(
        "recording and sweep have more than 8388608 samples together, the most that are read",
        refusal.getMessage());
    assertEquals("cut the recording to the sweep and a second after it", refusal.remedy());
  }
}
