package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.ZonePlan;

/** Writes plan.csv, plan-bands.csv and plan-curves.csv. */
public final class PlanTables {
  private PlanTables() {}

  /**
   * Writes them.
   *
   * @param plans one per kind
   * @param limits they were made within
   * @param folder where to
   * @throws IOException when they cannot be written
   */
  public static void write(List<Plan> plans, PlanLimits limits, Path folder) throws IOException {
    zones(plans, limits).write(folder.resolve("plan.csv"));
    bands(plans).write(folder.resolve("plan-bands.csv"));
    curves(plans, limits).write(folder.resolve("plan-curves.csv"));
  }

  static ResultTable zones(List<Plan> plans, PlanLimits limits) {
    ResultTable table =
        new ResultTable(
            ("kind,from_hz,to_hz,tolerance_db,present_half_db,never_below_db,outlook,"
                    + "even_units,even_seatings_from,even_seatings_to,even_seatings,even_half_db,"
                    + "cautious_units,cautious_seatings_from,cautious_seatings_to,cautious_seatings,"
                    + "cautious_half_db,cautious_upper_half_db,difference_db,units_to_show")
                .split(","));
    for (Plan plan : plans) {
      for (ZonePlan zone : plan.zones()) {
        table
            .text(plan.kind())
            .hz(zone.fromHz())
            .hz(zone.toHz())
            .number(zone.toleranceDb())
            .number(zone.presentHalfDb())
            .number(zone.neverBelowDb())
            .word(zone.outlook().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        design(table, zone.evenChance());
        zone.evenChance().ifPresentOrElse(d -> table.number(zone.halfDb(d)), () -> table.empty(1));
        design(table, zone.cautious());
        zone.cautious()
            .ifPresentOrElse(
                d -> table.number(zone.halfDb(d)).number(zone.upperHalfDb(d)),
                () -> table.empty(2));
        table.number(limits.differenceDb());
        zone.unitsToShow(limits.differenceDb(), limits.unitsMax())
            .ifPresentOrElse(table::count, () -> table.empty(1));
        table.endRow();
      }
    }
    return table;
  }

  private static void design(ResultTable table, Optional<Design> design) {
    design.ifPresentOrElse(
        d ->
            table
                .count(d.units())
                .count(d.seatingsFrom())
                .count(d.seatingsTo())
                .count(d.seatings()),
        () -> table.empty(4));
  }

  static ResultTable bands(List<Plan> plans) {
    ResultTable table =
        new ResultTable(
            "kind,band_hz,tolerance_db,present_half_db,planned_half_db,never_below_db,curable"
                .split(","));
    for (Plan plan : plans) {
      for (Plan.BandPlan band : plan.bands()) {
        table
            .text(plan.kind())
            .hz(band.band().midHz())
            .number(band.toleranceDb())
            .number(band.presentHalfDb())
            .number(band.plannedHalfDb())
            .number(band.neverBelowDb())
            .word(band.curable() ? "yes" : "no")
            .endRow();
      }
    }
    return table;
  }

  static ResultTable curves(List<Plan> plans, PlanLimits limits) {
    ResultTable table =
        new ResultTable(
            "kind,from_hz,to_hz,units,seatings_from,seatings_to,half_db,upper_half_db".split(","));
    for (Plan plan : plans) {
      for (ZonePlan zone : plan.zones()) {
        for (int m : seatings(limits)) {
          for (int n = plan.present().units(); n <= limits.unitsMax(); n++) {
            Design design = new Design(n, m, m);
            table
                .text(plan.kind())
                .hz(zone.fromHz())
                .hz(zone.toHz())
                .count(n)
                .count(m)
                .count(m)
                .number(zone.halfDb(design))
                .number(zone.upperHalfDb(design))
                .endRow();
          }
        }
      }
    }
    return table;
  }

  /**
   * The numbers of seatings for which curves are given.
   *
   * @param limits of the plan
   * @return the same on both fixtures: 2, 3, 5 and 10 as far as the limit allows, and the limit
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
}
