package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.twinrig.report.figure.ReferenceFigure;
import org.twinrig.report.html.Page;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;

/** A re-expressed reference curve. */
public record ReferenceReport(TranslatedReference reference, Translation translation) {

  /** What became of it, and where it is, one sentence a line. */
  public List<String> sentences(Path results) {
    return Page.lines(
        "terminal/reference.jte",
        Map.of("reference", reference, "results", results.resolve("reference").toString()));
  }

  /** Writes a table, a figure and the run record into an empty folder. */
  public void write(Path folder, RunRecord record) throws IOException {
    CatalogueResults.REFERENCE.write(folder, reference);
    ReferenceFigure.of(reference, translation).write(folder.resolve("reference"));
    record.with(
        "reference",
        node ->
            node.put("kind", reference.kind())
                .put("units", reference.units())
                .put("study_fingerprint", translation.origin().fingerprint()));
    record.lap("write");
    record.write(folder);
  }
}
