package org.twinrig;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Published values in src/test/resources/reference; each file names its source in its first lines.
 */
public final class ReferenceTable {
  private ReferenceTable() {}

  /** The rows of a file, cells by column name. */
  public static List<Map<String, String>> rows(String name) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                ReferenceTable.class.getResourceAsStream("/reference/" + name),
                StandardCharsets.UTF_8))) {
      return rows(reader.lines().toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows of a table committed with the project, cells by column name. */
  public static List<Map<String, String>> rows(Path table) throws IOException {
    return rows(Files.readAllLines(table));
  }

  private static List<Map<String, String>> rows(List<String> text) {
    List<String> lines = text.stream().filter(l -> !l.startsWith("#") && !l.isBlank()).toList();
    String[] header = lines.get(0).split(",", -1);
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      Map<String, String> row = new LinkedHashMap<>();
      for (int c = 0; c < header.length; c++) {
        row.put(header[c], cells[c]);
      }
      rows.add(row);
    }
    return rows;
  }

  /** One column as numbers. */
  public static double[] column(List<Map<String, String>> rows, String name) {
    return rows.stream().mapToDouble(r -> Double.parseDouble(r.get(name))).toArray();
  }
}
