package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How easily a text is read: the usual formula of Flesch, "A new readability yardstick", Journal of
 * Applied Psychology 32 (1948) 221-233, {@code 206.835 - 1.015 words/sentences - 84.6
 * syllables/words}; 60 to 70 is "standard", 80 to 90 "easy" (from memory). Syllables are counted by
 * rule: groups of vowels, without a silent e.
 */
final class ReadingEase {
  private static final Pattern PROSE = Pattern.compile("(?s)<(p|li|dd)(?: [^>]*)?>(.*?)</\\1>");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[\\s\u2013-]+");
  private static final Pattern BETWEEN_SENTENCES = Pattern.compile("(?<=[.!?]) ");
  private static final Pattern VOWELS = Pattern.compile("[aeiouy]+");

  private ReadingEase() {}

  /** The paragraphs, list items and explanations of a page, without its tags. */
  static List<String> prose(String page) {
    List<String> prose = new ArrayList<>();
    Matcher matcher = PROSE.matcher(page.replaceAll("(?s)<style>.*?</style>", ""));
    while (matcher.find()) {
      String text = matcher.group(2).replaceAll("<[^>]*>", "").replaceAll("\\s+", " ").trim();
      if (text.endsWith(".")) {
        prose.add(text);
      }
    }
    return prose;
  }

  static List<String> sentences(List<String> prose) {
    return prose.stream().flatMap(BETWEEN_SENTENCES::splitAsStream).toList();
  }

  static List<String> words(String text) {
    return BETWEEN_WORDS
        .splitAsStream(text)
        .filter(word -> word.codePoints().anyMatch(Character::isLetterOrDigit))
        .toList();
  }

  static double of(List<String> prose) {
    List<String> sentences = sentences(prose);
    List<String> words = sentences.stream().flatMap(s -> words(s).stream()).toList();
    double syllables = words.stream().mapToInt(ReadingEase::syllables).sum();
    double count = words.size();
    return 206.835 - 1.015 * count / sentences.size() - 84.6 * syllables / count;
  }

  static int syllables(String token) {
    String word =
        token.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9.]", "").replaceAll("\\.$", "");
    return switch (word) {
      case "hz" -> 1;
      case "db", "khz" -> 3;
      default -> word.matches("[0-9.]+") ? word.length() : Math.max(1, spoken(word));
    };
  }

  private static int spoken(String word) {
    int groups = (int) VOWELS.matcher(word).results().count();
    boolean silent =
        word.matches(".*[^aeiouy]e")
            ? !word.matches(".*[^aeiouyl]le")
            : word.matches(".*[^aeiouytd]ed") || word.matches(".*[^aeiouyszxcgh]es");
    return silent ? groups - 1 : groups;
  }
}
