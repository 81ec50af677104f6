package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
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
        unit,fixture,side,seating,file,session,exclude,note,confirmed
        Alder 3,head,L,1,files/in-ear/Alder 3_head_left_01.txt,,,,
        Alder 3,plate,L,1,files/in-ear/Alder 3_plate_L_1.txt,,,,
        """,
        Files.readString(lab.resolve("captures.csv")));
    assertEquals(
        """
        unit,kind,role,pads,state,impedance_ohm,exclude,note,confirmed
        Alder 3,in-ear,,,,,,,
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
    assertTrue(Files.readString(lab.resolve("units.csv")).endsWith("Rowan 5,in-ear,,,,,,,\n"));
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
        in-ear/Alder 3_plate_L_2.txt: holds the same bytes as `in-ear/Alder 3_plate_L_1.txt`; it is taken as a capture all the same: if it is a copy by mistake, export it again
        in-ear/Alder 3_plate_left_1.txt: `Alder 3` on `plate`, side L, seating 1, is `files/in-ear/Alder 3_plate_L_1.txt` already; give every seating its own number
        on-ear/Alder 3_plate_L_3.txt: unit `Alder 3` is of kind `on-ear` here and `in-ear` in `files/in-ear/Alder 3_plate_L_1.txt`; a unit has one kind: rename one of them
        in-ear/notes.doc: does not fit the pattern `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt`: `in-ear/` fits `{kind}/`, but `notes.doc` has no `_` to end {unit}; rename it, or gather it apart
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

  /** A newcomer errs in the pattern, and then every name is wrong alike. */
  @Test
  void aPatternThatNothingFitsIsToldOnce() throws IOException {
    for (int seating = 1; seating <= 9; seating++) {
      file("in-ear/Alder 3_Platte_L_" + seating + ".txt", "a" + seating);
      file("in-ear/Alder 3_Kopf_L_" + seating + ".txt", "b" + seating);
    }
    file("contents.doc", "not a capture");
    assertEquals(1, gather());
    assertEquals(
        "LAB/files: none of the 19 files fits the pattern"
            + " `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt`; take"
            + " `in-ear/Alder 3_Kopf_L_1.txt`: `in-ear/Alder 3_` fits `{kind}/{unit}_`, but fixture"
            + " `Kopf` is not `plate` or `head` (in others `Platte`); mend the pattern so that it"
            + " reads as the names do\n",
        told(err));
    assertEquals(
        """
        Of 19 files, 0 are captures and 19 are refused; 0 captures and 0 units are new.
        Nothing was written.
        """,
        told(out));
  }

  @Test
  void namesWithTheSameFaultAreToldTogether() throws IOException {
    file("in-ear/Alder 3_plate_L_1.txt", "a");
    file("in-ear/Alder 3_haed_L_1.txt", "b");
    for (int note = 1; note <= 5; note++) {
      file("in-ear/notes" + note + ".doc", "c" + note);
    }
    assertEquals(0, gather());
    assertEquals(
        """
        in-ear/Alder 3_haed_L_1.txt: does not fit the pattern `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt`: `in-ear/Alder 3_` fits `{kind}/{unit}_`, but fixture `haed` is not `plate` or `head`; rename it, or gather it apart
        in-ear/notes1.doc, in-ear/notes2.doc, in-ear/notes3.doc and 2 more files: do not fit the pattern `{kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt`: in the first, `in-ear/` fits `{kind}/`, but `notes1.doc` has no `_` to end {unit}; rename them, or gather them apart
        """,
        told(err));
    assertTrue(told(out).contains(" and 6 are refused;"), told(out));
  }

  @Test
  void namesWithTwoReadingsAreToldTogether() throws IOException {
    for (int seating = 1; seating <= 5; seating++) {
      file("Alder_3_plate_L_" + seating + ".txt", "a" + seating);
    }
    Ran ran =
        Ran.of(
            "gather",
            lab.resolve("files").toString(),
            "--pattern={unit}_{fixture}_{side}_{seating}.txt",
            "--kind=in-ear",
            "--out",
            lab.resolve("captures.csv").toString());
    assertEquals(1, ran.status());
    assertEquals(
        "Alder_3_plate_L_1.txt, Alder_3_plate_L_2.txt, Alder_3_plate_L_3.txt and 2 more files: can be"
            + " read in two ways: the first as unit `Alder`, fixture `3_plate`, side `L`, seating"
            + " `1`; or unit `Alder_3`, fixture `plate`, side `L`, seating `1`; name the texts a part"
            + " may have, such as {fixture:plate|head}\n",
        ran.err());
  }

  @Test
  void aKindThatTheTableOfUnitsHasOtherwiseIsNoted() throws IOException {
    file("on-ear/Alder 3_plate_L_1.txt", "a");
    file("on-ear/Oak 5_plate_L_1.txt", "b");
    String units = "unit,kind\nAlder 3,in-ear\nOak 5,on-ear\n";
    Files.writeString(lab.resolve("units.csv"), units);
    assertEquals(0, gather("--force"));
    assertEquals(
        "LAB/units.csv: unit `Alder 3` stands here as `in-ear`, not `on-ear`; it stays so: change"
            + " the table by hand if it is wrong\n",
        told(err));
    assertEquals(units, Files.readString(lab.resolve("units.csv")));
  }

  @Test
  void aFolderThatIsNotThereIsNoWrongUse() throws IOException {
    Path files = lab.resolve("files");
    assertEquals(1, gather());
    assertEquals(
        "LAB/files: there is no such folder; name the folder in which the captures lie\n",
        told(err));
    Files.writeString(files, "a file");
    assertEquals(1, gather());
    assertEquals(
        "LAB/files: this is a file; name the folder in which the captures lie\n", told(err));
  }

  @Test
  void aSpreadsheetSavedAsATableIsNamedForWhatItIs() throws IOException {
    file("in-ear/Alder 3_plate_L_1.txt", "a");
    byte[] spreadsheet = {'P', 'K', 3, 4, 20, 0, 6, 0};
    Files.write(lab.resolve("captures.csv"), spreadsheet);
    assertEquals(1, gather("--force"));
    assertEquals(
        "LAB/captures.csv: begins as a spreadsheet or a zip archive does, but cannot be read as one;"
            + " save it anew as .xlsx, or the sheet as CSV\n",
        told(err));
    assertArrayEquals(spreadsheet, Files.readAllBytes(lab.resolve("captures.csv")));
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
