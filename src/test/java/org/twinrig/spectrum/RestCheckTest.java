package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sounds of one sample a millisecond whose powers and times are counted by hand. */
class RestCheckTest {
  private static final int SIZE = 1000;
  private static final int ONSET = 100;

  /** The window runs over samples 98 to 299. */
  private static RestCheck check(double[] samples, boolean sweep) {
    SoundContent content = new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty());
    return new RestCheck(Segment.of(Signal.copyOf(samples, 1000), ONSET, content), sweep);
  }

  private static List<String> notes(double[] samples, boolean sweep) throws UnusableSound {
    RestCheck check = check(samples, sweep);
    check.check();
    return check.notes();
  }

  private static String refusal(double[] samples, boolean sweep) {
    RestCheck check = check(samples, sweep);
    return assertThrows(UnusableSound.class, check::check).getMessage();
  }

  /** A click of 1 in 202 samples, and elsewhere samples of one size with either sign in turn. */
  private static double[] clickAboveRest(double aboveDb) {
    double size = Math.sqrt(1.0 / 202 / Math.pow(10, aboveDb / 10));
    double[] samples = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      samples[i] = i >= 98 && i < 300 ? 0 : i % 2 == 0 ? size : -size;
    }
    samples[ONSET] = 1;
    return samples;
  }

  @Test
  void theRestMustLieTenDecibelsBelow() throws Exception {
    String words =
        "the sound does not stand out in the window after its onset (9.9 dB above the rest, but at"
            + " least 10 dB are needed), so it is no ";
    assertEquals(words + "impulse response", refusal(clickAboveRest(9.9), false));
    assertEquals(words + "recording of it", refusal(clickAboveRest(9.9), true));
    for (double aboveDb : new double[] {10.1, 29.9}) {
      assertEquals(
          List.of(
              "the rest of the file lies only "
                  + aboveDb
                  + " dB below the window: noise may show in the levels"),
          notes(clickAboveRest(aboveDb), false));
    }
    assertEquals(List.of(), notes(clickAboveRest(30.1), false));
  }

  @ParameterizedTest
  @CsvSource({"98, true", "299, true", "97, false", "300, false"})
  void theLargestSampleMustLieInTheWindow(int peak, boolean inside) throws Exception {
    double[] samples = new double[SIZE];
    for (int i = 98; i < 300; i++) {
      samples[i] = i % 2 == 0 ? 0.5 : -0.5;
    }
    samples[peak] = 1;
    if (inside) {
      assertEquals(List.of(), notes(samples, false));
    } else {
      refusal(samples, false);
    }
  }

  /** So much below the peak, the offset itself among it, is the offset. */
  @ParameterizedTest
  @ValueSource(doubles = {40, 59.9, 60.1, 80})
  void anOffsetIsNotedWithinSixtyDecibels(double belowDb) throws Exception {
    double offset = 1 / (Math.pow(10, belowDb / 20) - 1);
    for (int sign = -1; sign <= 1; sign += 2) {
      double[] samples = new double[SIZE];
      java.util.Arrays.fill(samples, sign * offset);
      samples[ONSET] = sign * (1 + offset);
      RestCheck check = check(samples, false);
      check.check();
      assertEquals(sign * offset, check.offset(), 1e-15);
      List<String> expected =
          belowDb > 60
              ? List.of()
              : List.of("a constant offset " + belowDb + " dB below the peak was taken off");
      assertEquals(expected, check.notes());
    }
  }

  /** 50 ms outside the window tell an offset, 49 ms do not. */
  @ParameterizedTest
  @CsvSource({"252, 0.01", "251, 0"})
  void aShortRestTellsNoOffset(int size, double offset) throws Exception {
    double[] samples = new double[size];
    java.util.Arrays.fill(samples, 0.01);
    samples[2] = 1;
    SoundContent content = new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty());
    Segment segment = Segment.of(Signal.copyOf(samples, 1000), 2, content);
    assertEquals(202, segment.size());
    assertEquals(offset, new RestCheck(segment, false).offset(), 1e-15);
  }

  /** At most 5 ms ahead of the peak and 50 ms behind it within 20 dB. */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 0.5, ''",
    "5, 50, 0.5, ''",
    "5, 50, 0.1, ''",
    "6, 0, 0.5, 6.0",
    "0, 51, 0.5, 51.0",
    "0, 51, -0.1, 51.0",
    "0, 51, 0.0999, ''",
    "3, 190, 0.5, 193.0"
  })
  void aSweepDividedByAnotherIsNotCompact(int aheadMs, int behindMs, double tail, String spreadMs)
      throws Exception {
    double[] samples = new double[SIZE];
    samples[ONSET] = 0.5;
    samples[ONSET + aheadMs + behindMs] = tail;
    samples[ONSET + aheadMs] = 1;
    samples[301] = 0.3; // outside the window: the rest's, not the sound's
    notes(samples, false);
    if (spreadMs.isEmpty()) {
      notes(samples, true);
    } else {
      assertEquals(
          "divided by the sweep, the sound stays within 20 dB of its peak for "
              + spreadMs
              + " ms, so it is no recording of it",
          refusal(samples, true));
    }
  }
}
