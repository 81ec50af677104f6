package org.twinrig.intake;

import java.util.Locale;
import java.util.Set;

/** What programs and people write where they have no number. */
final class MissingNumber {
  private static final Set<String> WORDS =
      Set.of(
          "",
          "nan",
          "-nan",
          "nan(ind)",
          "-nan(ind)",
          "1.#qnan",
          "-1.#ind",
          "na",
          "n/a",
          "#n/a",
          "#nv",
          "#num!",
          "#zahl!",
          "#div/0!",
          "#value!",
          "#wert!",
          "null",
          "none",
          "-",
          "--",
          "---");

  private static final Set<String> SILENCE =
      Set.of("-inf", "-infinity", "-∞", "\u2212∞", "-1.#inf", "\u2212inf");

  private static final Set<String> ENDLESS =
      Set.of("inf", "+inf", "infinity", "+infinity", "∞", "+∞", "1.#inf");

  private MissingNumber() {}

  static boolean isSaidBy(String field) {
    String word = field.toLowerCase(Locale.ROOT);
    return WORDS.contains(word) || SILENCE.contains(word) || ENDLESS.contains(word);
  }

  /** Whether a field says minus infinity, the level of a pressure of exactly zero. */
  static boolean isSilence(String field) {
    return SILENCE.contains(field.toLowerCase(Locale.ROOT));
  }
}
