package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Numbers;

/** Pieces of sentences that pages share. */
public final class Texts {
  private Texts() {}

  /** A name as a sentence begins with it; a letter outside the basic plane is kept whole. */
  public static String capital(String name) {
    int end = name.offsetByCodePoints(0, 1);
    return name.substring(0, end).toUpperCase(Locale.ROOT) + name.substring(end);
  }

  /** A share, 0 to 1, in whole hundredths, without the sign. */
  public static String percent(double share) {
    return Numbers.fixed(100 * share, 0);
  }

  /** Two frequencies, such as {@code 31.5 Hz to 1.25 kHz}. */
  public static String range(double fromHz, double toHz) {
    return Numbers.hertz(fromHz) + " to " + Numbers.hertz(toHz);
  }

  public static String ranges(List<FrequencyRange> runs, String between) {
    return runs.stream().map(r -> range(r.fromHz(), r.toHz())).collect(Collectors.joining(between));
  }

  /** Two frequencies with the unit said once where both have it: {@code 1.7 to 2.7 kHz}. */
  static String unitOnce(String from, String to) {
    int number = from.indexOf(' ');
    boolean alike = from.substring(number).equals(to.substring(to.indexOf(' ')));
    return (alike ? from.substring(0, number) : from) + " to " + to;
  }

  /** A number with its interval, such as {@code 0.40 (-0.77 to 0.95)}. */
  static String ranged(double value, double low, double high) {
    return Numbers.fixed(value, 2) + range(Numbers.fixed(low, 2), Numbers.fixed(high, 2));
  }

  /** An interval behind a value. */
  static String range(String low, String high) {
    return " (" + low + " to " + high + ")";
  }

  /** Words in a list: {@code a}, {@code a and b}, {@code a, b and c}. */
  public static String joined(List<String> words) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
  }
}
