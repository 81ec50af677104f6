package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What a command found: said in a terminal, given to a machine, written into a folder. */
public interface Report {
  /** Plain sentences and tables, one a line; where the results are comes last. */
  List<String> sentences(Optional<Path> results);

  /** Where the page of a result folder lies, for those who read. */
  static Optional<String> page(Optional<Path> results) {
    return results.map(folder -> folder.resolve("report.html").toString());
  }

  /** The same for machines, as JSON. */
  String json(Optional<Path> results);

  /**
   * Writes tables, figures, pages and at last the record of the run.
   *
   * @param folder an empty folder
   * @param record of the run; the report adds what it was made from
   */
  void write(Path folder, RunRecord record, int threads) throws IOException;
}
