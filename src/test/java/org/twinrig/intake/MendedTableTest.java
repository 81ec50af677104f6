package org.twinrig.intake;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class MendedTableTest {

  private static String with(String table, int line, String column, String text) {
    return new String(new MendedTable(table.getBytes(UTF_8)).with(line, column, text), UTF_8);
  }

  @Test
  void changesOneCellAndNothingElse() {
    String table = "# by hand\r\nunit,exclude,file\r\n\r\nAlder 1,,a.csv\r\n# note\r\nOak 2,,b.csv";
    assertEquals(
        "# by hand\r\nunit,exclude,file\r\n\r\nAlder 1,,a.csv\r\n# note\r\nOak 2,leaks,b.csv",
        with(table, 6, "exclude", "leaks"));
  }

  @Test
  void quotesWhatNeedsIt() {
    assertEquals("unit,exclude\nA,\"a, b\"\n", with("unit,exclude\nA,\n", 2, "exclude", "a, b"));
    assertEquals(
        "unit,exclude\nA,\"5\"\" pad\"\n", with("unit,exclude\nA,\n", 2, "exclude", "5\" pad"));
  }

  @Test
  void findsRowsBehindCellsOfSeveralLines() {
    String table = "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",\nB,\"\",x\n";
    assertEquals(
        "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",\nB,\"\",y\n",
        with(table, 4, "exclude", "y"));
    assertEquals(
        "\uFEFFunit,note,exclude\n\"A, the \"\"first\"\"\",\"two\nlines\",z\nB,\"\",x\n",
        with(table, 2, "exclude", "z"));
  }

  @Test
  void addsAColumnThatIsMissing() {
    assertEquals(
        "# c\nunit,file,exclude\nA,a,\nB,b,leaks\n",
        with("# c\nunit,file\nA,a\nB,b\n", 4, "exclude", "leaks"));
  }

  @Test
  void refusesALineWithoutARowAndATextOfSeveralLines() {
    MendedTable table = new MendedTable("unit,exclude\nA,\n".getBytes(UTF_8));
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
    byte[] after = new MendedTable(before).with(4, "exclude", "gone, \"quite\"");
    Path file = Files.createTempFile("table", ".csv");
    try {
      Files.write(file, after);
      LabTable read =
          LabTable.of(
              file, "t", new LabTable.Columns(List.of("unit", "exclude", "note"), List.of()));
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
