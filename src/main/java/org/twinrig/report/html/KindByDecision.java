package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import tech.tablesaw.api.NumericColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** How many graphs of each kind got each decision. */
final class KindByDecision {
  private static final String KIND = "kind";
  private static final String DECISION = "decision";
  private static final String TOTAL = "total";

  private KindByDecision() {}

  /** One row per kind in the order of their names. */
  static Sheet of(List<CatalogueRun.Line> lines) {
    List<Sheet.Column> columns = new ArrayList<>();
    columns.add(Sheet.names("Kind"));
    for (Decision decision : Decision.values()) {
      columns.add(Sheet.numbers(VerdictSentence.capital(decision.word()) + " (graphs)"));
    }
    columns.add(Sheet.numbers("All (graphs)"));
    return new Sheet(
        "Graphs by kind and decision", columns, lines.isEmpty() ? List.of() : rows(lines));
  }

  private static List<List<Sheet.Cell>> rows(List<CatalogueRun.Line> lines) {
    StringColumn kinds = StringColumn.create(KIND);
    StringColumn decisions = StringColumn.create(DECISION);
    for (CatalogueRun.Line line : lines) {
      kinds.append(line.entry().kind());
      decisions.append(line.decision().word());
    }
    Table counts = Table.create(kinds, decisions).xTabCounts(KIND, DECISION);
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (int r = 0; r < counts.rowCount() - 1; r++) { // the last row holds the totals
      List<Sheet.Cell> row = new ArrayList<>();
      row.add(Sheet.text(counts.column(0).getString(r)));
      for (Decision decision : Decision.values()) {
        row.add(Sheet.count(count(counts, decision.word(), r)));
      }
      row.add(Sheet.count(count(counts, TOTAL, r)));
      rows.add(row);
    }
    return rows;
  }

  /** A count; a decision no graph got has no column. */
  private static long count(Table counts, String column, int row) {
    return counts.containsColumn(column)
        ? Math.round(((NumericColumn<?>) counts.column(column)).getDouble(row))
        : 0;
  }
}
