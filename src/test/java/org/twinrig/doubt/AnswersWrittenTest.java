package org.twinrig.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What the workbench writes into the column that answers doubts is what is read from it. */
class AnswersWrittenTest {
  private static final String SAME = "same as";
  private static final String CHANGED = SpecimenChanged.DOUBT;

  @Test
  void anAnswerIsAddedByNameAndTakenOutAgain() {
    String one = Answers.with("", SAME, "listed twice");
    assertEquals("same as: listed twice", one);
    String two = Answers.with(one, CHANGED, "the same: relabelled");
    assertEquals("same as: listed twice; specimen changed: the same: relabelled", two);
    assertEquals("listed twice", Answers.to(SAME, two));
    assertEquals("the same: relabelled", Answers.to(CHANGED, two));
    assertEquals(
        "specimen changed: the same: relabelled; same as: one unit",
        Answers.with(two, SAME, "one unit"),
        "answered anew, not twice");
    assertEquals(one, Answers.without(two, CHANGED));
    assertEquals("", Answers.without(one, SAME));
    assertEquals("lost seal: vented", Answers.with("", "lost seal", "vented"));
    assertEquals("vented", Answers.to("lost seal", "lost seal: vented"));
    assertEquals("", Answers.to("noisy capture", "lost seal: vented"));
  }

  /** A reason that is not by name answered everything about its row. */
  @Test
  void aReasonForAllGoesAsAWhole() {
    assertEquals("", Answers.without("worn pads, as sold; see: the note", SAME));
    assertEquals("same as: listed twice", Answers.with("", SAME, "listed twice"));
  }

  @Test
  void aPairIsAboutBothUnits() {
    Doubt pair =
        Doubt.open(
            Doubt.Subject.PAIR,
            "Oak / L / Oak / R",
            "",
            "one unit twice",
            new Doubt.Found("1 dB", "2 dB"),
            "they may be one.",
            "Name them alike.");
    assertTrue(pair.isAbout("Oak / L"));
    assertTrue(pair.isAbout("Oak / R"));
    assertFalse(pair.isAbout("Alder"));
    assertFalse(pair.isAbout("R2"));
  }
}
