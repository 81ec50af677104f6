package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.intake.GrowingTable;
import org.twinrig.intake.LabTable;
import org.twinrig.intake.MendedTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.translation.CatalogueReader;

/** Tables of a lab, read by whoever reads such a table, grown by a row and mended in a cell. */
final class Tables {
  private Tables() {}

  static void read(Lab lab, byte[] content) throws IOException {
    String text = new String(content, StandardCharsets.UTF_8);
    String header = text.lines().filter(l -> !l.startsWith("#")).findFirst().orElse("");
    if (header.contains("graph")) {
      catalogue(lab, content);
    } else if (header.contains("calib")) {
      ofStudy(lab, "sessions.csv", content);
    } else if (header.contains("fixture")) {
      ofStudy(lab, "captures.csv", content);
      grown(lab.file("captures.csv"), content, LabTable.CAPTURES, "file");
      mended(lab.file("captures.csv"), content);
    } else {
      ofStudy(lab, "units.csv", content);
      grown(lab.file("units.csv"), content, LabTable.UNITS, "unit");
    }
  }

  private static void catalogue(Lab lab, byte[] content) throws IOException {
    Path file = Files.write(lab.file("catalogue.csv"), content);
    try {
      var found = CatalogueReader.read(file, "catalogue.csv");
      Answers.checkFinite(found.value());
      Answers.checkProblems(found.problems(), "catalogue.csv", content);
    } catch (UnusableInput e) {
      Answers.checkProblems(e.problems(), "catalogue.csv", content);
    }
  }

  private static void ofStudy(Lab lab, String name, byte[] content) throws IOException {
    byte[] sound = lab.sound(name);
    Files.write(lab.file(name), content);
    try {
      study(lab, name, content);
    } finally {
      Files.write(lab.file(name), sound);
    }
  }

  /** Reads the study, one of whose files may hold anything. */
  static Optional<Study> study(Lab lab, String name, byte[] content) {
    try {
      Findings<Study> found = StudyReader.read(lab.study());
      Answers.checkFinite(found.value().settings());
      Answers.checkFinite(found.value().sessions());
      Answers.checkFinite(found.value().references());
      Answers.checkProblems(found.problems(), name, content);
      return Optional.of(found.value());
    } catch (UnusableInput e) {
      Answers.checkProblems(e.problems(), name, content);
      return Optional.empty();
    }
  }

  /** A row added at the end leaves all bytes before it, and every row, as it was. */
  private static void grown(Path file, byte[] content, LabTable.Columns columns, String key)
      throws IOException {
    Files.write(file, content);
    try {
      List<List<String>> before = cells(file, columns);
      GrowingTable.open(file, columns, key).add(List.of(Map.of(key, "a, \"new\" one")));
      byte[] after = Files.readAllBytes(file);
      Answers.checkSame(content, after, content.length);
      List<List<String>> now = cells(file, columns);
      assertEquals(before.size(), now.size());
      for (int c = 0; c < now.size(); c++) {
        List<String> column = now.get(c);
        assertEquals(before.get(c), column.subList(0, Math.max(0, column.size() - 1)));
      }
      assertEquals("a, \"new\" one", last(LabTable.of(file, "t", columns).cells(key)));
    } catch (UnusableInput e) {
      // what was found out about the table was checked when it was read
    }
  }

  /** A cell written anew leaves every other cell as it was. */
  private static void mended(Path file, byte[] content) throws IOException {
    Files.write(file, content);
    try {
      LabTable table = LabTable.of(file, "t", LabTable.CAPTURES);
      List<Integer> lines = table.read(row -> row.ifSound(row::line)).value();
      List<List<String>> before = cells(file, LabTable.CAPTURES);
      if (lines.isEmpty() || lines.size() < table.size()) {
        return;
      }
      int last = lines.get(lines.size() - 1);
      Files.write(file, new MendedTable(content, "t").with(last, "exclude", "leak, \"left\""));
      List<String> excluded = LabTable.of(file, "t", LabTable.CAPTURES).cells("exclude");
      assertEquals("leak, \"left\"", last(excluded));
      List<List<String>> now = cells(file, LabTable.CAPTURES);
      assertEquals(table.size(), excluded.size());
      assertEquals(without(table, before), without(LabTable.of(file, "t", LabTable.CAPTURES), now));
    } catch (UnusableInput e) {
      // what was found out about the table was checked when it was read
    }
  }

  private static List<List<String>> without(LabTable table, List<List<String>> columns) {
    List<List<String>> others = new ArrayList<>(columns);
    int excluded = table.columnNames().indexOf("exclude");
    if (excluded >= 0) {
      others.remove(excluded);
    }
    return others;
  }

  private static List<List<String>> cells(Path file, LabTable.Columns columns)
      throws UnusableInput {
    LabTable table = LabTable.of(file, "t", columns);
    return table.columnNames().stream().map(table::cells).toList();
  }

  private static String last(List<String> cells) {
    return cells.get(cells.size() - 1);
  }
}
