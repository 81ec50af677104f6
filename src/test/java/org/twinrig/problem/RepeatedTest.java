package org.twinrig.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RepeatedTest {

  private static Problem lost(int line) {
    return Problem.refused("captures.csv", line, "session `h1` was left out", "mend its row");
  }

  @Test
  void aSentenceIsToldOnceWithItsLines() {
    List<Problem> problems = new ArrayList<>();
    for (int line : new int[] {9, 4, 5, 6, 12}) {
      problems.add(lost(line));
    }
    problems.add(2, Problem.note("captures.csv", 5, "a comment"));
    problems.add(Problem.refused("units.csv", 4, "session `h1` was left out", "mend its row"));
    assertEquals(
        List.of(
            "captures.csv:4: session `h1` was left out (in 5 rows, lines 4 to 6, 9, 12);"
                + " mend its row",
            "captures.csv:5: a comment",
            "units.csv:4: session `h1` was left out; mend its row"),
        Repeated.toldOnce(problems).stream().map(Problem::text).toList());
  }

  @Test
  void oneLineStaysAsItWasAndTheSameProblemTwiceIsOne() {
    assertEquals(List.of(lost(7)), Repeated.toldOnce(List.of(lost(7), lost(7))));
    assertEquals(List.of(), Repeated.toldOnce(List.of()));
  }

  /** What was left out of the list is still counted. */
  @Test
  void aLongListIsCutAndCounted() {
    List<Problem> problems = IntStream.range(0, 40).mapToObj(k -> lost(2 + 3 * k)).toList();
    assertEquals(
        "captures.csv:2: session `h1` was left out (in 40 rows, lines 2, 5, 8, 11, 14, 17"
            + " and so on); mend its row",
        Repeated.toldOnce(problems).get(0).text());
  }
}
