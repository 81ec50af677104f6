package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import org.twinrig.report.StagedFolder;
import org.twinrig.report.html.ExplainPage;

/**
 * Where the pages of a study are written, the same places as from the command line.
 *
 * @param folder of the study, without links in its path
 */
record Written(Path folder) {
  static Written of(Path folder) throws IOException {
    return new Written(folder.toRealPath());
  }

  Path results() {
    return folder.resolve("results");
  }

  /** The report; it is one only beside the record of its run. */
  WrittenPage report() {
    return new WrittenPage(results(), "report.html", "<!DOCTYPE html>", StagedFolder.MARKER);
  }

  /** The page for readers. */
  WrittenPage explained() {
    return new WrittenPage(folder, "explained.html", ExplainPage.FIRST_LINE, "explained.html");
  }
}
