package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.twinrig.reliability.Reason;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;

/** Writes one table per re-expressed graph, and summary.csv. */
public final class CatalogueTables {
  private CatalogueTables() {}

  /**
   * Writes one graph.
   *
   * @param graph the graph
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void writeGraph(TranslatedGraph graph, Path file) throws IOException {
    ResultTable table =
        new ResultTable("band_hz", "from_db", "to_db", "low_db", "high_db", "mark", "reasons");
    for (TranslatedBand band : graph.bands()) {
      table
          .hz(band.band().midHz())
          .number(band.fromDb())
          .number(band.predicted().map(p -> OptionalDouble.of(p.toDb())).orElse(NOT_DEFINED))
          .number(band.predicted().map(p -> OptionalDouble.of(p.lowDb())).orElse(NOT_DEFINED))
          .number(band.predicted().map(p -> OptionalDouble.of(p.highDb())).orElse(NOT_DEFINED))
          .word(band.mark().word())
          .word(Reason.join(band.reasons()))
          .endRow();
    }
    table.write(file);
  }

  private static final OptionalDouble NOT_DEFINED = OptionalDouble.empty();

  /**
   * Writes the summary.
   *
   * @param outcome what became of the catalogue
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void writeSummary(CatalogueRun.Outcome outcome, Path file) throws IOException {
    ResultTable table =
        new ResultTable(
            ("graph,unit,kind,decision,reliable_octaves,caution_octaves,unreliable_octaves,"
                    + "missing_octaves,reasons")
                .split(","));
    for (CatalogueRun.Line line : outcome.lines()) {
      table
          .text(line.entry().graph())
          .text(line.entry().unit())
          .text(line.entry().kind())
          .word(line.decision().word())
          .number(line.reliableOctaves())
          .number(line.cautionOctaves())
          .number(line.unreliableOctaves())
          .number(line.missingOctaves())
          .word(Reason.join(line.reasons()))
          .endRow();
    }
    table.write(file);
  }
}
