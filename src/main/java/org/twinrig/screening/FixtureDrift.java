package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Session;

/**
 * What the check unit showed on one fixture.
 *
 * <p>The level is charted as calibrated and before any anchor, which would hide its drift; the
 * octaves are charted relative to it, so that a drift of level is not seen eleven times.
 *
 * @param fixture the fixture's name
 * @param label how reports call it
 * @param level chart of the level
 * @param octaves charts of the octaves that have values
 * @param without sessions of the fixture without an accepted capture of the check unit
 */
public record FixtureDrift(
    String fixture,
    String label,
    DriftChart level,
    List<DriftChart> octaves,
    List<String> without) {

  /** As many octaves must lie outside before a session is doubted for its shape. */
  private static final int OCTAVES_OUTSIDE = 2;

  /** Copies the lists. */
  public FixtureDrift {
    octaves = List.copyOf(octaves);
    without = List.copyOf(without);
  }

  static FixtureDrift of(
      String fixture, String label, List<CheckSession> seen, List<Session> sessions) {
    List<DriftChart> octaves = new ArrayList<>();
    for (int b = 0; b < CheckCaptures.OCTAVES.size(); b++) {
      DriftChart chart =
          DriftChart.of(
              Optional.of(CheckCaptures.OCTAVES.band(b)),
              values(seen, CheckSession.Quantity.shape(b)));
      if (!chart.points().isEmpty()) {
        octaves.add(chart);
      }
    }
    List<String> names = seen.stream().map(CheckSession::session).toList();
    return new FixtureDrift(
        fixture,
        label,
        DriftChart.of(Optional.empty(), values(seen, CheckSession.Quantity.level())),
        octaves,
        sessions.stream()
            .filter(s -> s.fixture().equals(fixture) && !names.contains(s.name()))
            .map(Session::name)
            .toList());
  }

  private static List<DriftChart.Value> values(
      List<CheckSession> seen, CheckSession.Quantity quantity) {
    List<DriftChart.Value> values = new ArrayList<>();
    for (CheckSession session : seen) {
      double[] seatings = session.values(quantity);
      if (seatings.length > 0) {
        values.add(
            new DriftChart.Value(
                session.session(),
                Arrays.stream(seatings).average().orElseThrow(),
                seatings.length));
      }
    }
    return values;
  }

  /**
   * All charts.
   *
   * @return the level, then the octaves
   */
  public List<DriftChart> charts() {
    List<DriftChart> all = new ArrayList<>(List.of(level));
    all.addAll(octaves);
    return all;
  }

  /**
   * The sessions out of control: the level outside its limits, or two octaves or more. A microphone
   * or an amplifier that drifts shows over a range; one octave alone is outside by chance in one
   * steady session out of six (ten octaves of which each is outside in 2 %). In simulation 4 % to 7
   * % of steady sessions are still named where there are nine, the more the more neighbouring
   * octaves move together. That two are asked for is our choice: common practice, no source.
   *
   * @return in the order of the table
   */
  public List<OutOfControl> outOfControl() {
    List<OutOfControl> found = new ArrayList<>();
    for (DriftChart.Point point : level.points()) {
      String session = point.session();
      List<DriftChart> outside = octaves.stream().filter(c -> c.outside(session)).toList();
      boolean shape = outside.size() >= OCTAVES_OUTSIDE;
      if (point.outside() || shape) {
        List<DriftChart> charts = new ArrayList<>(point.outside() ? List.of(level) : List.of());
        charts.addAll(shape ? outside : List.of());
        found.add(OutOfControl.of(session, charts));
      }
    }
    return found;
  }

  /**
   * A session out of control.
   *
   * @param session its name
   * @param charts that show it, the level first
   * @param departureDb of the chart that exceeds its limit most, dB
   * @param limitDb of that chart, dB
   */
  public record OutOfControl(
      String session, List<DriftChart> charts, double departureDb, double limitDb) {
    /** Copies the list. */
    public OutOfControl {
      charts = List.copyOf(charts);
    }

    private static OutOfControl of(String session, List<DriftChart> charts) {
      DriftChart.Departure worst =
          charts.stream()
              .map(c -> c.departure(session).orElseThrow())
              .reduce((a, b) -> b.exceeds(a) ? b : a)
              .orElseThrow();
      return new OutOfControl(session, charts, worst.valueDb(), worst.limitDb());
    }
  }
}
