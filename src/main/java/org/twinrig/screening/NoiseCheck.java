package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds captures that are clipped or limited by noise: their level jitters from point to point
 * where the unit's other captures are smooth.
 *
 * <p>The ripple of a capture in one of the four parts 20 Hz–200 Hz–4 kHz–10 kHz–20 kHz is the
 * standard deviation of a reading that explains the upper quartile of {@code |r|}, {@code r_j = L_j
 * - (a·L_{j-1} + (1-a)·L_{j+1})} the departure of a point from the line through its neighbours,
 * {@code sd(r)² = σ²(1 + a² + (1-a)²)}. Resonances bend a curve as well: the ripple is therefore
 * compared with the median of the unit's other captures on the fixture, either side, and only when
 * these have about as many points there (within one fifth). The limit is three times that median,
 * at least 0.15 dB. The factors are our choice: common practice, no source.
 */
final class NoiseCheck {
  private static final double FLOOR_DB = 0.15;
  private static final double RATIO = 3;
  private static final double QUARTILE = 0.75;

  /** {@code Φ⁻¹(7/8)}: the upper quartile of the absolute value of a standard normal number. */
  private static final double NORMAL_QUARTILE = 1.1503;

  private static final int LEAST_POINTS = 10;
  private static final double ABOUT_AS_MANY = 1.2;

  private NoiseCheck() {}

  private record Ripple(CaptureEntry capture, double db, int points) {
    boolean likeAxis(Ripple other) {
      return points <= ABOUT_AS_MANY * other.points && other.points <= ABOUT_AS_MANY * points;
    }
  }

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    Map<String, List<AnchoredCapture>> units = new LinkedHashMap<>();
    for (Group g : groupsOfOneScale) {
      units.computeIfAbsent(g.first().unit(), u -> new ArrayList<>()).addAll(g.captures());
    }
    Distances distances = new Distances(Finding.NOISY);
    List<Part> parts = Part.all(groupsOfOneScale.get(0).grid());
    for (List<AnchoredCapture> captures : units.values()) {
      if (captures.size() >= 2) {
        parts.forEach(part -> judge(captures, part, distances));
      }
    }
    return distances.verdicts();
  }

  private static void judge(List<AnchoredCapture> captures, Part part, Distances distances) {
    List<Ripple> ripples = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      double[] departures = departures(c.capture().response(), part);
      if (departures.length >= LEAST_POINTS) {
        double db = Scatter.quantile(departures, QUARTILE) / NORMAL_QUARTILE;
        ripples.add(new Ripple(c.entry(), db, departures.length));
      }
    }
    for (Ripple ripple : ripples) {
      double[] others =
          ripples.stream()
              .filter(o -> !o.capture.equals(ripple.capture) && o.likeAxis(ripple))
              .mapToDouble(Ripple::db)
              .toArray();
      if (others.length > 0) {
        distances.startPart();
        distances.add(ripple.capture, ripple.db);
        distances.judge(Math.max(FLOOR_DB, RATIO * Scatter.median(others)), part::words);
      }
    }
  }

  /** {@code |r_j|} over the points of a part, each on the scale of one reading. */
  private static double[] departures(Response r, Part part) {
    double[] departures = new double[r.size()];
    int count = 0;
    for (int j = 1; j + 1 < r.size(); j++) {
      double hz = r.frequencyHz(j);
      if (hz >= part.fromHz() && hz < part.toHz()) {
        double below = r.frequencyHz(j - 1);
        double above = r.frequencyHz(j + 1);
        double a = (above - hz) / (above - below);
        double line = a * r.levelDb(j - 1) + (1 - a) * r.levelDb(j + 1);
        departures[count++] =
            Math.abs(r.levelDb(j) - line) / Math.sqrt(1 + a * a + (1 - a) * (1 - a));
      }
    }
    return Arrays.copyOf(departures, count);
  }
}
