package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.ZonePlan;

/** The tables of a plan. */
public final class PlanResults {
  private PlanResults() {}

  /** Plans, one per kind, and the limits they were made within. */
  private record Made(List<Plan> plans, PlanLimits limits) {
    <T> Stream<T> each(Function<Plan, Stream<T>> rows) {
      return plans.stream().flatMap(rows);
    }
  }

  private record Octave(Plan plan, ZonePlan zone, PlanLimits limits) {}

  private static final Result<Made> OCTAVES =
      Result.of(
          "plan.csv",
          "kind and octave (or part of one, where the tolerance has a step)",
          Columns.<Octave>start()
              .text("kind", o -> o.plan.kind())
              .hz("from_hz", o -> o.zone.fromHz())
              .hz("to_hz", o -> o.zone.toHz())
              .number("tolerance_db", o -> o.zone.toleranceDb())
              .help("the half-width to be reached")
              .number("present_half_db", o -> o.zone.variance().presentHalfDb())
              .help("now; half-widths here are root mean squares over the octave")
              .number("never_below_db", o -> o.zone.variance().neverBelowDb())
              .help("what no number of units and seatings goes below")
              .word(
                  "outlook",
                  o -> o.zone.outlook().name().toLowerCase(Locale.ROOT).replace('_', ' '))
              .help("*met*, *planned*, *even chance*, *beyond limits* or *never*")
              .part(
                  o -> o.zone.evenChance(),
                  d ->
                      design(
                          d,
                          "even",
                          "the cheapest design expected to meet the tolerance, which every other"
                              + " study misses: units, seatings of each on either fixture, seatings"
                              + " in all"))
              .number(
                  "even_half_db", o -> o.zone.evenChance().map(d -> o.zone.variance().halfDb(d)))
              .help("half-width expected of it")
              .part(
                  o -> o.zone.cautious(),
                  d ->
                      design(
                          d,
                          "cautious",
                          "the cheapest that meets it nine times in ten, to within a tenth of it"))
              .number(
                  "cautious_half_db", o -> o.zone.cautious().map(d -> o.zone.variance().halfDb(d)))
              .help("half-width expected of it")
              .number(
                  "cautious_upper_half_db",
                  o -> o.zone.cautious().map(d -> o.zone.variance().upperHalfDb(d)))
              .help("half-width it stays below nine times in ten")
              .number("difference_db", o -> o.limits.differenceDb())
              .help("the study's *equivalence_db*")
              .count(
                  "units_to_show",
                  o -> o.zone.unitsToShow(o.limits.differenceDb(), o.limits.unitsMax()))
              .help(
                  "units, seated as now, with which a mean transfer of that size is shown nine"
                      + " times in ten"),
          made -> made.each(p -> p.zones().stream().map(z -> new Octave(p, z, made.limits))));

  private static Columns<Design> design(Columns<Design> columns, String which, String help) {
    return columns
        .count(which + "_units", Design::units)
        .count(which + "_seatings_from", Design::seatingsFrom)
        .count(which + "_seatings_to", Design::seatingsTo)
        .count(which + "_seatings", Design::seatings)
        .help(help);
  }

  private record PlannedBand(Plan plan, Plan.BandPlan band) {}

  private static final Result<Made> BANDS =
      Result.of(
          "plan-bands.csv",
          "kind and band with an estimate",
          Columns.<PlannedBand>start()
              .text("kind", b -> b.plan.kind())
              .hz("band_hz", b -> b.band.band().midHz())
              .number("tolerance_db", b -> b.band.toleranceDb())
              .number("present_half_db", b -> b.band.presentHalfDb())
              .number("planned_half_db", b -> b.band.plannedHalfDb())
              .help(
                  "expected of the cheapest design with an even chance for all octaves that have"
                      + " one; as now where there is none")
              .number("never_below_db", b -> b.band.neverBelowDb())
              .word("curable", b -> b.band.curable())
              .help("whether *never_below_db* is within the tolerance"),
          made -> made.each(p -> p.bands().stream().map(b -> new PlannedBand(p, b))));

  private record Curve(Plan plan, ZonePlan zone, Design design) {}

  private static final Result<Made> CURVES =
      Result.of(
          "plan-curves.csv",
          "kind, octave, number of seatings and number of units",
          Columns.<Curve>start()
              .text("kind", c -> c.plan.kind())
              .hz("from_hz", c -> c.zone.fromHz())
              .hz("to_hz", c -> c.zone.toHz())
              .count("units", c -> c.design.units())
              .count("seatings_from", c -> c.design.seatingsFrom())
              .count("seatings_to", c -> c.design.seatingsTo())
              .help("of every unit; the same on both fixtures")
              .number("half_db", c -> c.zone.variance().halfDb(c.design))
              .help("expected")
              .number("upper_half_db", c -> c.zone.variance().upperHalfDb(c.design))
              .help("stays below it nine times in ten"),
          made -> made.each(p -> p.zones().stream().flatMap(z -> designs(p, made.limits, z))));

  private static Stream<Curve> designs(Plan plan, PlanLimits limits, ZonePlan zone) {
    return seatings(limits).stream()
        .flatMap(
            m ->
                IntStream.rangeClosed(plan.present().units(), limits.unitsMax())
                    .mapToObj(n -> new Curve(plan, zone, new Design(n, m, m))));
  }

  /**
   * The numbers of seatings for which curves are given, the same on both fixtures: 2, 3, 5 and 10
   * as far as the limit allows, and the limit.
   */
  public static List<Integer> seatings(PlanLimits limits) {
    List<Integer> seatings = new ArrayList<>();
    for (int m : new int[] {2, 3, 5, 10}) {
      if (m < limits.seatingsMax()) {
        seatings.add(m);
      }
    }
    seatings.add(limits.seatingsMax());
    return seatings.size() > 4 ? List.of(2, 3, 5, limits.seatingsMax()) : seatings;
  }

  /** All of them, in the order of the manual. */
  static final List<Result<?>> ALL = List.of(OCTAVES, BANDS, CURVES);

  public static void write(List<Plan> plans, PlanLimits limits, Path folder) throws IOException {
    for (Result<Made> result : List.of(OCTAVES, BANDS, CURVES)) {
      result.write(folder, new Made(plans, limits));
    }
  }
}
