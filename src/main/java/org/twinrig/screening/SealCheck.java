package org.twinrig.screening;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/**
 * Finds seatings whose seal was lost: bass far below the unit's best seal on the same fixture.
 *
 * <p>A leak is a high-pass: what it takes away grows towards low frequencies. A seating is reported
 * when its mean level lies more than a limit below that of the unit's best seating in either of two
 * parts of the axis, <em>and</em> the loss from 20 Hz to 50 Hz is at least 1 dB greater than from
 * 100 Hz to 200 Hz, so that a headphone without a seal to lose, or one that was merely softer, is
 * not accused. The best seating is the one with most level from 20 Hz to 100 Hz, in both parts: a
 * leak may raise the knee above that of sound seatings, but not the deep bass. The best one, not
 * the middle one, is the yardstick: on a soft head most seatings of a unit may leak.
 *
 * <ul>
 *   <li>20 Hz to 100 Hz: limit {@code 1.8 dB + 3.2σ}, at most 7 dB. Here a lost seal costs most.
 *   <li>150 Hz to 250 Hz: limit {@code 1.35 dB + 3.1σ}, at most 4 dB. Seals that hold scatter in
 *       the deep bass; only a large leak reaches up here, so that headphones whose seal is never
 *       good show a lost one here first.
 * </ul>
 *
 * <p>For this check captures are lined up from 300 Hz to 1 kHz, whatever the study's anchor: its
 * limits were set so.
 *
 * <p>{@code σ} is the scatter of the same level over all seatings of the kind on the fixture, from
 * the differences within every unit ({@link Scatter#ofPairs}): where every seating scatters,
 * scatter alone is no lost seal. The upper bounds stand for studies in which lost seals are so many
 * that they look like scatter. The numbers are our choice, so that on simulated studies at least 95
 * in a hundred lost seals of any kind are found and at most one sound capture in a hundred is
 * accused (studies/seal-proof): common practice, no source.
 */
public final class SealCheck {
  private static final double MIDDLE_FROM_HZ = 300;
  private static final double MIDDLE_TO_HZ = 1000;

  private final List<Yardstick> yardsticks;
  private final Part bass;
  private final Part deep;
  private final Part knee;

  private SealCheck(BandGrid grid) {
    bass = Part.of(grid, 20, 100);
    yardsticks =
        List.of(
            new Yardstick(bass, 1.8, 3.2, 7, ""),
            new Yardstick(Part.of(grid, 150, 250), 1.35, 3.1, 4, "150 Hz to 250 Hz"));
    deep = Part.of(grid, 20, 50);
    knee = Part.of(grid, 100, 200);
  }

  /** A part of the axis in which seatings are compared, and how its limit is made. */
  private record Yardstick(
      Part part, double floorDb, double sigmas, double ceilingDb, String detail) {}

  /**
   * How far a capture lies below the best seating of its unit in the bass, and the limit it is
   * judged by.
   *
   * <p>Mean level below that of the best seating, in the part of the axis where the capture comes
   * off worse against the limit beyond which the seal counts as lost; the part, when it is not the
   * bass below 100 Hz; how much greater the loss is from 20 Hz to 50 Hz than from 100 Hz to 200 Hz;
   * all in dB.
   */
  public record Score(
      CaptureEntry capture, double lossDb, double limitDb, String detail, double growthDb) {
    /** A leak is a high-pass: its loss grows by at least this much towards low frequencies. */
    private static final double GROWTH_DB = 1;

    /**
     * Whether the seal counts as lost. With a factor on the limit: beyond it, when the loss grows
     * as a leak's does.
     */
    public boolean isLost(double factor) {
      return lossDb > factor * limitDb && growthDb > GROWTH_DB;
    }

    /** Of two scores of one capture, the one nearer to or farther beyond its limit. */
    Score worse(Score other) {
      return other.lossDb * limitDb > lossDb * other.limitDb ? other : this;
    }
  }

  /** Scores the captures of a study that the lab did not leave out and that reach into the bass. */
  public static List<Score> scores(Study study, List<AnchoredCapture> captures) {
    return Group.byScale(study, Screening.offered(captures)).stream()
        .flatMap(groups -> scores(groups).stream())
        .toList();
  }

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    return scores(groupsOfOneScale).stream()
        .filter(score -> score.isLost(1))
        .map(s -> Verdict.of(s.capture, Finding.LOST_SEAL, s.lossDb, s.limitDb, s.detail))
        .toList();
  }

  private static List<Score> scores(List<Group> groupsOfOneScale) {
    BandGrid grid = groupsOfOneScale.get(0).grid();
    Part middle = Part.of(grid, MIDDLE_FROM_HZ, MIDDLE_TO_HZ);
    return new SealCheck(grid)
        .check(groupsOfOneScale.stream().map(g -> g.linedUp(middle)).toList());
  }

  /** Of both parts, the one in which a capture comes off worse against its limit. */
  private List<Score> check(List<Group> groups) {
    Map<CaptureEntry, Score> worst = new LinkedHashMap<>();
    for (Yardstick y : yardsticks) {
      OptionalDouble sigma = Group.scatter(groups.stream().map(g -> g.seats(y.part)).toList());
      if (sigma.isPresent()) {
        double limit = Math.min(y.ceilingDb, y.floorDb + y.sigmas * sigma.getAsDouble());
        for (Group group : groups) {
          losses(group)
              .forEach(
                  (entry, loss) -> {
                    y.part
                        .mean(loss)
                        .ifPresent(
                            db ->
                                worst.merge(
                                    entry,
                                    new Score(entry, db, limit, y.detail, growth(loss)),
                                    Score::worse));
                  });
        }
      }
    }
    return List.copyOf(worst.values());
  }

  /** What each seating lacks against the unit's best, which has most level in the bass. */
  private Map<CaptureEntry, Levels> losses(Group group) {
    Map<CaptureEntry, Levels> losses = new LinkedHashMap<>();
    List<Group.Seat> seats = group.seats(bass);
    seats.stream()
        .max(Comparator.comparingDouble(Group.Seat::levelDb))
        .ifPresent(
            best ->
                seats.forEach(
                    s ->
                        losses.put(
                            s.entry(), best.capture().levels().minus(s.capture().levels()))));
    return losses;
  }

  /** How much more a seating lost in the deep bass than at the knee. */
  private double growth(Levels loss) {
    return deep.mean(loss).orElse(bass.mean(loss).orElse(0)) - knee.mean(loss).orElse(0);
  }
}
