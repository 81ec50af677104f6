package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;

/** Writes comparison.csv and combined.csv. */
public final class ComparisonTables {
  private ComparisonTables() {}

  /**
   * Writes them.
   *
   * @param comparison the comparison
   * @param folder where to
   * @throws IOException when they cannot be written
   */
  public static void write(StudyComparison comparison, Path folder) throws IOException {
    differences(comparison).write(folder.resolve("comparison.csv"));
    combined(comparison).write(folder.resolve("combined.csv"));
  }

  static ResultTable differences(StudyComparison comparison) {
    ResultTable table =
        new ResultTable(
            ("kind,first,second,band_hz,units_first,units_second,difference_db,se_db,"
                    + "degrees_of_freedom,ci_low_db,ci_high_db,sim_low_db,sim_high_db,different,"
                    + "equivalent,equivalent_at_once")
                .split(","));
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (StudyComparison.Pair pair : kind.pairs()) {
        for (Optional<MeanDifference.Verdict> band : pair.difference().bands()) {
          band.ifPresent(v -> row(table, pair, v));
        }
      }
    }
    return table;
  }

  private static void row(ResultTable table, StudyComparison.Pair pair, MeanDifference.Verdict v) {
    table
        .text(pair.difference().kind())
        .text(pair.first())
        .text(pair.second())
        .hz(v.band().midHz())
        .count(pair.units().first())
        .count(pair.units().second())
        .number(v.differenceDb())
        .number(v.standardErrorDb())
        .number(v.degreesOfFreedom())
        .number(v.differenceDb() - v.halfDb())
        .number(v.differenceDb() + v.halfDb())
        .number(v.differenceDb() - v.simultaneousHalfDb())
        .number(v.differenceDb() + v.simultaneousHalfDb())
        .word(v.different() ? "yes" : "no")
        .word(v.equivalentAlone() ? "yes" : "no")
        .word(v.equivalent() ? "yes" : "no")
        .endRow();
  }

  static ResultTable combined(StudyComparison comparison) {
    ResultTable table =
        new ResultTable(
            ("kind,band_hz,studies,units,mean_db,se_db,tau_db,ci_low_db,ci_high_db,"
                    + "further_low_db,further_high_db")
                .split(","));
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (Optional<CombinedTransfer.Combined> band : kind.combined().bands()) {
        band.ifPresent(
            c ->
                table
                    .text(kind.kind())
                    .hz(c.band().midHz())
                    .count(c.studies())
                    .count(c.units())
                    .number(c.meanDb())
                    .number(c.standardErrorDb())
                    .number(c.tauDb())
                    .number(c.meanDb() - c.halfDb())
                    .number(c.meanDb() + c.halfDb())
                    .number(c.meanDb() - c.furtherHalfDb())
                    .number(c.meanDb() + c.furtherHalfDb())
                    .endRow());
      }
    }
    return table;
  }
}
