package org.twinrig.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiFunction;
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
 * The columns of a result, each described once: its name with the unit in it, how its values are
 * written, and how a row gives the value. A value that is missing ({@link Optional#empty}) makes an
 * empty cell; one that is not finite is refused.
 *
 * @param <R> a row
 */
public final class Columns<R> {
  private static final int HZ_DECIMALS = 4;
  private static final int NUMBER_DECIMALS = 6;
  private static final int SHOWN_DECIMALS = 2;

  private final List<Column<R>> all;

  private Columns(List<Column<R>> all) {
    this.all = List.copyOf(all);
  }

  static <R> Columns<R> start() {
    return new Columns<>(List.of());
  }

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

    /** As scripts reckon with it. */
    private Object reckoned(Object value) {
      return switch (this) {
        case TEXT -> value; // as the lab wrote it: the apostrophe is for spreadsheets
        case WORD -> cell(value);
        case COUNT -> ((Number) value).longValue();
        case HZ, NUMBER -> ((Number) value).doubleValue();
      };
    }

    /** As a page shows it: for the eye, not to reckon with. */
    private String shown(Object value) {
      return switch (this) {
        case HZ -> Numbers.hertz((Double) value);
        case NUMBER -> Numbers.fixed(((Number) value).doubleValue(), SHOWN_DECIMALS);
        case TEXT, WORD, COUNT -> value instanceof String text ? text : cell(value);
      };
    }
  }

  private record Column<R>(String name, Format format, Function<R, Optional<Object>> value) {}

  private Columns<R> with(String name, Format format, Function<R, ?> value) {
    return with(new Column<>(name, format, row -> present(value.apply(row))));
  }

  private Columns<R> with(Column<R> column) {
    List<Column<R>> more = new ArrayList<>(all);
    more.add(column);
    return new Columns<>(more);
  }

  Columns<R> text(String name, Function<R, ?> value) {
    return with(name, Format.TEXT, value);
  }

  Columns<R> word(String name, Function<R, ?> value) {
    return with(name, Format.WORD, value);
  }

  Columns<R> count(String name, Function<R, ?> value) {
    return with(name, Format.COUNT, value);
  }

  Columns<R> hz(String name, Function<R, ?> value) {
    return with(name, Format.HZ, value);
  }

  Columns<R> number(String name, Function<R, ?> value) {
    return with(name, Format.NUMBER, value);
  }

  /** Columns of a part that a row may lack; all of them are empty then. */
  <P> Columns<R> part(Function<R, Optional<P>> part, UnaryOperator<Columns<P>> columns) {
    Columns<R> more = this;
    for (Column<P> c : columns.apply(start()).all) {
      more = more.with(new Column<>(c.name, c.format, r -> part.apply(r).flatMap(c.value)));
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

  /** Both ends of an interval about a value; {@code %s} in the name is low and high. */
  Columns<R> interval(String name, ToDoubleFunction<R> middle, ToDoubleFunction<R> half) {
    return number(name.formatted("low"), r -> middle.applyAsDouble(r) - half.applyAsDouble(r))
        .number(name.formatted("high"), r -> middle.applyAsDouble(r) + half.applyAsDouble(r));
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

  List<String> names() {
    return all.stream().map(Column::name).toList();
  }

  /** Whether a column holds words and not numbers. */
  boolean isText(int column) {
    return all.get(column).format == Format.TEXT || all.get(column).format == Format.WORD;
  }

  List<String> cells(R row) {
    return cells(row, Format::cell);
  }

  List<String> shown(R row) {
    return cells(row, Format::shown);
  }

  private List<String> cells(R row, BiFunction<Format, Object, String> writing) {
    List<String> cells = new ArrayList<>(all.size());
    for (Column<R> c : all) {
      cells.add(c.value.apply(row).map(v -> writing.apply(c.format, v)).orElse(""));
    }
    return cells;
  }

  /** The rows as columns for reckoning with; a missing number is tablesaw's missing value. */
  List<tech.tablesaw.columns.Column<?>> reckoned(List<R> rows) {
    List<tech.tablesaw.columns.Column<?>> columns = new ArrayList<>();
    for (Column<R> c : all) {
      tech.tablesaw.columns.Column<?> column =
          switch (c.format) {
            case TEXT, WORD -> StringColumn.create(c.name);
            case COUNT -> LongColumn.create(c.name);
            case HZ, NUMBER -> DoubleColumn.create(c.name);
          };
      for (R row : rows) {
        c.value
            .apply(row)
            .map(c.format::reckoned)
            .ifPresentOrElse(column::appendObj, column::appendMissing);
      }
      columns.add(column);
    }
    return columns;
  }
}
