package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;

/** The drift chart of the check unit on one fixture: its level, and below it every octave. */
public final class DriftFigure {
  /** Longer lists of names do not fit into a title beside the fixture. */
  private static final int MOST_LETTERS = 32;

  private static final int LEVEL_HEIGHT = 130;
  private static final int OCTAVE_HEIGHT = 62;

  /** So many sessions' letters fit side by side under the level's chart. */
  private static final int LETTERS_ACROSS = 120;

  /** The axis ends a little beyond what is farthest out. */
  private static final double REACH = 1.08;

  private static final double LEAST_DB = 0.01;

  private DriftFigure() {}

  public static Figure of(FixtureDrift drift, String unit, String fingerprint) {
    Plot level =
        plot(drift.level(), "Level as calibrated re centre, dB", names(drift.level().points()));
    List<Plot> octaves =
        drift.octaves().stream()
            .map(c -> plot(c, Figure.capital(c.words()) + " re level and centre, dB", List.of()))
            .toList();
    return new Sheet(
            Figure.capital(drift.label()) + ": " + finding(drift),
            howToRead(drift.level(), unit),
            fingerprint)
        .rows(List.of(level), 1, LEVEL_HEIGHT)
        .rows(octaves, 2, OCTAVE_HEIGHT)
        .foot("diamond: outside its limits; sessions from left to right")
        .figure(
            Figure.nameOf("drift", drift.fixture()),
            "Level and octave levels of the check unit by session, with control limits and moving"
                + " averages");
  }

  private static String finding(FixtureDrift drift) {
    if (drift.level().points().isEmpty()) {
      return "the check unit was not captured";
    }
    if (drift.level().limits().isEmpty()) {
      return "too few sessions for limits";
    }
    List<FixtureDrift.OutOfControl> out = drift.outOfControl();
    if (out.isEmpty()) {
      return "no session is out of control";
    }
    String names =
        out.stream().map(FixtureDrift.OutOfControl::session).collect(Collectors.joining(", "));
    String named =
        names.length() <= MOST_LETTERS ? names : Numbers.count(out.size(), "session", "sessions");
    return named + (out.size() == 1 ? " is" : " are") + " out of control";
  }

  private static String howToRead(DriftChart level, String unit) {
    String sessions = Numbers.count(level.points().size(), "session", "sessions");
    return "check unit %s, %s; %s"
        .formatted(
            unit,
            sessions,
            level.limits().isPresent()
                ? "dotted: limits for the whole study; pale band: those of the moving average (line)"
                : "limits need " + DriftChart.FEWEST_SESSIONS);
  }

  /** One control chart, levels relative to its centre: a point per session, limits, average. */
  private static Plot plot(DriftChart chart, String words, List<Axis.Tick> names) {
    List<DriftChart.Point> points = chart.points();
    Optional<ControlLimits> limits = chart.limits();
    double centre =
        limits
            .map(ControlLimits::centreDb)
            .orElse(points.stream().mapToDouble(DriftChart.Point::valueDb).average().orElse(0));
    double[] at = IntStream.range(0, points.size()).mapToDouble(i -> i).toArray();
    double[] values = Values.of(points, p -> p.valueDb() - centre);
    double least = limits.map(ControlLimits::halfWidthDb).orElse(0.0);
    double reach =
        REACH * Arrays.stream(values).map(Math::abs).reduce(Math.max(LEAST_DB, least), Math::max);
    Axis sessions =
        new Axis("", -0.5, Math.max(1, points.size()) - 0.5, false, 0, names, List.of());
    Plot plot =
        new Plot(sessions, Axis.stepped(words, -reach, reach, Axis.roundStep(reach / 2), 0), true);
    if (limits.isPresent()) {
      double[] half = Values.of(points, p -> p.ewma().orElseThrow().halfWidthDb());
      plot.with(new Plot.Area(at, Arrays.stream(half).map(h -> -h).toArray(), half, Ink.BAND))
          .line(at, Values.of(points, p -> p.ewma().orElseThrow().valueDb() - centre), Ink.OUTLINE)
          .rule(limits.get().lowerDb() - centre, Ink.LIMIT)
          .rule(limits.get().upperDb() - centre, Ink.LIMIT);
    }
    double[] outside = Values.of(points, p -> p.outside() ? p.valueDb() - centre : Double.NaN);
    return plot.with(new Plot.Dots(at, values, SeriesMarkers.CIRCLE, Ink.TEXT))
        .with(new Plot.Dots(at, outside, SeriesMarkers.DIAMOND, Ink.NEW_FIXTURE));
  }

  /** The names of all sessions where there is room, else of those outside that do not collide. */
  private static List<Axis.Tick> names(List<DriftChart.Point> points) {
    int longest = points.stream().mapToInt(p -> p.session().length()).max().orElse(0);
    boolean all = longest * points.size() <= LETTERS_ACROSS;
    List<Axis.Tick> names = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < points.size(); i++) {
      double half = points.get(i).session().length() * points.size() / 2.0 / LETTERS_ACROSS;
      if (all || (points.get(i).outside() && i - half >= free)) {
        names.add(new Axis.Tick(i, points.get(i).session()));
        free = i + half;
      }
    }
    return names;
  }
}
