package org.twinrig.report.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The manual's tables of files say what the results themselves say of their columns. {@code mvn
 * test -Dtest=ResultsManualTest -Dtwinrig.approve=true} writes their lines into the manual; a new
 * file needs a line that begins with its name there first.
 */
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
  void theManualSaysWhatTheResultsSay() throws IOException {
    String page = Files.readString(PAGE);
    String right = page;
    for (Result<?> result : all().toList()) {
      String start = "\n| `" + result.file() + "` | ";
      int from = right.indexOf(start);
      assertEquals(from, right.lastIndexOf(start), "two lines on " + result.file());
      assertEquals(true, from >= 0, "no line on " + result.file());
      int to = right.indexOf('\n', from + 1);
      right = right.substring(0, from + 1) + result.help() + right.substring(to);
    }
    if (Boolean.getBoolean("twinrig.approve")) {
      Files.writeString(PAGE, right);
      return;
    }
    assertEquals(right, page);
  }
}
