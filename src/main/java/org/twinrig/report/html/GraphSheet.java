package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;

/** The tables of graphs, one per decision. */
final class GraphSheet {
  private static final int MOST_AGAIN = 500;
  private static final int MOST_OTHERS = 200;

  private GraphSheet() {}

  /** What must be measured again, worst first. */
  static CatalogueView.Part again(List<CatalogueRun.Line> lines, Translation translation) {
    List<CatalogueRun.Line> worst =
        with(Decision.RE_MEASURE, lines).stream().sorted(CatalogueRun.Line.WORST_FIRST).toList();
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
            worst.stream().limit(MOST_AGAIN).map(line -> againRow(line, translation)).toList());
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

  /** Whether the study has measured the unit on the new fixture already. */
  private static boolean measured(CatalogueRun.Line line, Translation translation) {
    return translation
        .kind(line.entry().kind())
        .filter(k -> k.unitNames().contains(line.entry().unit()))
        .isPresent();
  }

  private static List<Sheet.Cell> againRow(CatalogueRun.Line line, Translation translation) {
    List<Sheet.Cell> row = named(line);
    row.add(Sheet.hundredths(line.octaves().lost()));
    row.add(Sheet.hundredths(line.octaves().unreliable()));
    row.add(
        Sheet.text(
            (measured(line, translation)
                    ? "the study has this unit on the new fixture: publish that; "
                    : "")
                + WhyAgain.of(line, translation)));
    return row;
  }

  private static List<Sheet.Cell> publishedRow(CatalogueRun.Line line) {
    List<Sheet.Cell> row = named(line);
    row.add(Sheet.hundredths(line.octaves().reliable()));
    row.add(Sheet.hundredths(line.octaves().caution()));
    row.add(Sheet.hundredths(line.octaves().unreliable()));
    row.add(Sheet.hundredths(line.octaves().missing()));
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
