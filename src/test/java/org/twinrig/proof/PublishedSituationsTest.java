package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/** The committed table says what the page beside it says. */
class PublishedSituationsTest {
  private static final Path TABLE = Path.of("studies", "situations-proof", "situations.csv");

  /** A study shows nothing of these, and its intervals do not hold them. */
  private static final Set<String> NOT_SHOWN =
      Set.of("noisy old graphs", "leaky among sealed", "left and right as two units");

  /** So many standard errors may be chance. */
  private static final double CHANCE = 2;

  private static List<Map<String, String>> rows() throws IOException {
    return ReferenceTable.rows(TABLE);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static boolean usual(Map<String, String> row) {
    return !NOT_SHOWN.contains(row.get("situation"));
  }

  @Test
  void everySituationIsThereOnBothSimulators() throws IOException {
    Map<String, Set<String>> simulators = new TreeMap<>();
    for (Map<String, String> row : rows()) {
      assertTrue(
          simulators
              .computeIfAbsent(row.get("situation"), s -> new TreeSet<>())
              .add(row.get("simulator") + " " + row.get("units")),
          row::toString);
      assertTrue(number(row, "studies") >= 12, row::toString);
    }
    assertEquals(
        Happening.ALL.stream().map(Happening::word).collect(Collectors.toCollection(TreeSet::new)),
        simulators.keySet());
    for (Happening happening : Happening.ALL) {
      Set<String> tried = new TreeSet<>();
      for (int units : List.of(6, 8, 16, 30)) {
        if (units < 30 || happening.study() == Happening.OfStudy.USUAL) {
          tried.addAll(List.of("impedances " + units, "curves " + units));
        }
      }
      assertEquals(tried, simulators.get(happening.word()), happening.word());
    }
  }

  @Test
  void thePromiseIsKeptWhereAllIsAsItShouldBe() throws IOException {
    for (Map<String, String> row : rows()) {
      if (row.get("situation").equals("ideal")) {
        double slack = CHANCE * number(row, "inside_mc_se");
        assertTrue(number(row, "inside") >= 0.93 - slack, row::toString);
        assertTrue(number(row, "inside") <= 0.97 + slack, row::toString);
        assertTrue(number(row, "inside_least_region") >= 0.90, row::toString);
      }
    }
  }

  /** Where a study shows the trouble its intervals widen with it, and where not they do not. */
  @Test
  void intervalsHoldWhatStudiesShow() throws IOException {
    for (Map<String, String> row : rows()) {
      double error = number(row, "inside_mc_se");
      double inside = number(row, "inside");
      if (usual(row)) {
        assertTrue(inside >= 0.90 && error < 0.02, row::toString);
      } else {
        assertTrue(inside + 4 * error < 0.93, row::toString);
      }
    }
  }

  /** A seating that is not stated counts as one: the rows are the same but for their name. */
  @Test
  void aSeatingThatIsNotStatedCountsAsOne() throws IOException {
    assertEquals(figures("one seating stated"), figures("one seating not stated"));
    assertEquals(8, figures("one seating stated").size());
  }

  private static List<String> figures(String situation) throws IOException {
    return rows().stream()
        .filter(r -> r.get("situation").equals(situation))
        .map(r -> String.join(",", r.values()).substring(situation.length()))
        .toList();
  }

  @Test
  void theProgramNoticesLeaksMoreOftenThanItErrs() throws IOException {
    Map<String, Double> ideal = outside("ideal");
    outside("leaky among sealed")
        .forEach((tried, share) -> assertTrue(share >= ideal.get(tried), tried));
  }

  private static Map<String, Double> outside(String situation) throws IOException {
    return rows().stream()
        .filter(r -> r.get("situation").equals(situation))
        .collect(
            Collectors.toMap(
                r -> r.get("simulator") + " " + r.get("units"),
                r -> number(r, "outside_the_study")));
  }

  @Test
  void figuresAreWhatTheyCanBe() throws IOException {
    for (Map<String, String> row : rows()) {
      for (String share :
          List.of(
              "inside",
              "inside_least_region",
              "inside_least_of_a_kind",
              "graphs_inside_at_every_band",
              "outside_the_study")) {
        assertTrue(number(row, share) >= 0 && number(row, share) <= 1, row::toString);
      }
      assertTrue(number(row, "inside_least_region") <= number(row, "inside"), row::toString);
      assertTrue(
          number(row, "inside_least_of_a_kind") <= number(row, "inside_least_region"),
          row::toString);
      assertTrue(number(row, "largest_false_step_db") >= number(row, "false_step_db"));
      // What "less than six tenths" on the page says.
      assertTrue(
          number(row, "largest_step_db") < 0.6 * number(row, "false_step_db"), row::toString);
    }
  }
}
