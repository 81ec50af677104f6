package org.twinrig.intake;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** What number is written here. */
final class NumberText {
  private static final char TYPESET_MINUS = '\u2212';

  /** Any double in all its digits is shorter; a megabyte of digits would take minutes. */
  private static final int LONGEST = 1100;

  private static final String SIGN = "[-+\u2212]?";

  /** No level or frequency needs an exponent of more than four digits. */
  private static final String EXPONENT = "([eE]" + SIGN + "0*[0-9]{1,4})?";

  /** Digits with at most one point and one comma, but no comma at the end. */
  private static final Pattern LOOSE =
      Pattern.compile(
          SIGN + "(?=[.,]*[0-9])[0-9]*([.][0-9]*(,[0-9]+)?|,([0-9]*[.][0-9]*|[0-9]+))?" + EXPONENT);

  /** What programs and people write where they have no number; lower case. */
  private static final Set<String> MISSING =
      words(
          """
          nan -nan nan(ind) -nan(ind) 1.#qnan -1.#ind na n/a #n/a #nv #num! #zahl! #div/0!
          #value! #wert! null none - -- --- inf +inf infinity +infinity ∞ +∞ 1.#inf
          """);

  /** Minus infinity, the level of a pressure of exactly zero. */
  private static final Set<String> SILENCE = words("-inf -infinity -∞ \u2212∞ -1.#inf \u2212inf");

  /** Of a number with thousands marks and decimals: with both marks it can be read in one way. */
  private final Pattern grouped;

  private final char mark;
  private final int powerOfTen;
  private final Pattern form;

  /** Numbers with this decimal mark, multiplied by a power of ten before they are rounded. */
  NumberText(char mark, int powerOfTen) {
    this.mark = mark;
    this.powerOfTen = powerOfTen;
    this.grouped =
        Pattern.compile("%s[0-9]{1,3}([%s][0-9]{3})+[%s][0-9]+".formatted(SIGN, other(mark), mark));
    this.form =
        Pattern.compile("%s([0-9]+[%s]?[0-9]*|[%2$s][0-9]+)%s".formatted(SIGN, mark, EXPONENT));
  }

  private static char other(char mark) {
    return mark == '.' ? ',' : '.';
  }

  /** Whether a number is written with thousands marks. */
  boolean isGrouped(String field) {
    return field.length() <= LONGEST && grouped.matcher(field).matches();
  }

  /** The number as the nearest double; NaN for any other text, which never leaves this package. */
  double parse(String field) {
    String bare = isGrouped(field) ? field.replace(String.valueOf(other(mark)), "") : field;
    if (bare.length() > LONGEST || !form.matcher(bare).matches()) {
      return Double.NaN;
    }
    String plain = bare.replace(mark, '.').replace(TYPESET_MINUS, '-');
    return powerOfTen == 0
        ? Double.parseDouble(plain)
        : new BigDecimal(plain).scaleByPowerOfTen(powerOfTen).doubleValue();
  }

  /** Whether this can be a number in some dialect; perhaps with a sign and an exponent. */
  static boolean isLoose(String field) {
    return field.length() <= LONGEST && LOOSE.matcher(field).matches();
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
