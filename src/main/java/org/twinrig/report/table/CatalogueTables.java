package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Treatment;

/** Writes one table per re-expressed graph, and summary.csv. */
public final class CatalogueTables {
  private static final int SHA256_DIGITS = 64;

  private CatalogueTables() {}

  /**
   * One graph as a table.
   *
   * @param graph the graph
   * @return the file's text
   */
  public static String graphText(TranslatedGraph graph) {
    ResultTable table =
        new ResultTable("band_hz", "from_db", "to_db", "low_db", "high_db", "mark", "reasons");
    for (TranslatedBand band : graph.bands()) {
      table.hz(band.band().midHz()).number(band.fromDb());
      if (band.predicted().isPresent()) {
        TranslatedBand.Predicted p = band.predicted().get();
        table.number(p.toDb()).number(p.lowDb()).number(p.highDb());
      } else {
        table.empty(3);
      }
      table.word(band.mark().word()).word(Reason.join(band.reasons())).endRow();
    }
    return table.text();
  }

  /**
   * A re-expressed reference as a table.
   *
   * @param reference the curve
   * @return the file's text
   */
  public static String referenceText(TranslatedReference reference) {
    ResultTable table =
        new ResultTable(
            "band_hz,from_db,to_db,ci_low_db,ci_high_db,sim_low_db,sim_high_db,mark,reasons"
                .split(","));
    for (TranslatedReference.Row row : reference.rows()) {
      table.hz(row.band().midHz()).number(row.fromDb());
      if (row.mean().isPresent()) {
        TranslatedReference.Mean m = row.mean().get();
        table
            .number(m.toDb())
            .number(m.toDb() - m.pointwiseHalfDb())
            .number(m.toDb() + m.pointwiseHalfDb())
            .number(m.toDb() - m.simultaneousHalfDb())
            .number(m.toDb() + m.simultaneousHalfDb());
      } else {
        table.empty(5);
      }
      table.word(row.mark().word()).word(Reason.join(row.reasons())).endRow();
    }
    return table.text();
  }

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
          .number(line.octaves().reliable())
          .number(line.octaves().caution())
          .number(line.octaves().unreliable())
          .number(line.octaves().missing())
          .word(Reason.join(line.reasons()))
          .endRow();
    }
    table.write(file);
  }

  /**
   * Writes how every graph was taken and given.
   *
   * @param outcome what became of the catalogue
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void writeHandling(CatalogueRun.Outcome outcome, Path file) throws IOException {
    ResultTable table =
        new ResultTable(
            ("graph,file,sha256,seatings_taken,sides,form_from,form_to,smoothing,smoothing_match,"
                    + "old_reference,old_reference_smoothing,new_reference,"
                    + "new_reference_smoothing,change_rms_db,fixture_change_rms_db,"
                    + "reference_change_rms_db")
                .split(","));
    for (CatalogueRun.Line line : outcome.lines()) {
      CatalogueEntry entry = line.entry();
      Treatment treatment = line.treatment();
      table
          .text(entry.graph())
          .text(entry.file())
          .word(line.sha256().substring(0, SHA256_DIGITS))
          .count(entry.averaged().seatings().orElse(1))
          .word(sides(entry))
          .word(form(treatment.before()))
          .word(form(treatment.now()))
          .word(entry.smoothing().map(Smoothing::word).orElse(""))
          .word(treatment.smoothing().word());
      reference(table, treatment.before());
      reference(table, treatment.now());
      table
          .number(line.change().totalRmsDb())
          .number(line.change().fixtureRmsDb())
          .number(line.change().referenceRmsDb())
          .endRow();
    }
    table.write(file);
  }

  /** Empty where they are taken to be as in the study. */
  private static String sides(CatalogueEntry entry) {
    return entry.averaged().sides().isPresent()
        ? Integer.toString(entry.averaged().sides().getAsInt())
        : "";
  }

  private static String form(Optional<Treatment.Reference> reference) {
    return reference.isPresent() ? "compensated" : "raw";
  }

  private static void reference(ResultTable table, Optional<Treatment.Reference> reference) {
    table
        .text(reference.map(Treatment.Reference::file).orElse(""))
        .word(reference.flatMap(Treatment.Reference::smoothing).map(Smoothing::word).orElse(""));
  }
}
