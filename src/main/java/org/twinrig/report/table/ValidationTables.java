package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionErrors;
import org.twinrig.evidence.UnitErrors;
import org.twinrig.evidence.Validation;

/**
 * The rows of validation.csv, validation-holdout.csv, validation-units.csv and coverage.csv. Units
 * the rule never saw are {@code left out}, each in turn, or {@code held out} by the lab.
 */
final class ValidationTables {
  private static final String LEFT_OUT = "left out";
  private static final String HELD_OUT = "held out";

  private ValidationTables() {}

  static ResultTable leftOut(StudyOutcome outcome) {
    ResultTable table = regions();
    outcome.kinds().forEach(k -> rows(table, k.kind(), k.errors()));
    return table;
  }

  static ResultTable heldOut(StudyOutcome outcome) {
    ResultTable table = regions();
    outcome.kinds().forEach(k -> rows(table, k.kind(), k.evidence().heldOut().regions()));
    return table;
  }

  private static ResultTable regions() {
    return new ResultTable(
        "kind,region,from_hz,to_hz,units,bias_db,rms_offset_db,rms_db,coverage".split(","));
  }

  private static void rows(ResultTable table, String kind, List<RegionErrors> regions) {
    for (RegionErrors errors : regions) {
      table
          .text(kind)
          .word(errors.region().word())
          .hz(errors.region().fromHz())
          .hz(errors.region().toHz())
          .count(errors.units())
          .number(errors.biasDb())
          .number(errors.rmsOffsetDb())
          .number(errors.rmsDb())
          .number(errors.coverage())
          .endRow();
    }
  }

  static ResultTable units(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,tried,unit,region,from_hz,to_hz,bands,bias_db,rms_offset_db,rms_db,inside"
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      units(table, kind, LEFT_OUT, kind.evidence().leftOut());
      units(table, kind, HELD_OUT, kind.evidence().heldOut());
    }
    return table;
  }

  private static void units(
      ResultTable table, KindOutcome kind, String role, Validation validation) {
    for (Optional<Region> part : parts()) {
      for (UnitErrors unit : validation.units().getOrDefault(part, List.of())) {
        table.text(kind.kind()).word(role).text(unit.unit());
        place(table, kind, part);
        table
            .count(unit.bands())
            .number(unit.biasDb())
            .number(unit.rmsOffsetDb())
            .number(unit.rmsDb())
            .number(unit.inside())
            .endRow();
      }
    }
  }

  static ResultTable coverage(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,tried,region,from_hz,to_hz,stated,counted,reached,low,high".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      coverage(table, kind, LEFT_OUT, kind.evidence().leftOut());
      coverage(table, kind, HELD_OUT, kind.evidence().heldOut());
    }
    return table;
  }

  private static void coverage(
      ResultTable table, KindOutcome kind, String role, Validation validation) {
    for (Coverage c : validation.coverage()) {
      table.text(kind.kind()).word(role);
      place(table, kind, c.region());
      table
          .number(c.stated())
          .count(c.units())
          .number(c.reached())
          .number(c.low())
          .number(c.high())
          .endRow();
    }
  }

  private static List<Optional<Region>> parts() {
    return java.util.stream.Stream.concat(
            java.util.Arrays.stream(Region.values()).map(Optional::of),
            java.util.stream.Stream.of(Optional.<Region>empty()))
        .toList();
  }

  private static void place(ResultTable table, KindOutcome kind, Optional<Region> part) {
    table
        .word(part.map(Region::word).orElse("all bands"))
        .hz(part.map(Region::fromHz).orElse(kind.paired().grid().lowerHz()))
        .hz(part.map(Region::toHz).orElse(kind.paired().grid().upperHz()));
  }
}
