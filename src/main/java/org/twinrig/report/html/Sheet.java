package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.internal.Numbers;

/**
 * A table as a page shows it: every cell is finished text.
 *
 * @param caption what the table holds
 * @param columns its columns
 * @param rows its rows; the first cell of each is its heading
 */
public record Sheet(String caption, List<Column> columns, List<List<Cell>> rows) {

  /** Copies the lists. */
  public Sheet {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<Cell> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException("a row of the table `" + caption + "` is not as wide");
      }
    }
  }

  /**
   * A column.
   *
   * @param head its heading, with the unit where it holds numbers
   * @param set how its cells are set
   */
  public record Column(String head, Setting set) {
    /**
     * How its cells are set.
     *
     * @return the class of the style sheet
     */
    public String style() {
      return set.style;
    }
  }

  /** How the cells of a column are set. */
  public enum Setting {
    /** Sentences, over several lines. */
    SENTENCES("t"),
    /** Names, on one line. */
    NAMES("s"),
    /** File names, broken anywhere. */
    FILES("f"),
    /** Numbers, flush right. */
    NUMBERS("n"),
    /** Numbers with a range, flush right, over two lines. */
    RANGES("r");

    private final String style;

    Setting(String style) {
      this.style = style;
    }
  }

  /**
   * A cell.
   *
   * @param text what it says
   * @param order the number rows are sorted by; empty when they are sorted by the text
   * @param swatch the mark shown before the text
   */
  public record Cell(String text, String order, Optional<Swatch> swatch) {}

  static Column words(String head) {
    return new Column(head, Setting.SENTENCES);
  }

  static Column names(String head) {
    return new Column(head, Setting.NAMES);
  }

  static Column files(String head) {
    return new Column(head, Setting.FILES);
  }

  static Column numbers(String head) {
    return new Column(head, Setting.NUMBERS);
  }

  static Column ranges(String head) {
    return new Column(head, Setting.RANGES);
  }

  static Cell text(String text) {
    return new Cell(text, "", Optional.empty());
  }

  static Cell count(long count) {
    return ordered(Long.toString(count), (double) count);
  }

  static Cell hertz(double hz) {
    return ordered(Numbers.hertz(hz), hz);
  }

  /** A number to 0.01; its unit stands in the column's heading. */
  static Cell hundredths(double value) {
    return ordered(Numbers.fixed(value, 2), value);
  }

  static Cell marked(Swatch swatch) {
    return new Cell(swatch.word(), swatch.order(), Optional.of(swatch));
  }

  static Cell ordered(String text, double order) {
    return new Cell(text, String.format(Locale.ROOT, "%.4f", order), Optional.empty());
  }
}
