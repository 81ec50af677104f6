package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * A smooth curve through octave mid frequencies: linear over lg f between them, constant beyond the
 * first and the last.
 *
 * @param hz mid frequencies, rising, one or more
 */
record OctaveCurve(List<Double> hz, List<Double> values) {
  OctaveCurve {
    hz = List.copyOf(hz);
    values = List.copyOf(values);
    if (hz.isEmpty() || hz.size() != values.size()) {
      throw new IllegalArgumentException("a curve needs points, each with a value");
    }
  }

  /** The curve through the octaves that are present. */
  static OctaveCurve through(Levels octaves) {
    List<Double> hz = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (int b = 0; b < octaves.grid().size(); b++) {
      if (octaves.has(b)) {
        hz.add(octaves.grid().band(b).midHz());
        values.add(octaves.db(b));
      }
    }
    return new OctaveCurve(hz, values);
  }

  double at(double f) {
    int last = hz.size() - 1;
    if (f <= hz.get(0)) {
      return values.get(0);
    }
    if (f >= hz.get(last)) {
      return values.get(last);
    }
    int right = 1;
    while (hz.get(right) < f) {
      right++;
    }
    double share = Math.log(f / hz.get(right - 1)) / Math.log(hz.get(right) / hz.get(right - 1));
    return values.get(right - 1) + share * (values.get(right) - values.get(right - 1));
  }

  Response takenFrom(Response response) {
    double[] levels = new double[response.size()];
    for (int p = 0; p < levels.length; p++) {
      levels[p] = response.levelDb(p) - at(response.frequencyHz(p));
    }
    return response.withLevels(levels);
  }
}
