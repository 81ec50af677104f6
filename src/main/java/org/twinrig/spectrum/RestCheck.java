package org.twinrig.spectrum;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;

/**
 * Whether the window holds the response: how far the rest of the file lies below it, and whether
 * what a sweep was divided into is compact. A sweep taken for an impulse response, or divided by
 * another sweep, fails here.
 */
final class RestCheck {
  /** The rest of the file must lie at least so far below the window, in mean power. */
  private static final double LEAST_ABOVE_REST_DB = 10;

  /** With noise 30 dB down the level of a band is in doubt by some 0.3 dB. */
  private static final double QUIET_REST_DB = 30;

  /** How long a headphone stays within 20 dB of its peak at most (common practice, no source). */
  private static final double MOST_AHEAD_MS = 5;

  private static final double MOST_BEHIND_MS = 50;
  private static final double SPREAD_SHARE = 0.1;

  /** Where a quiet stretch is shorter, it does not tell an offset from a slow part of the sound. */
  private static final double LEAST_QUIET_MS = 50;

  /** An offset this far below the peak is worth a note. */
  private static final double OFFSET_WORTH_A_NOTE_DB = 60;

  private final Segment segment;
  private final boolean sweep;
  private final List<String> notes = new ArrayList<>();
  private final double offset;
  private final double peak;

  RestCheck(Segment segment, boolean sweep) {
    this.segment = segment;
    this.sweep = sweep;
    this.offset = offset(segment);
    this.peak = segment.impulse().peak(segment.from(), segment.to());
  }

  /** A constant in the samples, as the stretch outside the window shows it. */
  double offset() {
    return offset;
  }

  List<String> notes() {
    return List.copyOf(notes);
  }

  void check() throws UnusableSound {
    noteOffset();
    checkRest();
    if (sweep) {
      checkSpread();
    }
  }

  private void noteOffset() {
    if (Math.abs(offset) > 0 && decibels(peak / Math.abs(offset)) < OFFSET_WORTH_A_NOTE_DB) {
      notes.add(
          "a constant offset "
              + Numbers.fixed(decibels(peak / Math.abs(offset)), 1)
              + " dB below the peak was taken off");
    }
  }

  private void checkRest() throws UnusableSound {
    Signal impulse = segment.impulse();
    int rest = impulse.size() - segment.size();
    double outside =
        impulse.energy(0, segment.from(), offset)
            + impulse.energy(segment.to(), impulse.size(), offset);
    if (rest < impulse.samplesIn(LEAST_QUIET_MS) || outside == 0) {
      return;
    }
    double inside = impulse.energy(segment.from(), segment.to(), offset);
    double aboveDb = decibels(Math.sqrt(inside / segment.size() / (outside / rest)));
    int loudest = impulse.peakIndex();
    boolean holdsPeak = loudest >= segment.from() && loudest < segment.to();
    if (!holdsPeak || aboveDb < LEAST_ABOVE_REST_DB) {
      throw foreign(
          "the sound does not stand out in the window after its onset ("
              + Numbers.fixed(aboveDb, 1)
              + " dB above the rest, but at least "
              + Numbers.fixed(LEAST_ABOVE_REST_DB, 0)
              + " dB are needed)");
    }
    if (aboveDb < QUIET_REST_DB) {
      notes.add(
          "the rest of the file lies only "
              + Numbers.fixed(aboveDb, 1)
              + " dB below the window: noise may show in the levels");
    }
  }

  /** Another sweep leaves a chirp: its strong part runs ahead of the peak or trails behind it. */
  private void checkSpread() throws UnusableSound {
    Signal impulse = segment.impulse();
    int loudest = impulse.peakIndex();
    int last = segment.to() - 1;
    while (Math.abs(impulse.sample(last)) < SPREAD_SHARE * peak) {
      last--;
    }
    double aheadMs = impulse.milliseconds(loudest - segment.onset());
    double behindMs = impulse.milliseconds(last - loudest);
    if (aheadMs > MOST_AHEAD_MS || behindMs > MOST_BEHIND_MS) {
      throw foreign(
          "divided by the sweep, the sound stays within 20 dB of its peak for "
              + Numbers.fixed(aheadMs + behindMs, 1)
              + " ms");
    }
  }

  private UnusableSound foreign(String what) {
    return sweep
        ? new UnusableSound(
            what + ", so it is no recording of it",
            "correct `sweep` in study.yaml: its frequencies, its length")
        : new UnusableSound(
            what + ", so it is no impulse response",
            "declare the `sweep` in study.yaml if this is a recording of one, or give an impulse"
                + " response");
  }

  private static double offset(Segment segment) {
    Signal impulse = segment.impulse();
    int rest = impulse.size() - segment.size();
    return rest < impulse.samplesIn(LEAST_QUIET_MS)
        ? 0
        : (impulse.sum(0, segment.from()) + impulse.sum(segment.to(), impulse.size())) / rest;
  }

  private static double decibels(double ratio) {
    return 20 * Math.log10(ratio);
  }
}
