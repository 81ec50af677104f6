package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.html.ExplainPage;

/**
 * Where the pages of a study are written, the same places as from the command line.
 *
 * @param folder of the study, without links in its path
 */
record Written(Path folder) {
  private static final String REPORT = "report.html";

  static Written of(Path folder) throws IOException {
    return new Written(folder.toRealPath());
  }

  Path results() {
    return folder.resolve("results");
  }

  /** The report, as the manifest of the results lists it. */
  WrittenPage report() {
    return new WrittenPage(
        results(), REPORT, text -> ResultFolder.wrote(results(), ResultFolder.Kind.STUDY, REPORT));
  }

  /** The page for readers. */
  WrittenPage explained() {
    return new WrittenPage(folder, "explained.html", ExplainPage::isAsWritten);
  }
}
