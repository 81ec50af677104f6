package org.twinrig.screening;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.twinrig.response.Levels;

/** How far the check unit's octave levels in each session lie from their mean over the sessions. */
final class Departures {
  private Departures() {}

  /**
   * The departures by session.
   *
   * @param seen the sessions of one fixture in which the unit was captured
   * @return none with fewer than two sessions; a session counts at the octaves it has
   */
  static Map<String, OctaveCurve> of(List<CheckSession> seen) {
    Map<String, OctaveCurve> departures = new LinkedHashMap<>();
    if (seen.size() < 2) {
      return departures;
    }
    double[][] means = seen.stream().map(Departures::means).toArray(double[][]::new);
    double[] centre = new double[CheckCaptures.OCTAVES.size()];
    Arrays.setAll(
        centre,
        b ->
            Arrays.stream(means)
                .mapToDouble(m -> m[b])
                .filter(m -> !Double.isNaN(m))
                .average()
                .orElse(Double.NaN));
    for (int s = 0; s < means.length; s++) {
      double[] own = means[s];
      double[] departure =
          IntStream.range(0, own.length).mapToDouble(b -> own[b] - centre[b]).toArray();
      Levels levels = Levels.copyOf(CheckCaptures.OCTAVES, departure);
      if (levels.present() > 0) {
        departures.put(seen.get(s).session(), OctaveCurve.through(levels));
      }
    }
    return departures;
  }

  /** NaN where no seating has the octave. */
  private static double[] means(CheckSession session) {
    return IntStream.range(0, CheckCaptures.OCTAVES.size())
        .mapToDouble(
            b ->
                Arrays.stream(session.values(CheckSession.Quantity.absolute(b)))
                    .average()
                    .orElse(Double.NaN))
        .toArray();
  }
}
