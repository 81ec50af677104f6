package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Reason;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;

/** The tables of graphs, one per decision. */
final class GraphSheet {
  private static final int MOST_AGAIN = 500;
  private static final int MOST_OTHERS = 200;

  private static final Comparator<CatalogueRun.Line> WORST_FIRST =
      Comparator.comparingDouble((CatalogueRun.Line l) -> -l.lostOctaves())
          .thenComparingDouble(l -> -l.unreliableOctaves())
          .thenComparing(l -> l.entry().graph());

  private GraphSheet() {}

  /** What must be measured again, worst first. */
  static CatalogueView.Part again(List<CatalogueRun.Line> lines) {
    List<CatalogueRun.Line> worst =
        with(Decision.RE_MEASURE, lines).stream().sorted(WORST_FIRST).toList();
    Sheet sheet =
        new Sheet(
            "Re-measure list",
            List.of(
                Sheet.names("Graph"),
                Sheet.names("Unit"),
                Sheet.names("Kind"),
                Sheet.numbers("Lost (octaves)"),
                Sheet.numbers("Unreliable (octaves)"),
                Sheet.words("Why")),
            worst.stream().limit(MOST_AGAIN).map(GraphSheet::againRow).toList());
    return part(worst.size(), "to measure again", sheet);
  }

  /** What may be published, in the order of the catalogue. */
  static CatalogueView.Part published(Decision decision, List<CatalogueRun.Line> lines) {
    List<CatalogueRun.Line> some = with(decision, lines);
    Sheet sheet =
        new Sheet(
            decision == Decision.PUBLISH ? "Graphs to publish" : "Graphs to publish with marks",
            List.of(
                Sheet.names("Graph"),
                Sheet.names("Unit"),
                Sheet.names("Kind"),
                Sheet.numbers("Reliable (octaves)"),
                Sheet.numbers("Caution (octaves)"),
                Sheet.numbers("Unreliable (octaves)"),
                Sheet.numbers("Missing (octaves)")),
            some.stream().limit(MOST_OTHERS).map(GraphSheet::publishedRow).toList());
    return part(some.size(), "to " + decision.word(), sheet);
  }

  private static CatalogueView.Part part(int count, String what, Sheet sheet) {
    int more = count - sheet.rows().size();
    return new CatalogueView.Part(
        Numbers.count(count, "graph", "graphs") + " " + what,
        sheet,
        more == 0
            ? ""
            : "The first "
                + sheet.rows().size()
                + " are listed here; summary.csv has all "
                + count
                + ".");
  }

  private static List<CatalogueRun.Line> with(Decision decision, List<CatalogueRun.Line> lines) {
    return lines.stream().filter(l -> l.decision() == decision).toList();
  }

  private static List<Sheet.Cell> againRow(CatalogueRun.Line line) {
    List<Sheet.Cell> row = named(line);
    row.add(Sheet.hundredths(line.lostOctaves()));
    row.add(Sheet.hundredths(line.unreliableOctaves()));
    row.add(
        Sheet.text(line.reasons().stream().map(Reason::plain).collect(Collectors.joining("; "))));
    return row;
  }

  private static List<Sheet.Cell> publishedRow(CatalogueRun.Line line) {
    List<Sheet.Cell> row = named(line);
    row.add(Sheet.hundredths(line.reliableOctaves()));
    row.add(Sheet.hundredths(line.cautionOctaves()));
    row.add(Sheet.hundredths(line.unreliableOctaves()));
    row.add(Sheet.hundredths(line.missingOctaves()));
    return row;
  }

  private static List<Sheet.Cell> named(CatalogueRun.Line line) {
    List<Sheet.Cell> row = new ArrayList<>();
    row.add(Sheet.text(line.entry().graph()));
    row.add(Sheet.text(line.entry().unit()));
    row.add(Sheet.text(line.entry().kind()));
    return row;
  }
}
