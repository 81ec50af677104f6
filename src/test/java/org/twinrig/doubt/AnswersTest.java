package org.twinrig.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Reasons in a cell of the column {@code confirmed}, and doubts that share a cause. */
class AnswersTest {
  @Test
  void aReasonAnswersEveryDoubtOfItsRow() {
    assertEquals("new pads: as sold", Answers.to("specimen changed", " new pads: as sold "));
    assertEquals("", Answers.to("specimen changed", "  "));
  }

  @Test
  void aReasonByNameAnswersThatDoubtAlone() {
    String cell = "specimen changed: serial mistyped; same as: listed twice";
    assertEquals("serial mistyped", Answers.to("specimen changed", cell));
    assertEquals("listed twice", Answers.to("same as", cell));
    assertEquals("", Answers.to("already measured", cell));
  }

  private static Doubt doubt(String graph, String remedy) {
    return Doubt.ofGraph(
        graph, graph + ".csv", "same as", new Doubt.Found("1", "0"), "it is.", remedy);
  }

  @Test
  void graphsWithOneRemedyShareACause() {
    List<Doubt> causes =
        Doubt.byCause(
            List.of(
                doubt("G-1", "Mend."),
                doubt("G-2", "Look."),
                doubt("G-3", "Mend."),
                doubt("G-4", "Mend.").answered("known"),
                doubt("G-5", "Mend."),
                doubt("G-6", "Mend."),
                doubt("G-7", "Mend.")));
    assertEquals(
        List.of(
            "Same as (G-1, G-3, G-5 and 2 more): Of G-1: it is. Mend.",
            "Same as (G-2): it is. Look.",
            "Same as (G-4): it is. Mend."),
        causes.stream().map(Doubt::sentence).toList());
    assertEquals("G-1; G-3; G-5; G-6; G-7", causes.get(0).name());
    assertEquals(List.of("", "G-2.csv", "G-4.csv"), causes.stream().map(Doubt::file).toList());
  }

  @Test
  void whatChangesStandsBeforeWhatToDo() {
    Doubt doubt = doubt("G-1", "Mend.").changing("Much changes.");
    assertEquals("Much changes. Mend.", doubt.effect());
    assertEquals("Same as (G-1): it is. Much changes. Mend.", doubt.sentence());
  }
}
