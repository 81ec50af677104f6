package org.twinrig.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.twinrig.band.Band;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Spreadsheet;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.LongColumn;
import tech.tablesaw.api.StringColumn;

/**
 * The columns of a result, each described once: its name with the unit in it, what a reader must
 * know beyond the name, how its values are written, and how a row gives the value. A value that is
 * missing ({@link Optional#empty}) makes an empty cell; one that is not finite is refused.
 *
 * @param <R> a row
 */
public final class Columns<R> {
  private static final int HZ_DECIMALS = 4;
  private static final int NUMBER_DECIMALS = 6;

  private final List<Column<R>> all;

  private Columns(List<Column<R>> all) {
    this.all = List.copyOf(all);
  }

  /** No columns yet. */
  static <R> Columns<R> start() {
    return new Columns<>(List.of());
  }

  /** How values are written. */
  enum Format {
    /** Of the lab: what a spreadsheet would run as a formula gets an apostrophe in front. */
    TEXT,
    /** A word of ours; {@code yes} and {@code no} for what is true or false. */
    WORD,
    COUNT,
    HZ,
    /** Decibels, octaves, shares. */
    NUMBER;

    private String cell(Object value) {
      return switch (this) {
        case TEXT -> Spreadsheet.runsAsFormula((String) value) ? "'" + value : (String) value;
        case WORD -> value instanceof Boolean b ? (b ? "yes" : "no") : (String) value;
        case COUNT -> Long.toString(((Number) value).longValue());
        case HZ -> Numbers.fixed((Double) value, HZ_DECIMALS);
        case NUMBER -> Numbers.fixed(((Number) value).doubleValue(), NUMBER_DECIMALS);
      };
    }
  }

  private record Column<R>(
      String name, String help, Format format, Function<R, Optional<Object>> value) {}

  private Columns<R> with(Column<R> column) {
    List<Column<R>> more = new ArrayList<>(all);
    more.add(column);
    return new Columns<>(more);
  }

  private Columns<R> with(String name, String help, Format format, Function<R, ?> value) {
    return with(new Column<>(name, help, format, row -> present(value.apply(row))));
  }

  Columns<R> text(String name, Function<R, ?> value) {
    return text(name, "", value);
  }

  Columns<R> text(String name, String help, Function<R, ?> value) {
    return with(name, help, Format.TEXT, value);
  }

  Columns<R> word(String name, Function<R, ?> value) {
    return word(name, "", value);
  }

  Columns<R> word(String name, String help, Function<R, ?> value) {
    return with(name, help, Format.WORD, value);
  }

  Columns<R> count(String name, Function<R, ?> value) {
    return count(name, "", value);
  }

  Columns<R> count(String name, String help, Function<R, ?> value) {
    return with(name, help, Format.COUNT, value);
  }

  Columns<R> hz(String name, Function<R, ?> value) {
    return hz(name, "", value);
  }

  Columns<R> hz(String name, String help, Function<R, ?> value) {
    return with(name, help, Format.HZ, value);
  }

  Columns<R> number(String name, Function<R, ?> value) {
    return number(name, "", value);
  }

  Columns<R> number(String name, String help, Function<R, ?> value) {
    return with(name, help, Format.NUMBER, value);
  }

  /** Columns of a part that a row may lack; all of them are empty then. */
  <P> Columns<R> part(Function<R, Optional<P>> part, UnaryOperator<Columns<P>> columns) {
    Columns<R> more = this;
    for (Column<P> c : columns.apply(start()).all) {
      more = more.with(new Column<>(c.name, c.help, c.format, r -> part.apply(r).flatMap(c.value)));
    }
    return more;
  }

  /** Columns of what every row has. */
  <P> Columns<R> all(Function<R, P> part, Columns<P> columns) {
    return part(row -> Optional.of(part.apply(row)), start -> columns);
  }

  /** A region's word and its ends. */
  Columns<R> region(Function<R, Region> region) {
    return word("region", r -> region.apply(r).word())
        .hz("from_hz", r -> region.apply(r).fromHz())
        .hz("to_hz", r -> region.apply(r).toHz());
  }

  /** The middle of a band and its borders. */
  Columns<R> band(Function<R, Band> band) {
    return hz("band_hz", r -> band.apply(r).midHz())
        .hz("lower_hz", r -> band.apply(r).lowerHz())
        .hz("upper_hz", r -> band.apply(r).upperHz());
  }

  /**
   * Both ends of an interval about a value.
   *
   * @param name of either column, with {@code %s} for {@code low} and {@code high}
   * @param help stands with the upper end and is about both
   */
  Columns<R> interval(
      String name, String help, ToDoubleFunction<R> middle, ToDoubleFunction<R> half) {
    return number(name.formatted("low"), r -> middle.applyAsDouble(r) - half.applyAsDouble(r))
        .number(name.formatted("high"), help, r -> middle.applyAsDouble(r) + half.applyAsDouble(r));
  }

  private static Optional<Object> present(Object value) {
    if (value instanceof Optional<?> o) {
      return o.map(Object.class::cast);
    }
    if (value instanceof OptionalDouble d) {
      return d.isPresent() ? Optional.of(d.getAsDouble()) : Optional.empty();
    }
    if (value instanceof OptionalInt i) {
      return i.isPresent() ? Optional.of(i.getAsInt()) : Optional.empty();
    }
    return Optional.of(value);
  }

  /** The names, in order. */
  List<String> names() {
    return all.stream().map(Column::name).toList();
  }

  /** The cells of a row as files hold them. */
  List<String> cells(R row) {
    List<String> cells = new ArrayList<>(all.size());
    for (Column<R> column : all) {
      cells.add(column.value.apply(row).map(column.format::cell).orElse(""));
    }
    return cells;
  }

  /** The names in code type, each with what a reader must know, as the manual has them. */
  String help() {
    StringBuilder text = new StringBuilder();
    for (Column<R> column : all) {
      text.append(text.isEmpty() ? "`" : ", `").append(column.name).append('`');
      text.append(column.help.isEmpty() ? "" : " (" + column.help + ")");
    }
    return text.toString();
  }

  /** The rows as columns for reckoning with; a missing number is tablesaw's missing value. */
  List<tech.tablesaw.columns.Column<?>> reckoned(List<R> rows) {
    List<tech.tablesaw.columns.Column<?>> columns = new ArrayList<>();
    for (Column<R> column : all) {
      columns.add(
          switch (column.format) {
            case TEXT, WORD -> words(column, rows);
            case COUNT -> counts(column, rows);
            case HZ, NUMBER -> numbers(column, rows);
          });
    }
    return columns;
  }

  private StringColumn words(Column<R> column, List<R> rows) {
    StringColumn words = StringColumn.create(column.name);
    for (R row : rows) {
      // As the lab wrote it: the apostrophe is for spreadsheets.
      words.append(
          column
              .value
              .apply(row)
              .map(v -> v instanceof String s ? s : Format.WORD.cell(v))
              .orElse(""));
    }
    return words;
  }

  private LongColumn counts(Column<R> column, List<R> rows) {
    LongColumn counts = LongColumn.create(column.name);
    for (R row : rows) {
      column
          .value
          .apply(row)
          .ifPresentOrElse(v -> counts.append(((Number) v).longValue()), counts::appendMissing);
    }
    return counts;
  }

  private DoubleColumn numbers(Column<R> column, List<R> rows) {
    DoubleColumn numbers = DoubleColumn.create(column.name);
    for (R row : rows) {
      column
          .value
          .apply(row)
          .ifPresentOrElse(v -> numbers.append(((Number) v).doubleValue()), numbers::appendMissing);
    }
    return numbers;
  }
}
