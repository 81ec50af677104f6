package org.twinrig.report.table;

import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;

/** The rows of ranks.csv and rank-correlation.csv; none without reference curves. */
final class RankTables {
  private RankTables() {}

  static ResultTable ranks(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,unit,from_hz,to_hz,deviation_from_db,deviation_to_db,rank_from,rank_to,"
                    + "rank_change")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence()
          .ranks()
          .ifPresent(ranks -> ranks.units().forEach(u -> row(table, kind.kind(), ranks, u)));
    }
    return table;
  }

  private static void row(
      ResultTable table, String kind, RankKeeping.Result ranks, RankKeeping.Ranked unit) {
    table
        .text(kind)
        .text(unit.unit())
        .hz(ranks.range().fromHz())
        .hz(ranks.range().toHz())
        .number(unit.fromDb())
        .number(unit.toDb())
        .number(unit.rankFrom())
        .number(unit.rankTo())
        .number(unit.change())
        .endRow();
  }

  static ResultTable correlations(StudyOutcome outcome) {
    ResultTable table = new ResultTable("kind,measure,units,coefficient,low,high".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence()
          .ranks()
          .ifPresent(
              ranks -> {
                ranks.spearman().ifPresent(r -> row(table, kind.kind(), r));
                ranks.kendall().ifPresent(r -> row(table, kind.kind(), r));
              });
    }
    return table;
  }

  private static void row(ResultTable table, String kind, RankCorrelation r) {
    table
        .text(kind)
        .word(r.measure().word())
        .count(r.units())
        .number(r.coefficient())
        .number(end(r.interval().map(RankCorrelation.Interval::low)))
        .number(end(r.interval().map(RankCorrelation.Interval::high)))
        .endRow();
  }

  private static OptionalDouble end(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}
