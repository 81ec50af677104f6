package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings whose seal was lost: bass far below the unit's best seal on the same fixture.
 *
 * <p>A leak is a high-pass: what it takes away grows towards low frequencies. A seating is reported
 * when its mean level lies more than a limit below that of the unit's best seating in either of two
 * parts of the axis, <em>and</em> the loss from 20 Hz to 50 Hz is at least 1 dB greater than from
 * 100 Hz to 200 Hz, so that a headphone without a seal to lose, or one that was merely softer, is
 * not accused. The best seating, not the middle one, is the yardstick: on a soft head most seatings
 * of a unit may leak.
 *
 * <ul>
 *   <li>20 Hz to 100 Hz: limit {@code 1.8 dB + 3.2σ}, at most 7 dB. Here a lost seal costs most.
 *   <li>150 Hz to 250 Hz: limit {@code 1.35 dB + 3.1σ}, at most 4 dB. Seals that hold scatter in
 *       the deep bass; only a large leak reaches up here, so that headphones whose seal is never
 *       good show a lost one here first.
 * </ul>
 *
 * <p>{@code σ} is the scatter of the same level over all seatings of the kind on the fixture, from
 * the differences within every unit ({@link Scatter#ofPairs}): where every seating scatters,
 * scatter alone is no lost seal. The upper bounds stand for studies in which lost seals are so many
 * that they look like scatter. The numbers are our choice, so that on simulated studies at least 95
 * in a hundred lost seals of any kind are found and at most one sound capture in a hundred is
 * accused (studies/seal-proof): common practice, no source.
 */
final class SealCheck {
  private final List<Yardstick> yardsticks;
  private final Part deep;
  private final Part knee;

  private SealCheck(BandGrid grid) {
    yardsticks =
        List.of(
            new Yardstick(Part.of(grid, 20, 100), 1.8, 3.2, 7, ""),
            new Yardstick(Part.of(grid, 150, 250), 1.35, 3.1, 4, "150 Hz to 250 Hz"));
    deep = Part.of(grid, 20, 50);
    knee = Part.of(grid, 100, 200);
  }

  /** A part of the axis in which seatings are compared, and how its limit is made. */
  private record Yardstick(
      Part part, double floorDb, double sigmas, double ceilingDb, String detail) {}

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    return scores(groupsOfOneScale).stream()
        .filter(score -> score.isLost(1))
        .map(s -> Verdict.of(s.capture(), Finding.LOST_SEAL, s.lossDb(), s.limitDb(), s.detail()))
        .toList();
  }

  /** Every capture that reaches into the bass, whether its seal was lost or not. */
  static List<SealScore> scores(List<Group> groupsOfOneScale) {
    return new SealCheck(groupsOfOneScale.get(0).grid()).check(groupsOfOneScale);
  }

  private record Seat(AnchoredCapture capture, double levelDb) {
    CaptureEntry entry() {
      return capture.capture().entry();
    }
  }

  /** Of both yardsticks, the one by which a capture comes off worse against its limit. */
  private List<SealScore> check(List<Group> groups) {
    Map<CaptureEntry, Double> growth = new HashMap<>();
    groups.forEach(group -> growth.putAll(growth(group)));
    Map<CaptureEntry, SealScore> worst = new HashMap<>();
    for (Yardstick yardstick : yardsticks) {
      List<List<Seat>> seats = groups.stream().map(g -> seats(g, yardstick.part)).toList();
      double[] differences = seats.stream().flatMapToDouble(SealCheck::differences).toArray();
      if (differences.length > 0) {
        double limit =
            Math.min(
                yardstick.ceilingDb,
                yardstick.floorDb + yardstick.sigmas * Scatter.ofPairs(differences));
        for (List<Seat> of : seats) {
          judge(of, growth, new Limit(limit, yardstick.detail), worst);
        }
      }
    }
    return groups.stream()
        .flatMap(g -> g.captures().stream())
        .map(c -> c.capture().entry())
        .filter(worst::containsKey)
        .map(worst::get)
        .toList();
  }

  /** Seatings with a level in the part. */
  private static List<Seat> seats(Group group, Part part) {
    List<Seat> seats = new ArrayList<>();
    for (AnchoredCapture c : group.captures()) {
      part.mean(c.levels()).ifPresent(db -> seats.add(new Seat(c, db)));
    }
    return seats;
  }

  private static DoubleStream differences(List<Seat> seats) {
    DoubleStream.Builder differences = DoubleStream.builder();
    for (int i = 0; i < seats.size(); i++) {
      for (int j = 0; j < i; j++) {
        differences.add(Math.abs(seats.get(i).levelDb - seats.get(j).levelDb));
      }
    }
    return differences.build();
  }

  /** How much more each seating lost in the deep bass than at the knee, against the best one. */
  private Map<CaptureEntry, Double> growth(Group group) {
    Map<CaptureEntry, Double> growth = new HashMap<>();
    List<Seat> seats = seats(group, yardsticks.get(0).part);
    if (seats.isEmpty()) {
      return growth;
    }
    Seat best = best(seats);
    for (Seat seat : seats) {
      Levels loss = best.capture.levels().minus(seat.capture.levels());
      OptionalDouble low = deep.mean(loss);
      double bass = best.levelDb - seat.levelDb;
      growth.put(seat.entry(), low.orElse(bass) - knee.mean(loss).orElse(0));
    }
    return growth;
  }

  private static Seat best(List<Seat> seats) {
    return seats.stream().max(Comparator.comparingDouble(Seat::levelDb)).orElseThrow();
  }

  private record Limit(double db, String detail) {}

  private static void judge(
      List<Seat> seats,
      Map<CaptureEntry, Double> growth,
      Limit limit,
      Map<CaptureEntry, SealScore> worst) {
    if (seats.isEmpty()) {
      return;
    }
    double bestDb = best(seats).levelDb;
    for (Seat seat : seats) {
      Double growthDb = growth.get(seat.entry());
      if (growthDb != null) {
        SealScore score =
            new SealScore(seat.entry(), bestDb - seat.levelDb, limit.db, limit.detail, growthDb);
        worst.merge(seat.entry(), score, SealScore::worse);
      }
    }
  }
}
