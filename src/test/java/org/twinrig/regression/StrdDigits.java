package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;

/**
 * Digits of a certified value that were reached: its log relative error {@code -lg(|q - c|/|c|)},
 * 15 at most because certified values have 15.
 */
final class StrdDigits {
  private StrdDigits() {}

  /** Prints the digits of every value, and fails where one has fewer than wanted. */
  static void reach(double digits, String set, double[] certified, double... found) {
    assertEquals(certified.length, found.length);
    double[] each = new double[found.length];
    Arrays.setAll(each, k -> digits(found[k], certified[k]));
    String reached =
        Arrays.stream(each)
            .mapToObj(d -> String.format(Locale.ROOT, "%.1f", d))
            .reduce(set + ": digits", (a, b) -> a + " " + b);
    System.out.println(reached);
    double least = Arrays.stream(each).min().orElseThrow();
    assertTrue(least >= digits, () -> reached + ", but at least " + digits + " are wanted");
  }

  private static double digits(double found, double certified) {
    double error = Math.abs(found - certified) / Math.abs(certified);
    return error == 0 ? 15 : Math.min(15, -Math.log10(error));
  }
}
