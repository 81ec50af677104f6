package org.twinrig.intake;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;

class MendedTableTest {
  private static final LabTable.Columns COLUMNS =
      new LabTable.Columns("t", List.of("unit", "exclude", "note"), List.of("file"));

  private static String with(String table, int line, String column, String text)
      throws UnusableInput {
    return with(table, UTF_8, line, column, text);
  }

  private static String with(String table, Charset letters, int line, String column, String text)
      throws UnusableInput {
    MendedTable mended = new MendedTable(table.getBytes(letters), "t");
    return new String(mended.with(line, column, text), letters);
  }

  /** A table keeps what spreadsheets gave it. */
  @Test
  void keepsItsSeparatorAndItsLetters() throws UnusableInput {
    assertEquals(
        "unit;exclude\r\nEsche é;\"a; b, ü\"\r\n",
        with("unit;exclude\r\nEsche é;\r\n", ISO_8859_1, 2, "exclude", "a; b, ü"));
    assertEquals(
        "unit\tfile\texclude\nA\ta\tleaks\n",
        with("unit\tfile\nA\ta\n", UTF_8, 2, "exclude", "leaks"));
    assertEquals(
        "t:2: cannot hold `下`, being Latin-1 text; save it as UTF-8",
        assertThrows(
                UnusableInput.class,
                () -> with("unit;exclude\né;\n", ISO_8859_1, 2, "exclude", "下"))
            .getMessage());
    assertEquals(
        "t: is UTF-16 text and is only read; write into it where it was made, or save it as CSV"
            + " (UTF-8) and name that in study.yaml",
        assertThrows(
                UnusableInput.class,
                () -> with("\uFEFFunit,exclude\nA,\n", UTF_16LE, 2, "exclude", "x"))
            .getMessage());
  }

  @Test
  void changesOneCellAndNothingElse() throws UnusableInput {
    String table = "# by hand\r\nunit,exclude,file\r\n\r\nAlder 1,,a.csv\r\n# note\r\nOak 2,,b.csv";
    assertEquals(
        "# by hand\r\nunit,exclude,file\r\n\r\nAlder 1,,a.csv\r\n# note\r\nOak 2,leaks,b.csv",
        with(table, 6, "exclude", "leaks"));
  }

  @Test
  void quotesWhatNeedsIt() throws UnusableInput {
    assertEquals("unit,exclude\nA,\"a, b\"\n", with("unit,exclude\nA,\n", 2, "exclude", "a, b"));
    assertEquals(
        "unit,exclude\nA,\"5\"\" pad\"\n", with("unit,exclude\nA,\n", 2, "exclude", "5\" pad"));
  }

  @Test
  void findsRowsBehindCellsOfSeveralLines() throws UnusableInput {
    String table = "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",\nB,\"\",x\n";
    assertEquals(
        "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",\nB,\"\",y\n",
        with(table, 4, "exclude", "y"));
    assertEquals(
        "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",z\nB,\"\",x\n",
        with(table, 2, "exclude", "z"));
  }

  @Test
  void addsAColumnThatIsMissing() throws UnusableInput {
    assertEquals(
        "# c\nunit,file,exclude\nA,a,\nB,b,leaks\n",
        with("# c\nunit,file\nA,a\nB,b\n", 4, "exclude", "leaks"));
  }

  @Test
  void refusesALineWithoutARowAndATextOfSeveralLines() throws UnusableInput {
    MendedTable table = new MendedTable("unit,exclude\nA,\n".getBytes(UTF_8), "t");
    assertEquals(
        "no row begins in line 3",
        assertThrows(IllegalArgumentException.class, () -> table.with(3, "exclude", "x"))
            .getMessage());
    assertThrows(IllegalArgumentException.class, () -> table.with(1, "exclude", "x"));
    assertThrows(IllegalArgumentException.class, () -> table.with(2, "exclude", "x\ny"));
  }

  @Provide
  Arbitrary<String> cells() {
    return Arbitraries.of("", "a", "a,b", "\"", "x\ny", " s ", "#", "ß", "\"q\",\"", "=1", "\r\n");
  }

  /** Whatever stands in a table, the table reader finds the new text in its place and no other. */
  @Property(tries = 300)
  void theTableReaderReadsBackWhatWasWritten(
      @ForAll("cells") String first,
      @ForAll("cells") String last,
      @ForAll("cells") String old,
      @ForAll boolean windows)
      throws Exception {
    String end = windows ? "\r\n" : "\n";
    String row = quoted("u" + first) + "," + quoted(old) + "," + quoted(last);
    String table = "unit,exclude,note" + end + "# c" + end + "A,,n" + end + row + end + "B,," + end;
    byte[] before = table.getBytes(UTF_8);
    byte[] after = new MendedTable(before, "t").with(4, "exclude", "gone, \"quite\"");
    Path file = Files.createTempFile("table", ".csv");
    try {
      Files.write(file, after);
      LabTable read = LabTable.of(file, "t", COLUMNS);
      assertEquals(3, read.size());
      assertEquals("gone, \"quite\"", read.cells("exclude").get(1));
      assertEquals(List.of("n", last, ""), read.cells("note"));
      assertArrayEquals(before, restored(after, quoted(old)));
    } finally {
      Files.delete(file);
    }
  }

  /** Puts the old cell back by text: every other byte must be what it was. */
  private static byte[] restored(byte[] after, String old) {
    return new String(after, UTF_8).replace("\"gone, \"\"quite\"\"\"", old).getBytes(UTF_8);
  }

  private static String quoted(String cell) {
    return "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
