package org.twinrig.intake;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/** Numbers as the lab's own tables write them: digits and a decimal point, in every locale. */
public final class PlainNumber {
  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?");
  private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,18}");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?\\d+,\\d+");

  private PlainNumber() {}

  /** A finite decimal number, spaces around it or not; nothing when the text is none. */
  public static OptionalDouble decimal(String text) {
    String bare = text.strip();
    if (!DECIMAL.matcher(bare).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(bare);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** The same; with a decimal comma too, where commas may be such. */
  static OptionalDouble decimal(String text, boolean decimalCommas) {
    boolean comma = decimalCommas && DECIMAL_COMMA.matcher(text.strip()).matches();
    return decimal(comma ? text.replace(',', '.') : text);
  }

  /** A whole number of at most 18 digits, likewise. */
  public static OptionalLong whole(String text) {
    String bare = text.strip();
    return WHOLE.matcher(bare).matches()
        ? OptionalLong.of(Long.parseLong(bare))
        : OptionalLong.empty();
  }

  /** What to write in place of a number with a decimal comma, one clause; nothing for others. */
  public static Optional<String> commaRemedy(String text) {
    String bare = text.strip();
    return DECIMAL_COMMA.matcher(bare).matches()
        ? Optional.of("write a point as the decimal mark: " + bare.replace(',', '.'))
        : Optional.empty();
  }
}
