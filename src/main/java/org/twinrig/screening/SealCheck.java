package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings whose seal was lost: bass far below the unit's best seal on the same fixture.
 *
 * <p>A leak is a high-pass: what it takes away grows towards low frequencies. A seating is reported
 * when its mean level from 20 Hz to 100 Hz lies more than the limit below that of the unit's best
 * seating <em>and</em> the loss is greater in the lower half of that range than from 100 Hz to 200
 * Hz, so that a headphone without a seal to lose, or one that is merely soft in the bass, is not
 * accused.
 *
 * <p>The limit is {@code 3 dB + 4σ}, {@code σ} the robust scatter (1.4826 times the median absolute
 * deviation from each unit's median) of the same level over all seatings of the kind on the
 * fixture: where every seating scatters, scatter alone is no lost seal. The factors are our choice:
 * common practice, no source.
 */
final class SealCheck {
  private static final double FLOOR_DB = 3;
  private static final double SCALES = 4;
  private static final double MAD_TO_SIGMA = 1.4826;
  private static final double BASS_FROM_HZ = 20;
  private static final double BASS_TO_HZ = 100;
  private static final double KNEE_TO_HZ = 200;
  private static final double GROWTH_DB = 1;

  private SealCheck() {}

  static List<Verdict> of(List<Group> groupsOfOneScale, boolean exclude) {
    double limit = FLOOR_DB + SCALES * scatter(groupsOfOneScale);
    List<Verdict> verdicts = new ArrayList<>();
    for (Group group : groupsOfOneScale) {
      AnchoredCapture best = best(group);
      for (AnchoredCapture c : group.captures()) {
        OptionalDouble bass = loss(best.levels(), c.levels(), BASS_FROM_HZ, BASS_TO_HZ);
        OptionalDouble deep = loss(best.levels(), c.levels(), BASS_FROM_HZ, BASS_TO_HZ / 2);
        OptionalDouble knee = loss(best.levels(), c.levels(), BASS_TO_HZ, KNEE_TO_HZ);
        if (bass.isPresent()
            && bass.getAsDouble() > limit
            && deep.orElse(bass.getAsDouble()) > knee.orElse(0) + GROWTH_DB) {
          verdicts.add(
              new Verdict(
                  c.capture().entry(),
                  Verdict.Finding.LOST_SEAL,
                  bass.getAsDouble(),
                  limit,
                  exclude));
        }
      }
    }
    return verdicts;
  }

  private static double scatter(List<Group> groups) {
    double[] deviations =
        groups.stream()
            .flatMapToDouble(
                g -> {
                  double[] bass =
                      g.captures().stream()
                          .map(c -> mean(c.levels(), BASS_FROM_HZ, BASS_TO_HZ))
                          .filter(OptionalDouble::isPresent)
                          .mapToDouble(OptionalDouble::getAsDouble)
                          .toArray();
                  return bass.length < 2
                      ? DoubleStream.empty()
                      : DoubleStream.of(bass).map(x -> Math.abs(x - Group.median(bass)));
                })
            .toArray();
    return deviations.length == 0 ? 0 : MAD_TO_SIGMA * Group.median(deviations);
  }

  private static AnchoredCapture best(Group group) {
    AnchoredCapture best = group.captures().get(0);
    for (AnchoredCapture c : group.captures()) {
      double level = mean(c.levels(), BASS_FROM_HZ, BASS_TO_HZ).orElse(Double.NEGATIVE_INFINITY);
      if (level > mean(best.levels(), BASS_FROM_HZ, BASS_TO_HZ).orElse(Double.NEGATIVE_INFINITY)) {
        best = c;
      }
    }
    return best;
  }

  private static OptionalDouble loss(Levels best, Levels level, double fromHz, double toHz) {
    return mean(best.minus(level), fromHz, toHz);
  }

  private static OptionalDouble mean(Levels levels, double fromHz, double toHz) {
    double sum = 0;
    int count = 0;
    for (int b = 0; b < levels.grid().size(); b++) {
      double midHz = levels.grid().band(b).midHz();
      if (midHz >= fromHz && midHz < toHz && levels.has(b)) {
        sum += levels.db(b);
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
  }
}
