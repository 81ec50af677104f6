package org.twinrig.internal;

/** What a spreadsheet would make of a text. */
public final class Spreadsheet {
  private static final String FORMULA_STARTS = "=+-@\t\r";

  private Spreadsheet() {}

  /** Whether a cell with this text would run as a formula: whether it begins as formulas do. */
  public static boolean runsAsFormula(String text) {
    return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
  }
}
