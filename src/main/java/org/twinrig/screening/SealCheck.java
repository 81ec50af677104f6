package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings whose seal was lost: bass far below the unit's best seal on the same fixture.
 *
 * <p>A leak is a high-pass: what it takes away grows towards low frequencies. A seating is reported
 * when its mean level from 20 Hz to 100 Hz lies more than the limit below that of the unit's best
 * seating <em>and</em> the loss from 20 Hz to 50 Hz is at least 1 dB greater than from 100 Hz to
 * 200 Hz, so that a headphone without a seal to lose, or one that was merely softer, is not
 * accused. The best seating, not the middle one, is the yardstick: on a soft head most seatings of
 * a unit may leak.
 *
 * <p>The limit is {@code 2.5 dB + 3σ}, at most 7 dB. {@code σ} is the scatter of the same level
 * over all seatings of the kind on the fixture, from the differences within every unit ({@link
 * Scatter#ofPairs}): where every seating scatters, scatter alone is no lost seal. The bound of 7 dB
 * stands for studies in which lost seals are so many that they look like scatter. The numbers are
 * our choice, so that at most about one capture in a hundred is accused in simulated studies
 * without a lost seal: common practice, no source.
 */
final class SealCheck {
  private static final double FLOOR_DB = 2.5;
  private static final double SIGMAS = 3;
  private static final double CEILING_DB = 7;

  private final Part bass;
  private final Part deep;
  private final Part knee;

  private SealCheck(BandGrid grid) {
    bass = Part.of(grid, 20, 100);
    deep = Part.of(grid, 20, 50);
    knee = Part.of(grid, 100, 200);
  }

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    return scores(groupsOfOneScale).stream()
        .filter(score -> score.isLost(1))
        .map(
            score ->
                Verdict.of(score.capture(), Finding.LOST_SEAL, score.lossDb(), score.limitDb(), ""))
        .toList();
  }

  /** Every capture that reaches into the bass, whether its seal was lost or not. */
  static List<SealScore> scores(List<Group> groupsOfOneScale) {
    return new SealCheck(groupsOfOneScale.get(0).grid()).check(groupsOfOneScale);
  }

  private record Seat(AnchoredCapture capture, double bassDb) {}

  private List<SealScore> check(List<Group> groups) {
    List<List<Seat>> seats = groups.stream().map(this::seats).toList();
    double[] differences = seats.stream().flatMapToDouble(SealCheck::differences).toArray();
    if (differences.length == 0) {
      return List.of();
    }
    double limit = Math.min(CEILING_DB, FLOOR_DB + SIGMAS * Scatter.ofPairs(differences));
    return seats.stream().flatMap(of -> judge(of, limit).stream()).toList();
  }

  /** The seatings that reach into the bass. */
  private List<Seat> seats(Group group) {
    List<Seat> seats = new ArrayList<>();
    for (AnchoredCapture c : group.captures()) {
      bass.mean(c.levels()).ifPresent(bassDb -> seats.add(new Seat(c, bassDb)));
    }
    return seats;
  }

  private static DoubleStream differences(List<Seat> seats) {
    DoubleStream.Builder differences = DoubleStream.builder();
    for (int i = 0; i < seats.size(); i++) {
      for (int j = 0; j < i; j++) {
        differences.add(Math.abs(seats.get(i).bassDb - seats.get(j).bassDb));
      }
    }
    return differences.build();
  }

  private List<SealScore> judge(List<Seat> seats, double limit) {
    List<SealScore> scores = new ArrayList<>();
    Seat best = null;
    for (Seat seat : seats) {
      best = best == null || seat.bassDb > best.bassDb ? seat : best;
    }
    for (Seat seat : seats) {
      Levels loss = best.capture.levels().minus(seat.capture.levels());
      double lossDb = bass.mean(loss).orElse(0);
      double growthDb = deep.mean(loss).orElse(lossDb) - knee.mean(loss).orElse(0);
      scores.add(new SealScore(seat.capture.capture().entry(), lossDb, growthDb, limit));
    }
    return scores;
  }
}
