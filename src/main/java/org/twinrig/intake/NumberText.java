package org.twinrig.intake;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Set;

/**
 * What number is written here. Reads a range of characters without making a string of it: a study
 * has more than a million numbers.
 */
final class NumberText {
  private static final char TYPESET_MINUS = '\u2212';

  /** Below this, one more digit still fits a long. */
  private static final long ROOM_FOR_A_DIGIT = (Long.MAX_VALUE - 9) / 10;

  /** Every whole number up to 2^53 is a double. */
  private static final long EXACT = 1L << 53;

  /** The powers of ten that are doubles exactly; Clinger, PLDI 1990: with them one step rounds. */
  private static final double[] TENS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22
  };

  /** Any double in all its digits is shorter; a megabyte of digits would take minutes. */
  private static final int LONGEST = 1100;

  /** No level or frequency needs an exponent of more digits. */
  private static final int MOST_EXPONENT = 9999;

  /** What programs and people write where they have no number; lower case. */
  private static final Set<String> MISSING =
      words(
          """
          nan -nan nan(ind) -nan(ind) 1.#qnan -1.#ind na n/a #n/a #nv #num! #zahl! #div/0!
          #value! #wert! null none - -- --- inf +inf infinity +infinity ∞ +∞ 1.#inf
          """);

  /** Minus infinity, the level of a pressure of exactly zero. */
  private static final Set<String> SILENCE = words("-inf -infinity -∞ \u2212∞ -1.#inf \u2212inf");

  private final char mark;
  private final int powerOfTen;

  /** Numbers with this decimal mark, multiplied by a power of ten before they are rounded. */
  NumberText(char mark, int powerOfTen) {
    this.mark = mark;
    this.powerOfTen = powerOfTen;
  }

  boolean isNumber(char[] chars, int from, int to) {
    return !Double.isNaN(parse(chars, from, to));
  }

  /**
   * The number as the nearest double; NaN when the characters are no number, which never leaves
   * this package.
   */
  double parse(char[] chars, int from, int to) {
    if (to - from > LONGEST) {
      return Double.NaN;
    }
    int i = from < to && isSign(chars[from]) ? from + 1 : from;
    long digits = 0;
    int exponent = powerOfTen;
    boolean seen = false;
    boolean fraction = false;
    boolean fits = true;
    for (; i < to; i++) {
      int digit = chars[i] - '0';
      if (digit >= 0 && digit <= 9) {
        seen = true;
        fits &= digits < ROOM_FOR_A_DIGIT;
        digits = fits ? 10 * digits + digit : digits;
        exponent -= fraction ? 1 : 0;
      } else if (chars[i] == mark && !fraction) {
        fraction = true;
      } else {
        break;
      }
    }
    int written = seen ? exponentAt(chars, i, to) : -1 - MOST_EXPONENT;
    if (written < -MOST_EXPONENT) {
      return Double.NaN;
    }
    exponent += written;
    double size =
        fits && digits <= EXACT && Math.abs(exponent) < TENS.length
            ? (exponent < 0 ? digits / TENS[-exponent] : digits * TENS[exponent])
            : slowly(chars, from, to);
    return chars[from] == '-' || chars[from] == TYPESET_MINUS ? -size : size;
  }

  /** The exponent that fills the rest; 0 when nothing is left, below the least when it is none. */
  private static int exponentAt(char[] chars, int at, int to) {
    if (at == to) {
      return 0;
    }
    int i = at + 1;
    boolean negative = i < to && isSign(chars[i]) && chars[i] != '+';
    i += i < to && isSign(chars[i]) ? 1 : 0;
    boolean number = (chars[at] == 'e' || chars[at] == 'E') && i < to;
    int value = 0;
    for (; i < to && number; i++) {
      int digit = chars[i] - '0';
      value = 10 * value + digit;
      number = digit >= 0 && digit <= 9 && value <= MOST_EXPONENT;
    }
    if (!number) {
      return -1 - MOST_EXPONENT;
    }
    return negative ? -value : value;
  }

  /** The absolute value of a number that is too long for one rounding step. */
  private double slowly(char[] chars, int from, int to) {
    int first = isSign(chars[from]) ? from + 1 : from;
    String text =
        new String(chars, first, to - first).replace(mark, '.').replace(TYPESET_MINUS, '-');
    return new BigDecimal(text).scaleByPowerOfTen(powerOfTen).doubleValue();
  }

  private static boolean isSign(char c) {
    return c == '-' || c == '+' || c == TYPESET_MINUS;
  }

  /**
   * Whether this can be a number in some dialect: digits with at most one point and one comma, but
   * no comma at the end; perhaps a sign and an exponent.
   */
  static boolean isLoose(char[] chars, int from, int to) {
    int i = from < to && isSign(chars[from]) ? from + 1 : from;
    boolean digit = false;
    int points = 0;
    int commas = 0;
    for (; i < to && (isDigit(chars[i]) || chars[i] == '.' || chars[i] == ','); i++) {
      digit |= isDigit(chars[i]);
      points += chars[i] == '.' ? 1 : 0;
      commas += chars[i] == ',' ? 1 : 0;
    }
    return digit
        && points <= 1
        && commas <= 1
        && to - from <= LONGEST
        && chars[i - 1] != ','
        && exponentAt(chars, i, to) >= -MOST_EXPONENT;
  }

  /** A number in all its digits, without an exponent and without zeros at the end. */
  static String plain(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }

  /** The words of a text, in any order. */
  static Set<String> words(String text) {
    return Set.of(text.strip().split("\\s+"));
  }

  /** Whether a field says that there is no number, or none that is finite. */
  static boolean isMissing(String field) {
    return field.isEmpty() || MISSING.contains(field.toLowerCase(Locale.ROOT)) || isSilence(field);
  }

  /** Whether a field says minus infinity. */
  static boolean isSilence(String field) {
    return SILENCE.contains(field.toLowerCase(Locale.ROOT));
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
