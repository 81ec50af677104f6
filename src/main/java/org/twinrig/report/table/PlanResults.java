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
          Columns.<Octave>start()
              .text("kind", o -> o.plan.kind())
              .hz("from_hz", o -> o.zone.fromHz())
              .hz("to_hz", o -> o.zone.toHz())
              .number("tolerance_db", o -> o.zone.toleranceDb())
              .number("present_half_db", o -> o.zone.variance().presentHalfDb())
              .number("never_below_db", o -> o.zone.variance().neverBelowDb())
              .word(
                  "outlook",
                  o -> o.zone.outlook().name().toLowerCase(Locale.ROOT).replace('_', ' '))
              .part(o -> o.zone.evenChance(), d -> design(d, "even"))
              .number(
                  "even_half_db", o -> o.zone.evenChance().map(d -> o.zone.variance().halfDb(d)))
              .part(o -> o.zone.cautious(), d -> design(d, "cautious"))
              .number(
                  "cautious_half_db", o -> o.zone.cautious().map(d -> o.zone.variance().halfDb(d)))
              .number(
                  "cautious_upper_half_db",
                  o -> o.zone.cautious().map(d -> o.zone.variance().upperHalfDb(d)))
              .number("difference_db", o -> o.limits.differenceDb())
              .count(
                  "units_to_show",
                  o -> o.zone.unitsToShow(o.limits.differenceDb(), o.limits.unitsMax())),
          made -> made.each(p -> p.zones().stream().map(z -> new Octave(p, z, made.limits))));

  private static Columns<Design> design(Columns<Design> columns, String which) {
    return columns
        .count(which + "_units", Design::units)
        .count(which + "_seatings_from", Design::seatingsFrom)
        .count(which + "_seatings_to", Design::seatingsTo)
        .count(which + "_seatings", Design::seatings);
  }

  private record PlannedBand(Plan plan, Plan.BandPlan band) {}

  private static final Result<Made> BANDS =
      Result.of(
          "plan-bands.csv",
          Columns.<PlannedBand>start()
              .text("kind", b -> b.plan.kind())
              .hz("band_hz", b -> b.band.band().midHz())
              .number("tolerance_db", b -> b.band.toleranceDb())
              .number("present_half_db", b -> b.band.presentHalfDb())
              .number("planned_half_db", b -> b.band.plannedHalfDb())
              .number("never_below_db", b -> b.band.neverBelowDb())
              .word("curable", b -> b.band.curable()),
          made -> made.each(p -> p.bands().stream().map(b -> new PlannedBand(p, b))));

  private record Curve(Plan plan, ZonePlan zone, Design design) {}

  private static final Result<Made> CURVES =
      Result.of(
          "plan-curves.csv",
          Columns.<Curve>start()
              .text("kind", c -> c.plan.kind())
              .hz("from_hz", c -> c.zone.fromHz())
              .hz("to_hz", c -> c.zone.toHz())
              .count("units", c -> c.design.units())
              .count("seatings_from", c -> c.design.seatingsFrom())
              .count("seatings_to", c -> c.design.seatingsTo())
              .number("half_db", c -> c.zone.variance().halfDb(c.design))
              .number("upper_half_db", c -> c.zone.variance().upperHalfDb(c.design)),
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
