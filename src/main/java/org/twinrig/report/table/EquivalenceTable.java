package org.twinrig.report.table;

import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.RegionEquivalence;

/** The rows of equivalence.csv; a band without an estimate has none. */
final class EquivalenceTable {
  private EquivalenceTable() {}

  static ResultTable of(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,band_hz,lower_hz,upper_hz,units,offset_db,equivalence_db,p,tost_low_db,"
                    + "tost_high_db,sim_low_db,sim_high_db,equivalent,equivalent_at_once")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      Equivalence equivalence = kind.evidence().equivalence();
      equivalence.bands().stream()
          .flatMap(Optional::stream)
          .forEach(v -> row(table, equivalence, v));
    }
    return table;
  }

  private static void row(ResultTable table, Equivalence equivalence, Equivalence.Verdict v) {
    double meanDb = v.mean().meanDb();
    table
        .text(equivalence.kind())
        .hz(v.band().midHz())
        .hz(v.band().lowerHz())
        .hz(v.band().upperHz())
        .count(v.mean().units())
        .number(meanDb)
        .number(equivalence.limitDb())
        .number(v.p())
        .number(meanDb - v.halfDb())
        .number(meanDb + v.halfDb())
        .number(meanDb - v.simultaneousHalfDb())
        .number(meanDb + v.simultaneousHalfDb())
        .word(v.alone() ? "yes" : "no")
        .word(v.together() ? "yes" : "no")
        .endRow();
  }

  static ResultTable ofRegions(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable("kind,region,from_hz,to_hz,bands,p,p_holm,equivalent".split(","));
    for (RegionEquivalence r : outcome.regionEquivalence()) {
      table
          .text(r.kind())
          .word(r.region().word())
          .hz(r.region().fromHz())
          .hz(r.region().toHz())
          .count(r.bands())
          .number(r.p())
          .number(r.adjustedP())
          .word(r.shown() ? "yes" : "no")
          .endRow();
    }
    return table;
  }
}
