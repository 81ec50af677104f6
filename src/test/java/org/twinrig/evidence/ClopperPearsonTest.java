package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;

class ClopperPearsonTest {
  /** binom_exact.R beside the values: binom.test of R 4.2.2. */
  @Test
  void agreesWithR() {
    for (Map<String, String> row : ReferenceTable.rows("binom_exact.csv")) {
      ClopperPearson found =
          ClopperPearson.of(
              Integer.parseInt(row.get("hits")),
              Integer.parseInt(row.get("trials")),
              Double.parseDouble(row.get("confidence")));
      assertEquals(Double.parseDouble(row.get("low")), found.low(), 1e-11, row::toString);
      assertEquals(Double.parseDouble(row.get("high")), found.high(), 1e-11, row::toString);
    }
  }

  /**
   * R. G. Newcombe 1998, Statistics in Medicine 17:857, table I, exact method of Clopper and
   * Pearson (from memory); R's binom.test gives the same to the digits shown.
   */
  @ParameterizedTest
  @CsvSource({
    "81, 263, 0.2527, 0.3676",
    "15, 148, 0.0578, 0.1617",
    "0, 20, 0.0000, 0.1684",
    "1, 29, 0.0009, 0.1776"
  })
  void agreesWithPublishedExamples(int hits, int trials, double low, double high) {
    ClopperPearson found = ClopperPearson.of(hits, trials, 0.95);
    assertEquals(low, found.low(), 5e-5);
    assertEquals(high, found.high(), 5e-5);
  }

  /** Conover 1971, p. 97 f. (Mendel's peas), as in R's help page of binom.test. */
  @Test
  void agreesWithMendelsPeas() {
    ClopperPearson found = ClopperPearson.of(682, 925, 0.95);
    assertEquals(0.7076683, found.low(), 5e-8);
    assertEquals(0.7654066, found.high(), 5e-8);
    assertEquals(682.0 / 925, found.share());
  }

  /** The sum of binomial probabilities is the definition: each end leaves 2.5 % beyond it. */
  @Test
  void eachEndLeavesItsShareBeyond() {
    ClopperPearson found = ClopperPearson.of(9, 12, 0.95);
    double atLeastNine = 0;
    double atMostNine = 0;
    double choose = 1;
    for (int x = 0; x <= 12; x++) {
      if (x >= 9) {
        atLeastNine += choose * Math.pow(found.low(), x) * Math.pow(1 - found.low(), 12.0 - x);
      }
      if (x <= 9) {
        atMostNine += choose * Math.pow(found.high(), x) * Math.pow(1 - found.high(), 12.0 - x);
      }
      choose = choose * (12 - x) / (x + 1);
    }
    assertEquals(0.025, atLeastNine, 1e-12);
    assertEquals(0.025, atMostNine, 1e-12);
  }

  @Test
  void whatIsNoShareIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> ClopperPearson.of(-1, 3, 0.95));
    assertThrows(IllegalArgumentException.class, () -> ClopperPearson.of(4, 3, 0.95));
    assertThrows(IllegalArgumentException.class, () -> ClopperPearson.of(0, 0, 0.95));
    assertThrows(IllegalArgumentException.class, () -> ClopperPearson.of(1, 3, 1));
    assertTrue(ClopperPearson.of(3, 3, 0.5).high() == 1);
  }
}
