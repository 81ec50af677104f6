package org.twinrig.screening;

import java.util.Collections;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * A smooth curve through octave mid frequencies: linear over lg f between them, constant beyond the
 * first and the last.
 *
 * @param points value by mid frequency in Hz, one or more
 */
record OctaveCurve(NavigableMap<Double, Double> points) {
  OctaveCurve {
    points = Collections.unmodifiableNavigableMap(new TreeMap<>(points));
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a curve needs points, each with a value");
    }
  }

  static OctaveCurve through(Levels octaves) {
    NavigableMap<Double, Double> points = new TreeMap<>();
    for (int b = 0; b < octaves.grid().size(); b++) {
      if (octaves.has(b)) {
        points.put(octaves.grid().band(b).midHz(), octaves.db(b));
      }
    }
    return new OctaveCurve(points);
  }

  double at(double hz) {
    Map.Entry<Double, Double> below = points.lowerEntry(hz);
    Map.Entry<Double, Double> above = points.ceilingEntry(hz);
    if (below == null || above == null) {
      return (below == null ? above : below).getValue();
    }
    double share = Math.log(hz / below.getKey()) / Math.log(above.getKey() / below.getKey());
    return below.getValue() + share * (above.getValue() - below.getValue());
  }

  Response takenFrom(Response response) {
    double[] levels = new double[response.size()];
    for (int p = 0; p < levels.length; p++) {
      levels[p] = response.levelDb(p) - at(response.frequencyHz(p));
    }
    return response.withLevels(levels);
  }
}
