package org.twinrig.simulation;

import java.util.List;
import java.util.stream.Stream;
import org.twinrig.internal.Checks;

/**
 * What study to make. Immutable; the same plan gives the same study, to the byte. Units wanted, per
 * kind; 1 or more seatings of every unit on each fixture; the share of units that are measured left
 * and right, 0 to 1; old graphs of units that are not in the study; whether a few claims of the lab
 * are false: a unit has other pads on the new fixture than on the old one, an in-ear's graph is
 * listed as one of the first kind, and a compensated graph as raw.
 */
public record SimulationPlan(
    long seed,
    List<Group> groups,
    int seatings,
    Axis axis,
    double bothSidesShare,
    Troubles troubles,
    Formats formats,
    int catalogueGraphs,
    boolean falseClaims) {

  public enum Formats {
    /** Comma, point, UTF-8: one way for all. */
    PLAIN,
    /** As several instruments and spreadsheets would. */
    MIXED
  }

  /** Units of one kind that enter the estimates, and those that are kept out of every fit. */
  public record Group(SimulatedKind kind, int fit, int holdout) {
    public Group {
      if (fit < 0 || holdout < 0 || fit + holdout < 1) {
        throw new IllegalArgumentException("a kind needs at least one unit");
      }
    }
  }

  /** Logarithmically spaced frequencies, 2 or more. */
  public record Axis(int points, double fromHz, double toHz) {
    public Axis {
      if (points < 2 || !(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
        throw new IllegalArgumentException(
            "an axis needs 2 or more points and 0 < from < to, but has %s from %s to %s Hz"
                .formatted(points, fromHz, toHz));
      }
    }

    /** The frequencies, rounded to what a file prints so that files hold exactly these. */
    double[] frequenciesHz() {
      double[] hz = new double[points];
      for (int i = 0; i < points; i++) {
        double exact = fromHz * StrictMath.pow(toHz / fromHz, i / (points - 1.0));
        double steps = exact < 100 ? 100 : 10;
        hz[i] = Math.rint(exact * steps) / steps;
      }
      return hz;
    }
  }

  /**
   * What goes wrong in the lab. Shares are probabilities from 0 to 1.
   *
   * @param firstOnHeadLost that the first seating on the head is not sealed
   * @param lost that any other seating is not sealed
   * @param noticed that the lab saw a lost seal and excluded the capture with a reason
   * @param oneFixtureUnits units per kind of 10 or more that were measured on one fixture only
   * @param lateStart that a unit's captures begin at 20 Hz, just inside the lowest band
   * @param drift drift in one session on the head: at its end this much lower above 6 kHz, dB
   */
  public record Troubles(
      double firstOnHeadLost,
      double lost,
      double noticed,
      int oneFixtureUnits,
      double lateStart,
      double drift) {

    public Troubles {
      checkShare(firstOnHeadLost);
      checkShare(lost);
      checkShare(noticed);
      checkShare(lateStart);
      Checks.notNegative(drift, "a drift in dB");
      if (oneFixtureUnits < 0) {
        throw new IllegalArgumentException("units on one fixture must be 0 or more");
      }
    }
  }

  public SimulationPlan {
    groups = List.copyOf(groups);
    if (groups.isEmpty() || groups.stream().map(Group::kind).distinct().count() < groups.size()) {
      throw new IllegalArgumentException("a plan needs kinds, each of them once");
    }
    if (seatings < 1 || catalogueGraphs < 0) {
      throw new IllegalArgumentException("a plan needs 1 or more seatings and 0 or more graphs");
    }
    checkShare(bothSidesShare);
  }

  private static void checkShare(double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("a share must lie from 0 to 1, but is " + share);
    }
  }

  /**
   * A clean study: 12 units each of open over-ear, closed over-ear and in-ear, 5 seatings, one
   * side, no troubles, no catalogue. What proofs of intervals start from.
   */
  public static SimulationPlan standard() {
    List<Group> groups =
        List.of(
            new Group(SimulatedKind.OPEN_OVER_EAR, 12, 0),
            new Group(SimulatedKind.CLOSED_OVER_EAR, 12, 0),
            new Group(SimulatedKind.IN_EAR, 12, 0));
    return new SimulationPlan(
        1,
        groups,
        5,
        new Axis(240, 10, 22_000),
        0,
        new Troubles(0, 0, 0, 0, 0, 0),
        Formats.PLAIN,
        0,
        false);
  }

  /**
   * The study the demonstration shows: three kinds with enough units and one with too few, some
   * units measured on both sides, the usual troubles, files in mixed formats, a back catalogue, and
   * three claims that are false.
   */
  public static SimulationPlan demo() {
    List<Group> groups =
        List.of(
            new Group(SimulatedKind.OPEN_OVER_EAR, 13, 0),
            new Group(SimulatedKind.CLOSED_OVER_EAR, 13, 1),
            new Group(SimulatedKind.IN_EAR, 14, 1),
            new Group(SimulatedKind.ON_EAR, 3, 0));
    return new SimulationPlan(
        20260302,
        groups,
        5,
        new Axis(180, 10, 22_000),
        0.2,
        new Troubles(0.20, 0.012, 0.4, 1, 0.08, 0.8),
        Formats.MIXED,
        44,
        true);
  }

  public SimulationPlan withSeed(long newSeed) {
    return new SimulationPlan(
        newSeed,
        groups,
        seatings,
        axis,
        bothSidesShare,
        troubles,
        formats,
        catalogueGraphs,
        falseClaims);
  }

  public SimulationPlan withGroups(List<Group> newGroups) {
    return new SimulationPlan(
        seed,
        newGroups,
        seatings,
        axis,
        bothSidesShare,
        troubles,
        formats,
        catalogueGraphs,
        falseClaims);
  }

  /** The same plan with so many fitting units in every kind. */
  public SimulationPlan withUnitsPerKind(int units) {
    return withGroups(groups.stream().map(g -> new Group(g.kind(), units, g.holdout())).toList());
  }

  /** The same plan with other kinds, each with as many units as the first has now. */
  public SimulationPlan withKinds(SimulatedKind... kinds) {
    Group first = groups.get(0);
    return withGroups(
        Stream.of(kinds).map(kind -> new Group(kind, first.fit(), first.holdout())).toList());
  }

  public SimulationPlan withSeatings(int newSeatings) {
    return new SimulationPlan(
        seed,
        groups,
        newSeatings,
        axis,
        bothSidesShare,
        troubles,
        formats,
        catalogueGraphs,
        falseClaims);
  }

  public SimulationPlan withAxis(Axis newAxis) {
    return new SimulationPlan(
        seed,
        groups,
        seatings,
        newAxis,
        bothSidesShare,
        troubles,
        formats,
        catalogueGraphs,
        falseClaims);
  }

  public SimulationPlan withBothSidesShare(double share) {
    return new SimulationPlan(
        seed, groups, seatings, axis, share, troubles, formats, catalogueGraphs, falseClaims);
  }

  public SimulationPlan withCatalogueGraphs(int graphs) {
    return new SimulationPlan(
        seed, groups, seatings, axis, bothSidesShare, troubles, formats, graphs, falseClaims);
  }

  /** Makes the study on a plate and a head: the study; the same for equal plans. */
  public SimulatedStudy draw() {
    return draw(FixturePair.PLATE_TO_HEAD);
  }

  public SimulatedStudy draw(FixturePair fixtures) {
    return new StudyDraw(this, fixtures).study();
  }
}
