package org.twinrig.screening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/**
 * How far a capture lies below the best seating of its unit in the bass, and the limit it is judged
 * by.
 *
 * @param capture what was measured
 * @param lossDb mean level below that of the best seating, in the part of the axis where the
 *     capture comes off worse against the limit, dB
 * @param limitDb the loss there beyond which the seal counts as lost, dB
 * @param detail the part, when it is not the bass below 100 Hz
 * @param growthDb how much greater the loss is from 20 Hz to 50 Hz than from 100 Hz to 200 Hz, dB
 */
public record SealScore(
    CaptureEntry capture, double lossDb, double limitDb, String detail, double growthDb) {
  /** A leak is a high-pass: its loss grows by at least this much towards low frequencies. */
  private static final double GROWTH_DB = 1;

  /**
   * Scores the captures of a study that the lab did not leave out and that reach into the bass.
   *
   * @param study what the lab declared
   * @return one score per capture
   */
  public static List<SealScore> of(Study study, List<AnchoredCapture> captures) {
    Map<String, String> kinds = new HashMap<>();
    for (Unit unit : study.units()) {
      kinds.put(unit.name(), unit.kind());
    }
    List<SealScore> scores = new ArrayList<>();
    for (List<Group> groups : Group.byScale(Group.of(Screening.offered(captures), kinds::get))) {
      scores.addAll(SealCheck.scores(groups));
    }
    return scores;
  }

  /**
   * Whether the seal counts as lost.
   *
   * @param factor on the limit; 1 for the limit in force
   * @return true beyond the limit, when the loss grows as a leak's does
   */
  public boolean isLost(double factor) {
    return lossDb > factor * limitDb && growthDb > GROWTH_DB;
  }

  /** Of two scores of one capture, the one nearer to or farther beyond its limit. */
  SealScore worse(SealScore other) {
    return other.lossDb * limitDb > lossDb * other.limitDb ? other : this;
  }
}
