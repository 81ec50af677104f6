package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

class LabTableTest {
  private static final LabTable.Columns COLUMNS =
      new LabTable.Columns("graphs", List.of("graph", "level_db"), List.of("note"));

  @TempDir Path temp;

  private LabTable table(byte[] bytes) throws IOException, UnusableInput {
    return LabTable.of(Files.write(temp.resolve("t.csv"), bytes), "t.csv", COLUMNS);
  }

  private LabTable table(String text) throws IOException, UnusableInput {
    return table(text.getBytes(StandardCharsets.UTF_8));
  }

  private void assertUnusable(byte[] bytes, String message) {
    assertEquals(message, assertThrows(UnusableInput.class, () -> table(bytes)).getMessage());
  }

  private void assertUnusable(String text, Charset charset, String message) {
    assertUnusable(text.getBytes(charset), message);
  }

  @Test
  void linesCountCommentsBlankLinesAndQuotedLineBreaks() throws Exception {
    LabTable table =
        table(
            String.join(
                "\r\n",
                "\uFEFF# old graphs",
                "graph,level_db,note",
                "",
                "\"two",
                "lines\",1,",
                "# more",
                ",,",
                "last,x,\"# no comment\""));
    List<Integer> lines = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    List<Problem> problems =
        table
            .read(
                row -> {
                  lines.add(row.line());
                  notes.add(row.cell("note"));
                  double levelDb = row.decimal("level_db");
                  return row.ifSound(() -> levelDb);
                })
            .problems();
    assertEquals(List.of(4, 8), lines);
    assertEquals(List.of("", "# no comment"), notes);
    assertEquals(
        List.of("t.csv:8: `level_db` is `x`; write a number such as 94.0, without a unit"),
        problems.stream().map(Problem::text).toList());
    assertEquals(List.of("two\r\nlines", "last"), table.cells("graph"));
    assertEquals(2, table.size());
  }

  @Test
  void optionalColumnsMayBeLeftOut() throws Exception {
    LabTable table = table("level_db,graph\n-3.5e1,a\n");
    assertEquals(List.of("level_db", "graph"), table.columnNames());
    assertEquals(
        List.of("a -35.0 []"),
        table
            .read(
                row ->
                    Optional.of(
                        row.text("graph")
                            + " "
                            + row.decimal("level_db")
                            + " ["
                            + row.cell("note")
                            + "]"))
            .value());
  }

  @Test
  void columnsMustBeDeclared() throws Exception {
    LabTable table = table("graph,level_db\na,1\n");
    assertThrows(
        IllegalArgumentException.class, () -> table.read(row -> Optional.of(row.cell("kind"))));
    assertThrows(
        IllegalArgumentException.class,
        () -> new LabTable.Columns("none", List.of(), List.of("note")));
  }

  private static List<String> told(LabTable table) {
    return table.read(row -> Optional.of(row.decimal("level_db"))).problems().stream()
        .map(Problem::text)
        .toList();
  }

  /** As spreadsheets save it where a comma is the decimal mark. */
  @Test
  void semicolonsDecimalCommasAndLatin1AreRead() throws Exception {
    String text = "# Prüfplatz\r\ngraph;level_db;note\r\ncafé;-3,5;\"a;b\"\r\nbeech;2.25;1,5\r\n";
    LabTable table = table(text.getBytes(StandardCharsets.ISO_8859_1));
    assertEquals(List.of("café", "beech"), table.cells("graph"));
    assertEquals(List.of("a;b", "1,5"), table.cells("note"));
    assertEquals(
        List.of(-3.5, 2.25), table.read(row -> Optional.of(row.decimal("level_db"))).value());
    assertEquals(
        List.of("t.csv: is read as a table with Latin-1 (Windows-1252), semicolons between cells"),
        told(table));
  }

  @Test
  void tabsAndUtf16AreRead() throws Exception {
    LabTable table =
        table("\uFEFFgraph\tlevel_db\ncafé\t1,5\n".getBytes(StandardCharsets.UTF_16LE));
    assertEquals(List.of("café"), table.cells("graph"));
    assertEquals(List.of("t.csv: is read as a table with UTF-16, tabs between cells"), told(table));
    assertEquals(
        List.of("t.csv: is read as a table with tabs between cells"),
        told(table("graph\tlevel_db\na\t1\n")));
  }

  /** Where commas separate cells none is a decimal mark. */
  @Test
  void aDecimalCommaBetweenQuotesIsNamedWithTheRemedy() throws Exception {
    assertEquals(
        List.of("t.csv:2: `level_db` is `1,5`; write a point as the decimal mark: 1.5"),
        told(table("graph,level_db\na,\"1,5\"\n")));
  }

  @Test
  void whatIsNoTextIsRefused() {
    assertUnusable(
        "graph,level_db\nbeech,1\n",
        StandardCharsets.UTF_16BE,
        "t.csv:1: holds a zero byte: the file is UTF-16 text or no text at all; save it as UTF-8");
    assertUnusable(
        new byte[] {'P', 'K', 3, 4, 0, 0},
        "t.csv: begins as a spreadsheet or a zip archive does, but cannot be read as one; save it"
            + " anew as .xlsx, or the sheet as CSV");
  }

  @Test
  void filesThatAreNoneAreRefused() {
    assertEquals(
        "gone.csv: there is no such file; check its name and folder",
        assertThrows(
                UnusableInput.class,
                () -> LabTable.of(temp.resolve("gone.csv"), "gone.csv", COLUMNS))
            .getMessage());
    assertEquals(
        "here: is a folder; name a file",
        assertThrows(UnusableInput.class, () -> LabTable.of(temp, "here", COLUMNS)).getMessage());
  }

  @Test
  void numbersAreBoundedOnBothSides() throws Exception {
    LabTable table = table("graph,level_db\na,49\nb,50\nc,120\nd,121\n");
    List<Problem> problems =
        table.read(row -> Optional.of(row.decimalIfAny("level_db", 50, 120))).problems();
    assertEquals(
        List.of(
            "t.csv:2: `level_db` is `49`; write a number from 50 to 120",
            "t.csv:5: `level_db` is `121`; write a number from 50 to 120"),
        problems.stream().map(Problem::text).toList());
  }

  /** Cells written after RFC 4180 come back as they were, each row at the line it begins in. */
  @Property(tries = 300)
  void anyCellsComeBack(@ForAll("rows") List<List<String>> rows) throws Exception {
    StringBuilder text = new StringBuilder("graph,level_db,note\n");
    List<List<String>> expected = new ArrayList<>();
    List<Integer> expectedLines = new ArrayList<>();
    int line = 2;
    for (List<String> row : rows) {
      String written = row.stream().map(LabTableTest::quoted).collect(Collectors.joining(","));
      if (row.stream().anyMatch(cell -> !cell.isBlank())) {
        expected.add(row);
        expectedLines.add(line);
      }
      text.append(written).append('\n');
      line += 1 + (int) written.chars().filter(c -> c == '\n').count();
    }
    Path file = Files.createTempFile("cells", ".csv");
    try {
      Files.writeString(file, text);
      List<Integer> lines = new ArrayList<>();
      List<List<String>> cells =
          LabTable.of(file, "t.csv", COLUMNS)
              .read(
                  row -> {
                    lines.add(row.line());
                    return Optional.of(
                        List.of(row.cell("graph"), row.cell("level_db"), row.cell("note")));
                  })
              .value();
      assertEquals(expected, cells);
      assertEquals(expectedLines, lines);
    } finally {
      Files.delete(file);
    }
  }

  @Provide
  Arbitrary<List<List<String>>> rows() {
    Arbitrary<String> cell =
        Arbitraries.strings().withChars("a1.,;\"\n# \u00e9\t\u4e2d").ofMaxLength(8);
    return cell.list().ofSize(3).list().ofMaxSize(6);
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> ",\"\n#".indexOf(c) >= 0);
    return plain && !cell.isEmpty() ? cell : "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
