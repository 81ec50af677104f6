package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Windows at 1 kHz: one sample a millisecond, so that times and samples can be counted. */
class SegmentTest {
  private static Signal ramp(int size) {
    double[] samples = new double[size];
    Arrays.setAll(samples, i -> 0.001 * (i + 1));
    return Signal.copyOf(samples, 1000);
  }

  private static SoundContent window(double beforeMs, double lengthMs, double fadeMs) {
    return new SoundContent(new ImpulseWindow(beforeMs, lengthMs, fadeMs), Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({"20, 18, 60, 2, 5", "1, 0, 41, 1, 5", "95, 93, 100, 2, 2"})
  void theWindowStaysInsideTheSound(int onset, int from, int to, int fadeIn, int fadeOut) {
    Segment segment = Segment.of(ramp(100), onset, window(2, 40, 5));
    assertEquals(from, segment.from());
    assertEquals(to, segment.to());
    assertEquals(to - from, segment.size());
    assertEquals(to - onset, segment.lengthMs());
    assertEquals(fadeIn, segment.fadeIn(), "none of it after the onset");
    assertEquals(fadeOut, segment.fadeOut(), "at most half of what follows the onset");
    Segment shorter = segment.shorter();
    assertEquals(to - (to - onset) / 4, shorter.to());
    assertEquals(from, shorter.from());
  }

  /**
   * The two ends are halves of a Hann window, the samples in the middle of their steps: a rising
   * half and its mirror add up to 1, and from the rise on the sound is untouched.
   */
  @Test
  void theEndsAreHalvesOfARaisedCosine() {
    Segment segment = Segment.of(ramp(60), 10, window(4, 20, 8));
    double[] under = new double[segment.size()];
    segment.copyTo(under, 0.002);
    assertEquals(24, under.length);
    double[] weights = new double[under.length];
    Arrays.setAll(weights, i -> under[i] / (0.001 * (6 + i + 1) - 0.002));
    double[] hann4 = {0.03806023, 0.30865828, 0.69134172, 0.96193977};
    assertArrayEquals(hann4, Arrays.copyOf(weights, 4), 1e-8);
    for (int i = 4; i < 16; i++) {
      assertEquals(1, weights[i], 1e-12);
    }
    for (int k = 0; k < 8; k++) {
      assertEquals(Math.pow(Math.sin(Math.PI * (k + 0.5) / 16), 2), weights[23 - k], 1e-12);
    }
  }

  @Test
  void withoutFadesTheSoundIsCutOut() {
    Segment segment = Segment.of(ramp(30), 3, window(3, 20, 0));
    double[] under = new double[segment.size()];
    segment.copyTo(under, 0);
    for (int i = 0; i < under.length; i++) {
      assertEquals(0.001 * (i + 1), under[i], 1e-15);
    }
  }

  /** The onset is the first sample within 20 dB of the largest, no earlier than is searched. */
  @ParameterizedTest
  @CsvSource({"100, 5", "50, 5", "45, 5", "44.9, 30", "10, 40", "10.5, 40", "9.99, 50", "0, 50"})
  void theOnsetIsFoundWithinTheSearch(double searchMs, int onset) {
    double[] samples = new double[80];
    samples[3] = 0.0999;
    samples[5] = -0.1;
    samples[30] = 0.4;
    samples[40] = 0.3;
    samples[50] = -1;
    samples[60] = 1;
    double[] quiet = new double[80];
    quiet[7] = 0.5;
    quiet[70] = -0.5;
    assertEquals(onset, Segment.onset(Signal.copyOf(samples, 1000), searchMs));
    assertEquals(7, Segment.onset(Signal.copyOf(quiet, 1000), searchMs), "of two alike the first");
  }
}
