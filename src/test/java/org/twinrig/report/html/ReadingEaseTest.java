package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ReadingEaseTest {
  /** Counted by ear. */
  @Test
  void syllablesAreCountedAsTheyAreSpoken() {
    assertEquals(2, ReadingEase.syllables("headphones"));
    assertEquals(2, ReadingEase.syllables("fixture"));
    assertEquals(1, ReadingEase.syllables("hatched"));
    assertEquals(2, ReadingEase.syllables("counted"));
    assertEquals(2, ReadingEase.syllables("people,"));
    assertEquals(4, ReadingEase.syllables("calibrators."));
    assertEquals(4, ReadingEase.syllables("professionals"));
    assertEquals(1, ReadingEase.syllables("the"));
    assertEquals(3, ReadingEase.syllables("100"));
    assertEquals(3, ReadingEase.syllables("dB."));
  }

  /** By hand: 8 words in 2 sentences, 10 syllables. */
  @Test
  void theFormulaIsFleschs() {
    assertEquals(
        206.835 - 1.015 * 8 / 2 - 84.6 * 10 / 8,
        ReadingEase.of(List.of("The cat sat on carpet. It was happy.")),
        1e-9);
  }
}
