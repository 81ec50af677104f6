package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.Band;
import org.twinrig.band.NominalFrequencies;

/**
 * One quantity of the check unit on one fixture, session by session: a Shewhart chart of single
 * values and an EWMA chart on the same centre line.
 *
 * <p>The octave whose level relative to the whole is charted, nothing for the level itself; one
 * point per session that has a value, in the order of time; limits of single values, none with
 * fewer than {@link #FEWEST_SESSIONS} sessions.
 */
public record DriftChart(Optional<Band> band, List<Point> points, Optional<ControlLimits> limits) {

  /**
   * With fewer sessions an odd one makes two of at most four moving ranges, and limits widened by
   * it could not show it.
   */
  public static final int FEWEST_SESSIONS = 6;

  /**
   * One session on the chart. The mean over the session's seatings of the check unit, dB; the
   * moving average up to here, none without limits; whether either lies outside its limits.
   */
  public record Point(
      String session, double valueDb, int seatings, Optional<Average> ewma, boolean outside) {}

  /**
   * A moving average with its limits. The half-width of the limits is about the centre line; both
   * in dB.
   */
  public record Average(double valueDb, double halfWidthDb) {}

  public DriftChart {
    points = List.copyOf(points);
  }

  /** The chart of points that are not judged yet. */
  static DriftChart of(Optional<Band> band, List<Point> bare) {
    double[] db = bare.stream().mapToDouble(Point::valueDb).toArray();
    if (db.length < FEWEST_SESSIONS) {
      return new DriftChart(band, bare, Optional.empty());
    }
    ControlLimits limits = ControlLimits.byMedianRange(db);
    double[] ewma = limits.averagesDb(db);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < db.length; i++) {
      Average average = new Average(ewma[i], limits.averageHalfWidthDb(i + 1));
      boolean outside =
          limits.exceededBy(db[i])
              || Math.abs(average.valueDb - limits.centreDb()) > average.halfWidthDb;
      Point at = bare.get(i);
      points.add(new Point(at.session, db[i], at.seatings, Optional.of(average), outside));
    }
    return new DriftChart(band, points, Optional.of(limits));
  }

  /** On which side of the centre a session lies outside: 1 above, -1 below, 0 when it does not. */
  int side(String session) {
    return points.stream()
        .filter(p -> p.session.equals(session) && p.outside)
        .mapToInt(this::side)
        .findFirst()
        .orElse(0);
  }

  private int side(Point outside) {
    ControlLimits own = limits.orElseThrow();
    double db =
        own.exceededBy(outside.valueDb) ? outside.valueDb : outside.ewma.orElseThrow().valueDb;
    return db > own.centreDb() ? 1 : -1;
  }

  /**
   * How far a session on the chart departs, by whichever of value and average exceeds its limit
   * more; there must be limits.
   */
  Departure departed(String session) {
    ControlLimits own = limits.orElseThrow();
    Point p = points.stream().filter(of -> of.session.equals(session)).findFirst().orElseThrow();
    Average average = p.ewma.orElseThrow();
    Departure single = new Departure(Math.abs(p.valueDb - own.centreDb()), own.halfWidthDb());
    Departure lasting =
        new Departure(Math.abs(average.valueDb - own.centreDb()), average.halfWidthDb);
    return lasting.exceeds(single) ? lasting : single;
  }

  /** A distance from the centre line and what is allowed, both in dB. */
  record Departure(double valueDb, double limitDb) {
    /** Further beyond its limit than another; cross-multiplied, as a limit may be 0. */
    boolean exceeds(Departure other) {
      return valueDb * other.limitDb > other.valueDb * limitDb;
    }
  }

  /** The quantity in words: for example {@code level} or {@code octave at 125 Hz}. */
  public String words() {
    return band.map(
            b ->
                b.equals(CheckCaptures.TOP)
                    ? "range 11.2 kHz to 17.8 kHz"
                    : "octave at " + NominalFrequencies.label(b))
        .orElse("level");
  }

  /** Mid-band frequency of the octave: Hz, or nothing for the level itself. */
  public OptionalDouble midHz() {
    return band.map(b -> OptionalDouble.of(b.midHz())).orElse(OptionalDouble.empty());
  }
}
