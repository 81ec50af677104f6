package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.translation.CatalogueRun;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** How many graphs of each kind got each decision. */
final class KindByDecision {
  private KindByDecision() {}

  /** The table with its header first, totals last in both directions; empty without graphs. */
  static List<List<String>> of(List<CatalogueRun.Line> lines) {
    if (lines.isEmpty()) {
      return List.of();
    }
    StringColumn kinds = StringColumn.create("kind");
    StringColumn decisions = StringColumn.create("decision");
    for (CatalogueRun.Line line : lines) {
      kinds.append(line.entry().kind());
      decisions.append(line.decision().word());
    }
    Table counts = Table.create(kinds, decisions).xTabCounts("kind", "decision");
    List<List<String>> rows = new ArrayList<>();
    List<String> header = new ArrayList<>(counts.columnNames());
    header.set(0, "kind");
    rows.add(header);
    for (int r = 0; r < counts.rowCount(); r++) {
      List<String> row = new ArrayList<>();
      for (int c = 0; c < counts.columnCount(); c++) {
        String cell = counts.get(r, c).toString();
        row.add(cell.endsWith(".0") ? cell.substring(0, cell.length() - 2) : cell);
      }
      rows.add(row);
    }
    return rows;
  }
}
