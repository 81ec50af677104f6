package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.Problem;

/** The head of a report says what went in and what did not. */
class EntryWordsTest {

  /** Counted in demo-data: 45 units listed, 3 of them on-ear, 2 held out, 3 that lack a fixture. */
  @Test
  void unitsThatEnterNothingAreCounted() {
    assertEquals(
        "Of 45 units listed, 37 enter the estimates; 2 are held out, 3 are of kinds with fewer than 5,"
            + " 3 lack a usable capture on a fixture.",
        EntryWords.units(DemoStudy.read().outcome()));
  }

  @Test
  void problemsAreCountedAndSilenceIsLeftOut() {
    Problem refused = Problem.refused("captures.csv", 2, "a", "b");
    Problem note = Problem.note("units.csv", 3, "c");
    assertEquals("", EntryWords.problems(ProblemList.of(List.of())));
    assertEquals(
        "Input was refused for 2 reasons; 1 note on how files were taken",
        EntryWords.problems(ProblemList.of(List.of(refused, note, refused))));
    assertEquals(
        "1 note on how files were taken", EntryWords.problems(ProblemList.of(List.of(note))));
  }
}
