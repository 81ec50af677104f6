package org.twinrig.proof;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.internal.Numbers;

/**
 * A table, each of its columns described once. Immutable.
 *
 * @param columns from left to right
 */
record Table<R>(List<Column<R>> columns) {
  /** Decibels and shares. */
  private static final int DECIMALS = 6;

  private static final int HZ_DECIMALS = 4;

  /** A name, and how the cell of a row is written. */
  record Column<R>(String name, Function<R, String> cell) {}

  Table() {
    this(List.of());
  }

  Table<R> text(String name, Function<R, String> value) {
    return new Table<>(
        Stream.concat(columns.stream(), Stream.of(new Column<>(name, value))).toList());
  }

  Table<R> count(String name, ToLongFunction<R> value) {
    return text(name, r -> Long.toString(value.applyAsLong(r)));
  }

  Table<R> number(String name, ToDoubleFunction<R> value) {
    return text(name, r -> Numbers.fixed(value.applyAsDouble(r), DECIMALS));
  }

  /** Empty where there is nothing. */
  Table<R> maybe(String name, Function<R, Optional<Double>> value) {
    return text(name, r -> value.apply(r).map(v -> Numbers.fixed(v, DECIMALS)).orElse(""));
  }

  Table<R> hz(String name, Function<R, Optional<Double>> value) {
    return text(name, r -> value.apply(r).map(v -> Numbers.fixed(v, HZ_DECIMALS)).orElse(""));
  }

  /** Two columns: a figure and its Monte Carlo standard error. */
  Table<R> figure(String name, String unit, Function<R, Clustered> value) {
    return number(name + unit, r -> value.apply(r).value())
        .number(name + "_mc_se" + unit, r -> value.apply(r).se());
  }

  /** Three columns: a share of independent studies and its interval. */
  Table<R> share(String name, Function<R, Optional<ClopperPearson>> value) {
    return maybe(name, r -> value.apply(r).map(ClopperPearson::share))
        .maybe(name + "_low", r -> value.apply(r).map(ClopperPearson::low))
        .maybe(name + "_high", r -> value.apply(r).map(ClopperPearson::high));
  }

  List<String> cells(R row) {
    return columns.stream().map(c -> c.cell().apply(row)).toList();
  }

  /** Comma-separated, a header line first. */
  String csv(List<R> rows) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      writer.writeRecord(columns.stream().map(Column::name).toList());
      rows.forEach(r -> writer.writeRecord(cells(r)));
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a StringWriter has no disk to fail
    }
    return text.toString();
  }
}
