package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.ReferenceFigure;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;

/** What a re-expressed reference curve writes: a table, a figure, the run record. */
public final class ReferenceFolder {
  private ReferenceFolder() {}

  /**
   * Writes them.
   *
   * @param folder an empty folder
   * @param reference the curve
   * @param translation what was applied
   * @throws IOException when something cannot be written
   */
  public static void write(
      Path folder, TranslatedReference reference, Translation translation, RunRecord record)
      throws IOException {
    CatalogueResults.REFERENCE.write(folder, reference);
    Figure figure = ReferenceFigure.of(reference, translation);
    Files.writeString(folder.resolve("reference.svg"), figure.svg(), StandardCharsets.UTF_8);
    Files.write(folder.resolve("reference.png"), figure.png());
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
