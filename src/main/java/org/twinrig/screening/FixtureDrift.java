package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.twinrig.band.Band;
import org.twinrig.capture.Session;

/**
 * What the check unit showed on one fixture.
 *
 * <p>The level is charted as calibrated and before any anchor, which would hide its drift; the
 * octaves are charted relative to it, so that a drift of level is not seen eleven times. Octaves
 * without values have no chart. Sessions without an accepted capture of the check unit are named.
 */
public record FixtureDrift(
    String fixture,
    String label,
    DriftChart level,
    List<DriftChart> octaves,
    List<String> without) {

  public FixtureDrift {
    octaves = List.copyOf(octaves);
    without = List.copyOf(without);
  }

  static FixtureDrift of(
      String fixture, String label, List<CheckSession> seen, List<Session> sessions) {
    List<DriftChart> octaves = new ArrayList<>();
    for (int b = 0; b < CheckCaptures.OCTAVES.size(); b++) {
      int octave = b;
      DriftChart chart =
          chart(Optional.of(CheckCaptures.OCTAVES.band(b)), seen, s -> s.shape(octave));
      if (!chart.points().isEmpty()) {
        octaves.add(chart);
      }
    }
    List<String> names = seen.stream().map(CheckSession::session).toList();
    return new FixtureDrift(
        fixture,
        label,
        chart(Optional.empty(), seen, CheckSession::levels),
        octaves,
        sessions.stream()
            .filter(s -> s.fixture().equals(fixture) && !names.contains(s.name()))
            .map(Session::name)
            .toList());
  }

  private static DriftChart chart(
      Optional<Band> band, List<CheckSession> seen, Function<CheckSession, double[]> quantity) {
    List<DriftChart.Point> points = new ArrayList<>();
    for (CheckSession session : seen) {
      double[] seatings = quantity.apply(session);
      Arrays.stream(seatings)
          .average()
          .ifPresent(
              mean ->
                  points.add(
                      new DriftChart.Point(
                          session.session(), mean, seatings.length, Optional.empty(), false)));
    }
    return DriftChart.of(band, points);
  }

  /** All charts: the level, then the octaves. */
  public List<DriftChart> charts() {
    List<DriftChart> all = new ArrayList<>(List.of(level));
    all.addAll(octaves);
    return all;
  }

  /**
   * The sessions out of control: the level outside its limits, or two neighbouring octaves outside
   * theirs on the same side. A microphone or an amplifier that drifts shows over a range; one
   * octave alone may be outside by chance. The rule is our choice: common practice, no source.
   */
  public List<OutOfControl> outOfControl() {
    List<OutOfControl> found = new ArrayList<>();
    for (DriftChart.Point point : level.points()) {
      List<DriftChart> charts = new ArrayList<>(point.outside() ? List.of(level) : List.of());
      charts.addAll(range(point.session()));
      if (!charts.isEmpty()) {
        found.add(OutOfControl.of(point.session(), charts));
      }
    }
    return found;
  }

  /** The octaves outside that have a neighbour outside on the same side. */
  private List<DriftChart> range(String session) {
    int[] sides = octaves.stream().mapToInt(c -> c.side(session)).toArray();
    List<DriftChart> range = new ArrayList<>();
    for (int k = 0; k < sides.length; k++) {
      boolean below = k > 0 && sides[k - 1] == sides[k];
      boolean above = k + 1 < sides.length && sides[k + 1] == sides[k];
      if (sides[k] != 0 && (below || above)) {
        range.add(octaves.get(k));
      }
    }
    return range;
  }

  /**
   * A session out of control. The charts that show it, the level first; the one that exceeds its
   * limit most, with its departure and limit in dB.
   */
  public record OutOfControl(
      String session,
      List<DriftChart> charts,
      DriftChart worst,
      double departureDb,
      double limitDb) {
    public OutOfControl {
      charts = List.copyOf(charts);
    }

    private static OutOfControl of(String session, List<DriftChart> charts) {
      DriftChart worst =
          charts.stream()
              .reduce((a, b) -> b.departed(session).exceeds(a.departed(session)) ? b : a)
              .orElseThrow();
      DriftChart.Departure farthest = worst.departed(session);
      return new OutOfControl(session, charts, worst, farthest.valueDb(), farthest.limitDb());
    }
  }
}
