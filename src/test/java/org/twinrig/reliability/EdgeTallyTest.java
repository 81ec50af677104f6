package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
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
    List<EdgeTally> edges = EdgeTally.of(marks(study), empty(study), 1);
    EdgeTally edge = edges.stream().filter(e -> e.at() == 3).findFirst().orElseThrow();
    edge.add(marks(resample));
    assertEquals(kept, edge.edge(GRID, 0.5).kept());
    assertEquals(place, edge.last());
  }

  @Test
  void endsOfTheGridAndOfTheDataAreNoEdges() {
    assertEquals(0, EdgeTally.of(marks("RRR"), empty("RRR"), 1).size());
    assertEquals(0, EdgeTally.of(marks("--RRR-"), empty("--RRR-"), 1).size());
    assertEquals(2, EdgeTally.of(marks("-RRCCUU-"), empty("-RRCCUU-"), 1).size());
  }

  /**
   * Percentile intervals of 999 places against R 4.2.2, package boot 1.3-28.1: {@code k <- 0:998; t
   * <- 1 + (k %% 19) + ((k*k) %/% 7) %% 19; boot:::perc.ci(t, conf = c)}.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 13, 24", "0.8, 7, 29", "0.9, 5, 32", "0.95, 3, 34", "0.99, 1, 34"})
  void theIntervalIsThatOfThePercentiles(double confidence, int low, int high) {
    String study = "R".repeat(18) + "U".repeat(GRID.size() - 18);
    EdgeTally edge = EdgeTally.of(marks(study), empty(study), 999).get(0);
    for (int k = 0; k < 999; k++) {
      int place = 1 + k % 19 + k * k / 7 % 19;
      edge.add(marks("R".repeat(place) + "U".repeat(GRID.size() - place)));
    }
    ZoneEdge found = edge.edge(GRID, confidence);
    assertEquals(1, found.kept());
    assertEquals(
        Optional.of(new ResonanceWander.Range(GRID.band(low).lowerHz(), GRID.band(high).lowerHz())),
        found.interval());
  }

  @Test
  void theIntervalReachesToTheFarEndOfARunThatIsSwallowed() {
    EdgeTally edge = EdgeTally.of(marks("RRRUUUU"), empty("RRRUUUU"), 19).get(0);
    for (int k = 0; k < 19; k++) {
      edge.add(marks(k < 3 ? "UUUUUUU" : "RRRUUUU"));
    }
    ZoneEdge found = edge.edge(GRID, 0.9);
    assertEquals(16.0 / 19, found.kept());
    assertEquals(
        Optional.of(new ResonanceWander.Range(GRID.lowerHz(), GRID.band(3).lowerHz())),
        found.interval());
  }

  @Test
  void anEdgeThatFewerThanHalfHaveHasNoInterval() {
    EdgeTally edge = EdgeTally.of(marks("RRRUUUU"), empty("RRRUUUU"), 4).get(0);
    edge.add(marks("RRRRRRR"));
    edge.add(marks("RRRRRRR"));
    edge.add(marks("RRRUUUU"));
    assertFalse(edge.edge(GRID, 0.9).stable());
    edge.add(marks("RRRUUUU"));
    assertEquals(0.5, edge.edge(GRID, 0.9).kept());
    assertEquals(true, edge.edge(GRID, 0.9).stable());
  }

  @Test
  void anEdgeNeedsTwoMarksAndAShare() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new ZoneEdge(100, Mark.CAUTION, Mark.CAUTION, 0.1, Optional.empty()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ZoneEdge(100, Mark.CAUTION, Mark.RELIABLE, Double.NaN, Optional.empty()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new ZoneEdge(100, Mark.CAUTION, Mark.RELIABLE, 0.9, Optional.empty()));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new ZoneEdge(
                100,
                Mark.CAUTION,
                Mark.RELIABLE,
                0.4,
                Optional.of(new ResonanceWander.Range(90, 110))));
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
