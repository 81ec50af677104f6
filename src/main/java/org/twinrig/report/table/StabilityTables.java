package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.ZoneEdge;

/** How often bands keep their marks, and where the edges of zones may lie. */
final class StabilityTables {
  private StabilityTables() {}

  /** One row per band; a band without data has no mark to keep, and empty shares. */
  static ResultTable bands(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,band_hz,mark,kept,reliable_share,caution_share,unreliable_share".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      List<MarkedBand> bands = kind.transfer().bands();
      for (int b = 0; b < bands.size(); b++) {
        table.text(kind.kind()).hz(bands.get(b).band().midHz()).word(bands.get(b).mark().word());
        shares(table, kind.stability().bands().get(b));
        table.endRow();
      }
    }
    return table;
  }

  private static void shares(ResultTable table, Optional<MarkStability.Shares> shares) {
    if (shares.isEmpty()) {
      table.empty(4);
      return;
    }
    MarkStability.Shares s = shares.get();
    table.number(s.kept()).number(s.reliable()).number(s.caution()).number(s.unreliable());
  }

  /** One row per edge; one that is not stable has no interval, and empty cells. */
  static ResultTable edges(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable("kind,edge_hz,below_mark,above_mark,low_hz,high_hz,kept".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (ZoneEdge edge : kind.stability().edges()) {
        table
            .text(kind.kind())
            .hz(edge.edgeHz())
            .word(edge.below().word())
            .word(edge.above().word());
        edge.interval()
            .ifPresentOrElse(i -> table.hz(i.fromHz()).hz(i.toHz()), () -> table.empty(2));
        table.number(edge.kept()).endRow();
      }
    }
    return table;
  }
}
