package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.band.BandGrid;

/** R reliable, C caution, U unreliable, - no data; one letter a band. */
class EdgeTallyTest {
  private static final BandGrid GRID = BandGrid.covering(100, 10_000, 6);

  /** The study's edge stands between the third and the fourth of seven bands. */
  @ParameterizedTest
  @CsvSource({
    "RRRUUUU, RRRUUUU, 3, 1",
    "RRRUUUU, RRUUUUU, 2, 1",
    "RRRUUUU, RRRRRRU, 6, 1",
    "RRRUUUU, UUUUUUU, 0, 0",
    "RRRUUUU, RRRRRRR, 7, 0",
    // Where caution begins is another edge than where unreliable does.
    "RRRUUUU, RCCCUUU, 4, 1",
    "RRRCCCC, RRUUUUU, 2, 1",
    "CCCUUUU, RRRRUUU, 4, 1",
    // Worsening upwards is never taken for improving upwards, however near.
    "UUURRRR, UUUURRR, 4, 1",
    "UUURRRR, RRRRUUU, 0, 0",
    "RRRUUUU, UUURRRR, 7, 0",
    // The run on the worse side of a limit may hold two marks.
    "RRRCUUU, RRRRRUU, 5, 1",
    // An edge does not leave its runs: what happens beyond them is another change.
    "RRRUURR, RRRRRRU, 5, 0",
    "CRRUUUU, CUUUUUU, 1, 1",
    "URRUUUU, UUUUUUU, 1, 0",
    "-RRUUUU, -UUUUUU, 1, 0",
    "RRRUU--, RRRRR--, 5, 0"
  })
  void anEdgeIsFollowedWithinItsTwoRuns(String study, String resample, int place, double kept) {
    List<EdgeTally> edges = EdgeTally.of(marks(study), empty(study));
    EdgeTally edge = edges.stream().filter(e -> e.at == 3).findFirst().orElseThrow();
    assertEquals(place, edge.add(marks(resample)));
    assertEquals(kept, edge.edge(GRID).kept());
  }

  @Test
  void endsOfTheGridAndOfTheDataAreNoEdges() {
    assertEquals(0, EdgeTally.of(marks("RRR"), empty("RRR")).size());
    assertEquals(0, EdgeTally.of(marks("--RRR-"), empty("--RRR-")).size());
    assertEquals(2, EdgeTally.of(marks("-RRCCUU-"), empty("-RRCCUU-")).size());
  }

  @Test
  void theShareKeptIsThatOfAllResamples() {
    EdgeTally edge = EdgeTally.of(marks("RRRUUUU"), empty("RRRUUUU")).get(0);
    for (int k = 0; k < 19; k++) {
      edge.add(marks(k < 3 ? "UUUUUUU" : "RRRUUUU"));
    }
    assertEquals(
        new ZoneEdge(GRID.band(3).lowerHz(), Mark.RELIABLE, Mark.UNRELIABLE, 16.0 / 19),
        edge.edge(GRID));
  }

  @Test
  void anEdgeNeedsTwoMarksAndAShare() {
    assertThrows(
        IllegalArgumentException.class, () -> new ZoneEdge(100, Mark.CAUTION, Mark.CAUTION, 0.1));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ZoneEdge(100, Mark.CAUTION, Mark.RELIABLE, Double.NaN));
  }

  private static Mark[] marks(String letters) {
    return letters
        .chars()
        .mapToObj(c -> c == 'R' ? Mark.RELIABLE : c == 'C' ? Mark.CAUTION : Mark.UNRELIABLE)
        .toArray(Mark[]::new);
  }

  private static boolean[] empty(String letters) {
    boolean[] empty = new boolean[letters.length()];
    for (int b = 0; b < empty.length; b++) {
      empty[b] = letters.charAt(b) == '-';
    }
    return empty;
  }
}
