package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command from end to end, its words as a user reads them. */
class GatherCommandTest {
  @TempDir private Path lab;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int gather(String... more) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "gather",
                lab.resolve("files").toString(),
                "--pattern",
                "{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt",
                "--out",
                lab.resolve("captures.csv").toString()));
    arguments.addAll(List.of(more));
    return Main.run(
        new PrintWriter(out, true), new PrintWriter(err, true), arguments.toArray(String[]::new));
  }

  private String told(StringWriter writer) {
    return writer.toString().replace(lab.toString(), "LAB").replace("\r\n", "\n");
  }

  private void file(String name, String text) throws IOException {
    Path file = lab.resolve("files").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  @Test
  void tablesAreMadeAndGrowWithoutLosingWhatTheLabWrote() throws IOException {
    file("in-ear/Alder 3_plate_L_1.txt", "a");
    file("in-ear/Alder 3_head_left_01.txt", "b");
    file(".hidden/Alder 3_head_L_2.txt", "c");
    assertEquals(0, gather());
    assertEquals(
        """
        Of 2 files, 2 are captures and 0 are refused; 2 captures and 1 unit are new.
        Captures: LAB/captures.csv
        Units: LAB/units.csv
        """,
        told(out));
    assertEquals(
        """
        unit,fixture,side,seating,file,session,exclude,note
        Alder 3,head,L,1,files/in-ear/Alder 3_head_left_01.txt,,,
        Alder 3,plate,L,1,files/in-ear/Alder 3_plate_L_1.txt,,,
        """,
        Files.readString(lab.resolve("captures.csv")));
    assertEquals(
        """
        unit,kind,role,pads,note
        Alder 3,in-ear,,,
        """,
        Files.readString(lab.resolve("units.csv")));

    String mine =
        """
        # ours
        file,unit,fixture,side,seating,exclude
        files/in-ear/Alder 3_plate_L_1.txt,Alder 3,plate,L,1,"cable touched, twice"
        files/in-ear/lost.txt,Alder 3,plate,L,7,"""
            .replace("\n", "\r\n");
    Files.writeString(lab.resolve("captures.csv"), mine);
    file("in-ear/Rowan 5_head_R_1.txt", "d");
    assertEquals(1, gather(), "a table is not touched without --force");
    assertEquals(mine, Files.readString(lab.resolve("captures.csv")));
    assertEquals(
        """
        LAB/captures.csv: names `files/in-ear/lost.txt`, which is not there any more
        LAB/captures.csv: a table is there already and nothing was written; give --force to add the new rows at its end and keep all that stands in it
        """,
        told(err));
    assertEquals(0, gather("--force"));
    assertEquals(
        mine
            + "\r\nfiles/in-ear/Alder 3_head_left_01.txt,Alder 3,head,L,1,\r\n"
            + "files/in-ear/Rowan 5_head_R_1.txt,Rowan 5,head,R,1,\r\n",
        Files.readString(lab.resolve("captures.csv")));
    assertTrue(Files.readString(lab.resolve("units.csv")).endsWith("Rowan 5,in-ear,,,\n"));
    assertEquals(0, gather("--force"));
    assertTrue(told(out).endsWith("are new.\nNothing was written.\n"), told(out));
  }

  @Test
  void whatDoesNotFitIsNamedAndTheRestStands() throws IOException {
    file("in-ear/Alder 3_plate_L_1.txt", "a");
    file("in-ear/Alder 3_plate_left_1.txt", "b");
    file("in-ear/Alder 3_plate_L_2.txt", "a");
    file("on-ear/Alder 3_plate_L_3.txt", "c");
    file("in-ear/notes.doc", "d");
    file("in-ear/=cmd()_plate_L_1.txt", "e");
    assertEquals(0, gather("--dry-run"));
    assertEquals(
        """
        in-ear/=cmd()_plate_L_1.txt: a part of the name begins with =, +, - or @ and would run in a spreadsheet; rename it
        in-ear/Alder 3_plate_L_2.txt: holds the same bytes as `in-ear/Alder 3_plate_L_1.txt`
        in-ear/Alder 3_plate_left_1.txt: `Alder 3` on `plate`, side L, seating 1, is `files/in-ear/Alder 3_plate_L_1.txt` already; give every seating its own number
        in-ear/notes.doc: does not fit the pattern `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt`; rename it, or gather it apart
        on-ear/Alder 3_plate_L_3.txt: unit `Alder 3` is of kind `on-ear` here and `in-ear` in `files/in-ear/Alder 3_plate_L_1.txt`; a unit has one kind: rename one of them
        """,
        told(err));
    assertEquals(
        """
        unit                 fixture      side  seating  kind               file
        Alder 3              plate        L     1        in-ear             files/in-ear/Alder 3_plate_L_1.txt
        Alder 3              plate        L     2        in-ear             files/in-ear/Alder 3_plate_L_2.txt
        Of 6 files, 2 are captures and 4 are refused; 2 captures and 1 unit are new.
        Nothing was written.
        """,
        told(out));
    assertFalse(Files.exists(lab.resolve("captures.csv")));
  }

  @Test
  void wrongUseIsExplained() throws IOException {
    Files.createDirectories(lab.resolve("files"));
    assertEquals(2, gather("--side", "L"));
    assertTrue(told(err).startsWith("--side is given, but the pattern names it too\n"), told(err));
    int status =
        Main.run(
            new PrintWriter(out, true),
            new PrintWriter(err, true),
            "gather",
            lab.toString(),
            "--pattern",
            "{unit}.txt",
            "--out",
            "x.csv");
    assertEquals(2, status);
    assertTrue(
        told(err).contains("the pattern does not name {fixture}; add it or give --fixture\n"));
  }

  /** The committed demonstration, gathered anew, has the captures its table has. */
  @Test
  void theDemonstrationIsGatheredAsItsTableSays() throws IOException {
    Path data = Path.of("demo-data", "plate-to-head").toAbsolutePath();
    TreeSet<String> expected = new TreeSet<>();
    for (String line : Files.readAllLines(data.resolve("captures.csv"))) {
      String[] cells = line.split(",", -1);
      expected.add(cells[1] + "," + cells[2] + "," + cells[3] + "," + cells[4]);
    }
    Path copy = lab.resolve("demo");
    Ran.copy(data.resolve("captures"), copy.resolve("captures"));
    int status =
        Main.run(
            new PrintWriter(out, true),
            new PrintWriter(err, true),
            "gather",
            copy.toString(),
            "--pattern",
            "captures/{fixture}/{unit}-{side:L|R|M}-{seating}.{*}",
            "--kind",
            "all",
            "--out",
            copy.resolve("captures.csv").toString());
    assertEquals(0, status, err.toString());
    TreeSet<String> found = new TreeSet<>();
    for (String line : Files.readAllLines(copy.resolve("captures.csv"))) {
      String[] cells = line.split(",", -1);
      found.add(cells[1] + "," + cells[2] + "," + cells[3] + "," + cells[4]);
    }
    assertEquals(expected, found);
  }
}
