package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;

/**
 * A table of a page, declared once where its template shows it: its caption, its rows, and its
 * columns from left to right, each with heading and cell together. The first cell of a row is the
 * row's heading.
 */
public record Sheet<R>(String caption, List<Row<R>> rows, List<Column<R>> columns) {
  /** What a cell that holds no number is sorted by: before all numbers, which are not negative. */
  private static final double BEFORE_ALL = -1;

  public Sheet {
    rows = List.copyOf(rows);
    columns = List.copyOf(columns);
  }

  /**
   * A column: its heading, with the unit where it holds numbers; the class of page.css that sets
   * its cells; and what it shows of a row.
   */
  public record Column<R>(String head, String style, Function<Row<R>, Cell> cell) {}

  /**
   * A cell: its text, what rows are sorted by (null where it is the text) and the mark before it.
   */
  public record Cell(String text, String order, Optional<Swatch> swatch) {
    public static Cell text(String text) {
      return new Cell(text, null, Optional.empty());
    }

    public static Cell ordered(String text, double order) {
      return new Cell(text, String.format(Locale.ROOT, "%.4f", order), Optional.empty());
    }

    /** A number to 0.01; its unit stands in the column's heading. */
    public static Cell hundredths(double value) {
      return ordered(Numbers.fixed(value, 2), value);
    }

    public static Cell without(String words) {
      return ordered(words, BEFORE_ALL);
    }
  }

  /** What a row shows, and of which kind where tables of several kinds begin with it. */
  public record Row<R>(String kind, R of) {}

  public static <R> Sheet<R> of(String caption, List<R> rows) {
    return new Sheet<>(caption, rows.stream().map(row -> new Row<>("", row)).toList(), List.of());
  }

  public static <R> Sheet<R> first(int most, String caption, List<R> rows) {
    return of(caption, rows.stream().limit(most).toList());
  }

  /** Rows under a first column with the name of their kind. */
  public static <R> Sheet<R> ofKinds(String caption, List<Row<R>> rows) {
    return new Sheet<>(
        caption, rows, List.of(new Column<>("Kind", "s", row -> Cell.text(row.kind()))));
  }

  public static <R> Sheet<R> ofKinds(
      String caption, List<KindOutcome> kinds, Function<KindOutcome, List<R>> rows) {
    return ofKinds(
        caption,
        kinds.stream()
            .flatMap(k -> rows.apply(k).stream().map(row -> new Row<>(k.kind(), row)))
            .toList());
  }

  /** Sentences, over several lines. */
  public Sheet<R> words(String head, Function<R, String> text) {
    return with(head, "t", row -> Cell.text(text.apply(row)));
  }

  /** Names, on one line. */
  public Sheet<R> names(String head, Function<R, String> text) {
    return with(head, "s", row -> Cell.text(text.apply(row)));
  }

  public Sheet<R> names(String head, Function<R, String> text, ToDoubleFunction<R> order) {
    return with(head, "s", row -> Cell.ordered(text.apply(row), order.applyAsDouble(row)));
  }

  public Sheet<R> regions(Function<R, Region> region) {
    return names("Region", row -> region.apply(row).word(), row -> region.apply(row).fromHz());
  }

  public Sheet<R> marks(String head, Function<R, Swatch> mark) {
    return with(
        head,
        "s",
        row -> {
          Swatch swatch = mark.apply(row);
          return new Cell(swatch.word(), swatch.order(), Optional.of(swatch));
        });
  }

  /** File names, broken anywhere. */
  public Sheet<R> files(String head, Function<R, String> text) {
    return with(head, "f", row -> Cell.text(text.apply(row)));
  }

  public Sheet<R> counts(String head, ToIntFunction<R> count) {
    return numbers(
        head, row -> Cell.ordered(Integer.toString(count.applyAsInt(row)), count.applyAsInt(row)));
  }

  public Sheet<R> hundredths(String head, ToDoubleFunction<R> value) {
    return numbers(head, row -> Cell.hundredths(value.applyAsDouble(row)));
  }

  /** Numbers to 0.01, and words for those that are not there. */
  public Sheet<R> hundredths(String head, Function<R, OptionalDouble> value, String otherwise) {
    return numbers(head, row -> known(value.apply(row), Cell::hundredths, otherwise));
  }

  /** Shares, 0 to 1, in whole hundredths, and words for those that are not there. */
  public Sheet<R> percents(String head, Function<R, OptionalDouble> share, String otherwise) {
    return numbers(
        head, row -> known(share.apply(row), s -> Cell.ordered(Texts.percent(s), s), otherwise));
  }

  private static Cell known(OptionalDouble value, DoubleFunction<Cell> cell, String otherwise) {
    return value.isPresent() ? cell.apply(value.getAsDouble()) : Cell.without(otherwise);
  }

  public Sheet<R> percents(String head, ToDoubleFunction<R> share) {
    return percents(head, row -> OptionalDouble.of(share.applyAsDouble(row)), "");
  }

  public Sheet<R> tenths(String head, ToDoubleFunction<R> value) {
    return numbers(
        head,
        row -> Cell.ordered(Numbers.fixed(value.applyAsDouble(row), 1), value.applyAsDouble(row)));
  }

  /** Numbers, flush right. */
  public Sheet<R> numbers(String head, Function<R, Cell> cell) {
    return with(head, "n", cell);
  }

  /** Numbers with a range, flush right, over two lines. */
  public Sheet<R> ranges(String head, Function<R, Cell> cell) {
    return with(head, "r", cell);
  }

  private Sheet<R> with(String head, String style, Function<R, Cell> cell) {
    List<Column<R>> more = new ArrayList<>(columns);
    more.add(new Column<>(head, style, row -> cell.apply(row.of())));
    return new Sheet<>(caption, rows, more);
  }

  /** Row by row, as wide as there are columns. */
  public List<List<Cell>> cells() {
    return rows.stream()
        .map(row -> columns.stream().map(column -> column.cell.apply(row)).toList())
        .toList();
  }
}
