package org.twinrig.report.table;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import tech.tablesaw.api.Table;

/**
 * A table of results, described once: the file it is written to, its columns, and where its rows
 * come from. The file, the table that a page shows and the one that scripts reckon with are all
 * made from this. The manual explains files and columns by their names.
 *
 * @param <S> what the rows come from, such as a study's outcome
 */
public final class Result<S> {
  private final String file;
  private final Body<S, ?> body;

  private Result(String file, Body<S, ?> body) {
    this.file = file;
    this.body = body;
  }

  /** Columns and rows belong together: only here is it known what a row is. */
  private record Body<S, R>(Columns<R> columns, Function<S, Stream<R>> rows) {
    Stream<List<String>> cells(S source) {
      return rows.apply(source).map(columns::cells);
    }

    Stream<List<String>> shown(S source) {
      return rows.apply(source).map(columns::shown);
    }

    Table table(String name, S source) {
      return Table.create(name, columns.reckoned(rows.apply(source).toList()));
    }
  }

  /** Describes a result by its name in a result folder, its columns and its rows. */
  static <S, R> Result<S> of(String file, Columns<R> columns, Function<S, Stream<R>> rows) {
    return new Result<>(file, new Body<>(columns, rows));
  }

  /** A table about the kinds of a study, which its first column names; rows come kind by kind. */
  static <T> Result<StudyOutcome> inKinds(
      String file, Columns<T> columns, Function<KindOutcome, Stream<T>> rows) {
    record InKind<T>(String kind, T it) {}
    return of(
        file,
        Columns.<InKind<T>>start().text("kind", InKind::kind).all(InKind::it, columns),
        study ->
            study.kinds().stream()
                .flatMap(k -> rows.apply(k).map(it -> new InKind<>(k.kind(), it))));
  }

  /** Its name in a result folder. */
  public String file() {
    return file;
  }

  public List<String> names() {
    return body.columns.names();
  }

  /** Whether a column holds words and not numbers. */
  public boolean isText(int column) {
    return body.columns.isText(column);
  }

  /** Its rows, cell by cell as the file holds them. */
  public Stream<List<String>> rows(S source) {
    return body.cells(source);
  }

  /** Its rows as a page shows them: frequencies to three digits, other numbers to 0.01. */
  public List<List<String>> shown(S source) {
    return body.shown(source).toList();
  }

  /** The rows to reckon with, in typed columns with the names of the file. */
  public Table table(S source) {
    return body.table(file, source);
  }

  /** Comma-separated, UTF-8, one header line, lines ended by a line feed. */
  public String csv(S source) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      writer.writeRecord(names());
      rows(source).forEach(writer::writeRecord);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // a StringWriter has no disk to fail
    }
    return text.toString();
  }

  public void write(Path folder, S source) throws IOException {
    Files.writeString(folder.resolve(file), csv(source));
  }
}
