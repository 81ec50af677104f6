package org.twinrig.study;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A day that is not written after ISO 8601, where only one day can be meant by it. */
final class WrittenDay {
  private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})([-./])(\\d\\d?)\\2(\\d\\d?)");
  private static final Pattern YEAR_LAST = Pattern.compile("(\\d\\d?)([-./])(\\d\\d?)\\2(\\d{4})");
  private static final int MONTHS = 12;

  private WrittenDay() {}

  /**
   * The day a text means. With dots the day stands before the month; with slashes or hyphens either
   * may, so that only a number above 12 tells which is the day. A year of two digits tells nothing.
   *
   * @param text as the lab wrote it
   * @return the day, or nothing where several could be meant or there is no such day
   */
  static Optional<LocalDate> meant(String text) {
    Matcher first = YEAR_FIRST.matcher(text.strip());
    if (first.matches()) {
      return day(number(first, 1), number(first, 3), number(first, 4));
    }
    Matcher last = YEAR_LAST.matcher(text.strip());
    if (!last.matches()) {
      return Optional.empty();
    }
    int year = number(last, 4);
    int one = number(last, 1);
    int two = number(last, 3);
    if (last.group(2).equals(".") || one > MONTHS) {
      return day(year, two, one);
    }
    return two > MONTHS ? day(year, one, two) : Optional.empty();
  }

  private static int number(Matcher text, int group) {
    return Integer.parseInt(text.group(group));
  }

  private static Optional<LocalDate> day(int year, int month, int day) {
    try {
      return Optional.of(LocalDate.of(year, month, day));
    } catch (DateTimeException e) {
      // Not a fault: no such day can be offered, and the caller says how days are written.
      return Optional.empty();
    }
  }
}
