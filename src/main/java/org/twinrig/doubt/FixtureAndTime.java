package org.twinrig.doubt;

import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.study.Study;

/**
 * Whether one fixture was used before the other: then drift of the chain and wear of the pads
 * cannot be told from what changed with the fixture.
 *
 * <p>The measure is how often, of all pairs of a capture on the one and a capture on the other
 * fixture, that on the old one came first; a pair of one time counts half. It is Mann and Whitney's
 * {@code U/(n·m)}: 0.5 where the fixtures took turns, 0 or 1 where one was finished before the
 * other was begun. Doubted from 0.9 (or up to 0.1) on: our choice, common practice, no source.
 * Captures that the lab left out, and those of check units, do not count; a study with a capture
 * whose time is not known is not judged.
 */
public final class FixtureAndTime {
  /** The doubt as files name it. */
  public static final String DOUBT = "fixture and time confounded";

  private static final double LIMIT = 0.9;

  private FixtureAndTime() {}

  /** The doubt about a study; nothing where fixtures took turns or times are not known. */
  public static Optional<Doubt> of(Study study) {
    Optional<Map<LocalDateTime, Long>> old = times(study, study.from().name());
    Optional<Map<LocalDateTime, Long>> now = times(study, study.to().name());
    if (old.isEmpty() || now.isEmpty() || old.get().isEmpty() || now.get().isEmpty()) {
      return Optional.empty();
    }
    double oldFirst = oldFirst(old.get(), now.get());
    double share = Math.max(oldFirst, 1 - oldFirst);
    if (share < LIMIT) {
      return Optional.empty();
    }
    boolean oldWasFirst = oldFirst >= LIMIT;
    String first = oldWasFirst ? study.from().label() : study.to().label();
    String second = oldWasFirst ? study.to().label() : study.from().label();
    return Optional.of(
        Doubt.open(
            Doubt.Subject.STUDY,
            "",
            "",
            DOUBT,
            new Doubt.Found(percent(share), percent(LIMIT)),
            "of all pairs of captures, one on each fixture, %s have the one on %s first (doubted from %s on)."
                .formatted(percent(share), first, percent(LIMIT)),
            ("Drift and worn pads cannot be told from the change of fixture. Capture some units"
                    + " again on %s now, after %s, and take turns from here on.")
                .formatted(first, second)));
  }

  private static String percent(double share) {
    return Numbers.fixed(100 * share, 0) + " %";
  }

  /** How many captures on a fixture were made when; nothing where one has no known time. */
  private static Optional<Map<LocalDateTime, Long>> times(Study study, String fixture) {
    Map<String, Optional<LocalDateTime>> sessions = new HashMap<>();
    study.sessions().forEach((Session s) -> sessions.put(s.name(), s.time()));
    List<String> check =
        study.units().stream().filter(u -> u.role() == Unit.Role.CHECK).map(Unit::name).toList();
    Map<LocalDateTime, Long> times = new HashMap<>();
    for (CaptureEntry entry : study.captures()) {
      if (entry.fixture().equals(fixture)
          && !entry.excludedByLab()
          && !check.contains(entry.unit())) {
        Optional<LocalDateTime> time = sessions.getOrDefault(entry.session(), Optional.empty());
        if (time.isEmpty()) {
          return Optional.empty();
        }
        times.merge(time.get(), 1L, Long::sum);
      }
    }
    return Optional.of(times);
  }

  private static double oldFirst(Map<LocalDateTime, Long> old, Map<LocalDateTime, Long> now) {
    double first = 0;
    double all = 0;
    for (Map.Entry<LocalDateTime, Long> a : old.entrySet()) {
      for (Map.Entry<LocalDateTime, Long> b : now.entrySet()) {
        double pairs = (double) a.getValue() * b.getValue();
        int order = a.getKey().compareTo(b.getKey());
        first += pairs * (order < 0 ? 1 : order == 0 ? 0.5 : 0);
        all += pairs;
      }
    }
    return first / all;
  }
}
