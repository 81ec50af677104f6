package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings that do not look like the unit's others.
 *
 * <p>For a unit seated at least three times, the distance of a seating is the greatest, over the
 * four parts 20 Hz–200 Hz–4 kHz–10 kHz–20 kHz, of the root mean square difference from the median
 * curve of the unit's seatings, divided by the part's scale; the scale is the median of that root
 * mean square over all seatings of the kind on the fixture. A seating is reported when its root
 * mean square exceeds the limit, the greater of 1.5 dB and five scales. The factors are our choice:
 * common practice, no source.
 */
final class OddSeating {
  private static final double FLOOR_DB = 1.5;
  private static final double SCALES = 5;
  private static final int LEAST_SEATINGS = 3;
  private static final double[] PARTS_HZ = {20, 200, 4000, 10_000, 20_000};

  private OddSeating() {}

  private record Distance(AnchoredCapture capture, double rmsDb) {}

  static List<Verdict> of(List<Group> groupsOfOneScale, boolean exclude) {
    List<Verdict> verdicts = new ArrayList<>();
    for (int part = 0; part + 1 < PARTS_HZ.length; part++) {
      List<Distance> distances = new ArrayList<>();
      for (Group group : groupsOfOneScale) {
        if (group.captures().size() >= LEAST_SEATINGS) {
          distances.addAll(distances(group, PARTS_HZ[part], PARTS_HZ[part + 1]));
        }
      }
      if (distances.isEmpty()) {
        continue;
      }
      double scale = Group.median(distances.stream().mapToDouble(Distance::rmsDb).toArray());
      double limit = Math.max(FLOOR_DB, SCALES * scale);
      for (Distance d : distances) {
        if (d.rmsDb > limit) {
          verdicts.add(
              new Verdict(
                  d.capture.capture().entry(),
                  Verdict.Finding.ODD_SEATING,
                  d.rmsDb,
                  limit,
                  exclude));
        }
      }
    }
    return worstOfEach(verdicts);
  }

  /** One verdict per capture: the part in which it exceeds its limit most. */
  private static List<Verdict> worstOfEach(List<Verdict> verdicts) {
    List<Verdict> worst = new ArrayList<>();
    for (Verdict v : verdicts) {
      int known = -1;
      for (int k = 0; k < worst.size(); k++) {
        if (worst.get(k).capture().equals(v.capture())) {
          known = k;
        }
      }
      if (known < 0) {
        worst.add(v);
      } else if (v.value() / v.limit() > worst.get(known).value() / worst.get(known).limit()) {
        worst.set(known, v);
      }
    }
    return worst;
  }

  private static List<Distance> distances(Group group, double fromHz, double toHz) {
    Levels middle = medianCurve(group.captures());
    List<Distance> distances = new ArrayList<>();
    for (AnchoredCapture c : group.captures()) {
      OptionalDouble rms = rms(c.levels().minus(middle), fromHz, toHz);
      if (rms.isPresent()) {
        distances.add(new Distance(c, rms.getAsDouble()));
      }
    }
    return distances;
  }

  private static Levels medianCurve(List<AnchoredCapture> captures) {
    Levels first = captures.get(0).levels();
    double[] middle = new double[first.grid().size()];
    for (int b = 0; b < middle.length; b++) {
      int band = b;
      double[] present =
          captures.stream()
              .filter(c -> c.levels().has(band))
              .mapToDouble(c -> c.levels().db(band))
              .toArray();
      middle[b] = present.length == 0 ? Double.NaN : Group.median(present);
    }
    return Levels.copyOf(first.grid(), middle);
  }

  private static OptionalDouble rms(Levels levels, double fromHz, double toHz) {
    double squares = 0;
    int count = 0;
    for (int b = 0; b < levels.grid().size(); b++) {
      double midHz = levels.grid().band(b).midHz();
      if (midHz >= fromHz && midHz < toHz && levels.has(b)) {
        squares += levels.db(b) * levels.db(b);
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / count));
  }
}
