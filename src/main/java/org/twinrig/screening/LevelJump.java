package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.twinrig.study.AnchoredCapture;

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

  private record Reading(AnchoredCapture capture, double levelDb) {}

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    Part middle = Part.of(groupsOfOneScale.get(0).grid(), 300, 1000);
    List<List<Reading>> units = groupsOfOneScale.stream().map(g -> readings(g, middle)).toList();
    double[] differences = units.stream().flatMapToDouble(LevelJump::differences).toArray();
    if (differences.length == 0) {
      return List.of();
    }
    double limit = Math.max(FLOOR_DB, SIGMAS * Scatter.ofPairs(differences));
    return units.stream().flatMap(of -> judge(of, limit).stream()).toList();
  }

  private static List<Reading> readings(Group group, Part middle) {
    List<Reading> readings = new ArrayList<>();
    for (AnchoredCapture c : group.captures()) {
      OptionalDouble mean = middle.mean(c.levels());
      if (mean.isPresent()) {
        readings.add(new Reading(c, c.anchorDb() + mean.getAsDouble()));
      }
    }
    return readings;
  }

  private static DoubleStream differences(List<Reading> readings) {
    DoubleStream.Builder differences = DoubleStream.builder();
    for (int i = 0; i < readings.size(); i++) {
      for (int j = 0; j < i; j++) {
        differences.add(Math.abs(readings.get(i).levelDb - readings.get(j).levelDb));
      }
    }
    return differences.build();
  }

  private static List<Verdict> judge(List<Reading> readings, double limit) {
    if (readings.size() < 2) {
      return List.of();
    }
    double[] levels = readings.stream().mapToDouble(Reading::levelDb).toArray();
    List<Verdict> verdicts = new ArrayList<>();
    for (int i = 0; i < levels.length; i++) {
      double reference = levels.length == 2 ? levels[1 - i] : Scatter.median(levels);
      double jump = Math.abs(levels[i] - reference);
      if (jump > limit) {
        verdicts.add(
            Verdict.of(
                readings.get(i).capture.capture().entry(), Finding.LEVEL_JUMP, jump, limit, ""));
      }
    }
    return verdicts;
  }
}
