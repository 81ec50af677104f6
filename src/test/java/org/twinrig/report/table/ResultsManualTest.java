package org.twinrig.report.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The manual explains every file of results once, with all its columns in their order. */
class ResultsManualTest {
  private static final Path PAGE = Path.of("studies", "README.md");

  private static Stream<Result<?>> all() {
    return Stream.of(
            StudyResults.ALL,
            List.of(ScreeningResults.DRIFT, ScreeningResults.DRIFT_CORRECTION, PlainZones.RESULT),
            CatalogueResults.ALL,
            PlanResults.ALL,
            ComparisonResults.ALL)
        .flatMap(List::stream);
  }

  @Test
  void theManualExplainsEveryColumn() throws IOException {
    List<String> lines = Files.readAllLines(PAGE);
    for (Result<?> result : all().toList()) {
      List<String> found =
          lines.stream().filter(l -> l.startsWith("| `" + result.file() + "` | ")).toList();
      assertEquals(1, found.size(), "lines that begin with | `" + result.file() + "` |");
      String columns = found.get(0).split(" \\| ", 3)[2];
      assertEquals(
          result.names(),
          Pattern.compile("`([a-z0-9_]+)`")
              .matcher(columns)
              .results()
              .map(m -> m.group(1))
              .toList(),
          "columns of " + result.file() + " in " + PAGE);
    }
  }
}
