package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.Findings;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;

/** The journal of a run as a run that goes on with it sees it. */
public final class JournalReading {
  /** How a journal begins that belongs to the run. */
  public static final String IDENTITY = "the run";

  private JournalReading() {}

  /** What the line of the run's one graph begins with, whatever stands behind it. */
  public static String key(CatalogueEntry entry, byte[] line) {
    String text = new String(line, StandardCharsets.UTF_8);
    String whole = text.lines().findFirst().orElse("");
    return Sha256.hex(entry.toString().getBytes(StandardCharsets.UTF_8))
        + "\t"
        + Sha256.hex(whole.getBytes(StandardCharsets.UTF_8))
        + "\t";
  }

  /** What a run believes of a journal; nothing when the graph is done again. */
  public static Optional<Findings<CatalogueRun.Line>> read(
      Path folder, byte[] journal, CatalogueEntry entry) throws IOException {
    Files.write(folder.resolve(GraphJournal.FILE), journal);
    return read(folder, entry);
  }

  /** What a run believes of the journal in a folder. */
  public static Optional<Findings<CatalogueRun.Line>> read(Path folder, CatalogueEntry entry)
      throws IOException {
    try (GraphJournal opened = GraphJournal.in(folder, IDENTITY)) {
      return opened.finished(entry).map(GraphJournal.Finished::line);
    }
  }
}
