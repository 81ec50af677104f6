package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the tables of a lab contradict about old graphs, and how it is answered. */
class CatalogueDoubtsTest extends OnACatalogue {
  private static final String ALREADY =
      "Publish what was measured there instead of a translated graph; a graph of another specimen"
          + " wants a unit name of its own.";

  private void cell(int row, int column, String text) throws IOException {
    List<String> rows = rows();
    String[] cells = rows.get(row).split(",", -1);
    cells[column] = text;
    rows.set(row, String.join(",", cells));
    Files.write(catalogue, rows);
  }

  private List<String> doubts(String out) throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve(out + "/doubts.csv"));
    return lines.subList(1, lines.size());
  }

  private String summary(String out, int row) throws IOException {
    return Files.readAllLines(folder.resolve(out + "/summary.csv")).get(row);
  }

  @Test
  void nothingIsDoubtedOfTheDemonstrationsFirstGraphs() throws IOException {
    assertEquals(0, translate("out").status());
    assertEquals(List.of(), doubts("out"));
  }

  /** Named as in the study, and nearly so: one line for the cause, until both are answered. */
  @Test
  void aUnitTheStudyMeasuredIsNotTranslated() throws IOException {
    cell(1, 1, "Oak 15");
    cell(8, 1, "hawthorn-8");
    Ran ran = translate("out");
    String told =
        "Doubt: Already measured (G-001; G-008): Of G-001: the study has `Oak 15` on Head with"
            + " soft cheeks. "
            + ALREADY;
    assertTrue(ran.out().contains(told), ran.out());
    assertTrue(ran.out().contains("; 2 must be checked first; "), ran.out());
    assertTrue(summary("out", 1).contains(",check first,"), summary("out", 1));
    assertTrue(summary("out", 1).endsWith(",already measured"), summary("out", 1));
    assertEquals(
        List.of(
            "graph,G-001; G-008,,,already measured,the same name,names of their own,Of G-001: the"
                + " study has `Oak 15` on Head with soft cheeks.,"
                + ALREADY
                + ","),
        doubts("out"));
    List<String> rows = rows();
    for (int row = 0; row < rows.size(); row++) {
      String answer =
          switch (row) {
            case 0 -> ",confirmed";
            case 1 -> ",another specimen";
            case 8 -> ",already measured: another specimen; same as: no";
            default -> ",";
          };
      rows.set(row, rows.get(row) + answer);
    }
    Files.write(catalogue, rows);
    Ran again = translate("again");
    assertTrue(!again.out().contains("Doubt: "), again.out());
    assertTrue(!summary("again", 1).contains(",check first,"), summary("again", 1));
    assertTrue(doubts("again").get(0).endsWith(",another specimen"), doubts("again").get(0));
    String report = Files.readString(folder.resolve("again/report.html"));
    assertTrue(report.contains("<h2>1 doubt answered</h2>"));
    assertTrue(report.contains("The lab answers: another specimen</li>"));
  }

  @Test
  void oneFileListedTwiceIsTold() throws IOException {
    cell(6, 3, "catalogue/g-002.csv");
    assertTrue(
        translate("out")
            .out()
            .contains(
                "Doubt: Same as (G-006): its file holds what graph `G-002` holds. One of the two is"
                    + " not what it is listed as, unless it is listed twice: name the right file, or"
                    + " take the row out."));
  }

  @Test
  void twoKindsOfOneUnitContradict() throws IOException {
    cell(6, 1, "Aspen 39");
    cell(6, 2, "in-ear");
    String told =
        "Doubt: Tables contradict (G-006): `kind` of unit `Aspen 39` is `in-ear` here and `closed"
            + " over-ear` in graph `G-002`. Correct the table that is wrong: with a wrong `kind` the"
            + " transfer is that of other headphones.";
    assertTrue(translate("out").out().contains(told));
  }

  @Test
  void anotherKindThanInTheStudyContradicts() throws IOException {
    cell(2, 1, "Oak 15");
    assertTrue(
        translate("out")
            .out()
            .contains(
                "`kind` of unit `Oak 15` is `closed over-ear` here and `open over-ear` in the"
                    + " study."));
  }

  @Test
  void seatingsThatNobodyStatesAreSaidAndHoldNothingUp() throws IOException {
    cell(1, 4, "");
    Ran ran = translate("out");
    assertTrue(
        ran.out()
            .contains(
                "Doubt: Seatings not stated: 1 graph leaves `seatings` empty: each is taken to be of"
                    + " one seating. Intervals are wider than they need be where more were averaged."
                    + " Write how many where it is known; nothing is held up."),
        ran.out());
    assertTrue(!summary("out", 1).contains("check first"));
  }

  /** Whatever stands in the column answers, which is told where it seems to say no. */
  @Test
  void aWordThatSaysNoAnswersAllTheSame() throws IOException {
    List<String> rows = rows();
    for (int row = 0; row < rows.size(); row++) {
      rows.set(row, rows.get(row) + (row == 0 ? ",confirmed" : row == 1 ? ",no" : ","));
    }
    Files.write(catalogue, rows);
    assertTrue(
        translate("out")
            .err()
            .contains(
                ":2: `confirmed` is `no`, and whatever stands there answers the doubts about this"
                    + " row; empty the cell to leave them open"));
  }
}
