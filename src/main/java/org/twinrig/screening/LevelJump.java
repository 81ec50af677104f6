package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Finds seatings whose level jumped: the mean level from 300 Hz to 1 kHz before anchoring,
 * corrected for the session's calibrator, departs from the median of the unit's seatings on the
 * fixture.
 *
 * <p>The limit is the greater of 1 dB and {@code 6σ}, {@code σ} the scatter of that level over all
 * seatings of the kind on the fixture, from the differences within every unit ({@link
 * Scatter#ofPairs}). The factors are our choice: common practice, no source. An anchor cancels a
 * jump, so it is only reported; without an anchor it enters the transfer in full. Of two seatings
 * both are named, for it cannot be told which one jumped.
 */
final class LevelJump {
  private static final double FLOOR_DB = 1;
  private static final double SIGMAS = 6;

  private LevelJump() {}

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    Part middle = Part.of(groupsOfOneScale.get(0).grid(), 300, 1000);
    List<List<Group.Seat>> units =
        groupsOfOneScale.stream().map(g -> beforeAnchoring(g.seats(middle))).toList();
    OptionalDouble sigma = Group.scatter(units);
    if (sigma.isEmpty()) {
      return List.of();
    }
    double limit = Math.max(FLOOR_DB, SIGMAS * sigma.getAsDouble());
    return units.stream().flatMap(of -> judge(of, limit).stream()).toList();
  }

  private static List<Group.Seat> beforeAnchoring(List<Group.Seat> seats) {
    return seats.stream()
        .map(s -> new Group.Seat(s.capture(), s.capture().anchorDb() + s.levelDb()))
        .toList();
  }

  private static List<Verdict> judge(List<Group.Seat> seats, double limit) {
    if (seats.size() < 2) {
      return List.of();
    }
    double[] levels = seats.stream().mapToDouble(Group.Seat::levelDb).toArray();
    List<Verdict> verdicts = new ArrayList<>();
    for (int i = 0; i < levels.length; i++) {
      double reference = levels.length == 2 ? levels[1 - i] : Scatter.median(levels);
      double jump = Math.abs(levels[i] - reference);
      if (jump > limit) {
        verdicts.add(Verdict.of(seats.get(i).entry(), Finding.LEVEL_JUMP, jump, limit, ""));
      }
    }
    return verdicts;
  }
}
