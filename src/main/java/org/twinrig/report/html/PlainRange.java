package org.twinrig.report.html;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.Stretch;

/**
 * Ranges of frequency in everyday words. Ends are rounded to two digits where that tells them
 * apart: by 5 % at most, less than one band of 1/12 octave.
 */
final class PlainRange {
  static final String EVERYWHERE = "everywhere";
  private static final double LEAST_SHARE = 0.1;

  private final double lowestHz;
  private final double highestHz;

  /**
   * Ranges of an axis.
   *
   * @param axis all of it, rising in frequency
   */
  PlainRange(List<Stretch> axis) {
    this.lowestHz = axis.get(0).fromHz();
    this.highestHz = axis.get(axis.size() - 1).toHz();
  }

  /** Several ranges in one list: {@code below 45 Hz and from 1.7 to 2.7 kHz (middle)}. */
  String list(List<Stretch> stretches) {
    return joined(stretches.stream().map(this::of).toList());
  }

  /** One range, with the regions it lies in. */
  String of(Stretch stretch) {
    String numbers = numbers(stretch);
    return numbers.equals(EVERYWHERE) ? numbers : numbers + regions(stretch);
  }

  private String numbers(Stretch stretch) {
    boolean low = stretch.fromHz() <= lowestHz;
    boolean high = stretch.toHz() >= highestHz;
    if (low && high) {
      return EVERYWHERE;
    }
    if (low) {
      return "below " + hertz(stretch.toHz(), 2);
    }
    if (high) {
      return "above " + hertz(stretch.fromHz(), 2);
    }
    return between(stretch.fromHz(), stretch.toHz());
  }

  /** Two ends whose unit is said once when both have it. */
  private static String between(double fromHz, double toHz) {
    String from = hertz(fromHz, 2);
    String to = hertz(toHz, 2);
    if (from.equals(to)) {
      from = Numbers.hertz(fromHz);
      to = Numbers.hertz(toHz);
    }
    String unit = to.substring(to.indexOf(' '));
    boolean alike = from.endsWith(unit) && from.indexOf(' ') == from.lastIndexOf(unit);
    return "from " + (alike ? from.substring(0, from.indexOf(' ')) : from) + " to " + to;
  }

  static String hertz(double hz, int digits) {
    BigDecimal rounded = new BigDecimal(hz, new MathContext(digits, RoundingMode.HALF_EVEN));
    return Numbers.hertz(rounded.doubleValue());
  }

  /** The regions that hold at least a tenth of the stretch; nothing when that is all of them. */
  private static String regions(Stretch stretch) {
    double all = stretch.octavesInside(stretch.fromHz(), stretch.toHz());
    List<String> some =
        Arrays.stream(EverydayRegion.values())
            .filter(r -> r.octavesOf(stretch) >= LEAST_SHARE * all)
            .map(EverydayRegion::word)
            .toList();
    return some.size() == EverydayRegion.values().length ? "" : " (" + joined(some) + ")";
  }

  /** Words in a list: {@code a}, {@code a and b}, {@code a, b and c}. */
  static String joined(List<String> words) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
  }
}
