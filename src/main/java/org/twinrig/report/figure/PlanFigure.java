package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Numbers;

/**
 * Half-width against the number of units, zone by zone, one line per number of seatings.
 *
 * @param seatings at most four numbers of seatings, rising
 * @param unitsMax the most units shown
 */
public record PlanFigure(Plan plan, List<Integer> seatings, int unitsMax) {
  private static final int HEIGHT = 130;
  private static final int COLUMNS = 4;

  /** A zone whose lines lie higher than this many tolerances is cut there. */
  private static final double TALLEST_TOLERANCES = 4;

  /** Draws one kind; its plan has a zone at least. */
  public static Figure of(Plan plan, List<Integer> seatings, int unitsMax, Caption caption) {
    PlanFigure figure = new PlanFigure(plan, seatings, unitsMax);
    List<Plot> plots = plan.zones().stream().map(figure::plot).toList();
    String howToRead =
        "; expected half-width of the %s prediction interval, dB, against the number of units"
            .formatted(caption.percent());
    return caption
        .sheet(finding(plan), howToRead)
        .key(plots.get(0))
        .rows(plots, COLUMNS, HEIGHT)
        .foot(
            "diamond: the study as it is; dot: cheapest design expected to meet the tolerance;"
                + " square: cheapest nine times in ten")
        .figure(
            caption.name("plan"),
            "Prediction half-width against the number of units for several numbers of seatings, one"
                + " small graph per octave, with the tolerance");
  }

  private static String finding(Plan plan) {
    long met = count(plan, ZonePlan.Outlook.MET);
    long never = count(plan, ZonePlan.Outlook.NEVER);
    long hoped = count(plan, ZonePlan.Outlook.PLANNED) + count(plan, ZonePlan.Outlook.EVEN_CHANCE);
    return "%s of %s octaves meet the tolerance%s%s"
        .formatted(
            met,
            plan.zones().size(),
            hoped > 0 ? ", " + hoped + " more can" : "",
            never > 0 ? ", " + never + (hoped > 0 ? " never" : " never can") : "");
  }

  private static long count(Plan plan, ZonePlan.Outlook outlook) {
    return plan.zones().stream().filter(z -> z.outlook() == outlook).count();
  }

  private Plot plot(ZonePlan zone) {
    Axis db = db(zone);
    Plot plot = new Plot(units(), db, true);
    for (int k = 0; k < seatings.size(); k++) {
      int m = seatings.get(k);
      double[] n = IntStream.rangeClosed(present(), unitsMax).mapToDouble(u -> u).toArray();
      double[] half =
          Arrays.stream(n).map(u -> zone.variance().halfDb(new Design((int) u, m, m))).toArray();
      plot.line(n, half, pen(k), m + " seatings on each");
    }
    double[] across = {units().from(), units().to()};
    plot.line(
        across, new double[] {zone.toleranceDb(), zone.toleranceDb()}, Ink.LIMIT, "tolerance");
    mark(plot, present(), zone.variance().presentHalfDb(), SeriesMarkers.DIAMOND);
    zone.evenChance()
        .ifPresent(d -> mark(plot, d.units(), zone.variance().halfDb(d), SeriesMarkers.CIRCLE));
    zone.cautious()
        .ifPresent(d -> mark(plot, d.units(), zone.variance().halfDb(d), SeriesMarkers.SQUARE));
    if (zone.outlook() == ZonePlan.Outlook.NEVER) {
      String words = "never below " + Numbers.fixed(zone.variance().neverBelowDb(), 1) + " dB";
      plot.note(words, unitsMax + 1, 0.07 * db.to(), Drawing.Lie.END, Ink.NOTE);
    }
    return plot;
  }

  private int present() {
    return plan.present().units();
  }

  private static void mark(Plot plot, int units, double half, Marker shape) {
    if (half <= plot.up().to()) {
      plot.with(new Plot.Dots(new double[] {units}, new double[] {half}, shape, Ink.TEXT));
    }
  }

  /** From few seatings, pale and dashed, to many, dark and solid. */
  private Ink.Pen pen(int k) {
    if (k == seatings.size() - 1) {
      return Ink.NEW;
    }
    return k == 0 ? Ink.OLD : new Ink.Pen(Ink.OUTLINE.colour(), k == 1 ? Ink.HAIR : Ink.THIN);
  }

  /** All zones have one axis, so that they can be compared. */
  private Axis db(ZonePlan zone) {
    double tolerance = plan.zones().stream().mapToDouble(ZonePlan::toleranceDb).max().orElse(1);
    Design least = new Design(present(), seatings.get(0), seatings.get(0));
    double greatest =
        plan.zones().stream().mapToDouble(z -> z.variance().halfDb(least)).max().orElse(1);
    double top =
        Math.ceil(Math.min(Math.max(greatest, 1.5 * tolerance), TALLEST_TOLERANCES * tolerance));
    String words = Numbers.hertz(zone.fromHz()) + " to " + Numbers.hertz(zone.toHz());
    return Axis.stepped(words, 0, top, top > 4 ? 2 : 1, 0);
  }

  private Axis units() {
    int step = unitsMax <= 30 ? 5 : unitsMax <= 60 ? 10 : 50;
    List<Axis.Tick> ticks =
        IntStream.rangeClosed(1, unitsMax / step)
            .map(k -> k * step)
            .filter(n -> n >= present())
            .mapToObj(n -> new Axis.Tick(n, Integer.toString(n)))
            .toList();
    return Axis.linear("", present() - 1, unitsMax + 1, ticks);
  }
}
