package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The demonstration's old graphs show units that never entered its study, and what the new fixture
 * would show of them is known: how often the prediction interval holds it.
 */
class CatalogueTruthTest {
  @TempDir private Path folder;

  @Test
  void predictionIntervalsHoldOnUnitsNeverSeen() throws IOException {
    Path data = Path.of("demo-data", "plate-to-head");
    StringWriter err = new StringWriter();
    Path out = folder.resolve("out");
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err),
            "translate",
            "studies/plate-to-head",
            "--catalogue",
            data.resolve("catalogue.csv").toString(),
            "--out",
            out.toString());
    assertEquals(0, status, err.toString());
    Map<String, Double> truth = new HashMap<>();
    for (String line : Files.readAllLines(data.resolve("truth/catalogue.csv"))) {
      String[] cells = line.split(",", -1);
      if (!line.startsWith("#") && !line.startsWith("graph,")) {
        truth.put(cells[0] + "@" + Math.round(Double.parseDouble(cells[1])), number(cells[2]));
      }
    }
    int held = 0;
    int judged = 0;
    for (String row : Files.readAllLines(out.resolve("summary.csv"))) {
      String graph = row.split(",", -1)[0];
      if (graph.equals("graph")) {
        continue;
      }
      List<String[]> bands =
          Files.readAllLines(out.resolve("translated/" + graph + ".csv")).stream()
              .skip(1)
              .map(line -> line.split(",", -1))
              .toList();
      double anchor =
          bands.stream()
              .filter(b -> number(b[0]) >= 500 && number(b[0]) <= 1000)
              .mapToDouble(b -> number(b[1]))
              .average()
              .orElseThrow();
      for (String[] b : bands) {
        Double expected = truth.get(graph + "@" + Math.round(number(b[0])));
        if (!b[2].isEmpty() && expected != null) {
          judged++;
          held += number(b[3]) - anchor <= expected && expected <= number(b[4]) - anchor ? 1 : 0;
        }
      }
    }
    double share = (double) held / judged;
    assertTrue(judged > 4000, "bands judged: " + judged);
    assertTrue(share >= 0.93 && share <= 0.99, "held: " + share);
  }

  private static double number(String cell) {
    return Double.parseDouble(cell);
  }
}
