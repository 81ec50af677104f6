package org.twinrig.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.twinrig.problem.Problem;

/**
 * One row of a {@link LabTable} while it is read. Every getter notes what is wrong with its cell,
 * so that the lab learns of all faults of a row at once; {@link #ifSound} then makes the row's
 * value only when there was none. What a getter gives for a faulty cell is never used. A column
 * that was never declared is an {@link IllegalArgumentException}.
 */
public final class LabRow {
  private static final Set<String> NO = Set.of("no", "n", "false", "0", "-", "none");

  private final String source;
  private final int line;
  private final UnaryOperator<String> cells;
  private final List<String> columns;
  private final boolean decimalCommas;
  private final List<Problem> problems = new ArrayList<>();

  LabRow(
      String source,
      int line,
      UnaryOperator<String> cells,
      List<String> columns,
      boolean decimalCommas) {
    this.decimalCommas = decimalCommas;
    this.columns = columns;
    this.source = source;
    this.line = line;
    this.cells = cells;
  }

  /** Where the row begins in the file: the line, from 1. */
  public int line() {
    return line;
  }

  /** A cell as written; empty when the cell is or the table lacks the column. */
  public String cell(String column) {
    return cells.apply(column);
  }

  /** Whether a column is the lab's own: it begins with {@code x_}, and means nothing to us. */
  static boolean isOwn(String column) {
    return column.startsWith("x_");
  }

  /** The cells of the lab's own columns that hold any text, in the order of the table. */
  public Map<String, String> own() {
    Map<String, String> own = new LinkedHashMap<>();
    columns.stream().filter(c -> isOwn(c) && has(c)).forEach(c -> own.put(c, cell(c)));
    return own;
  }

  /** Whether a cell holds any text: not when it is blank or the table lacks the column. */
  public boolean has(String column) {
    return !cell(column).isBlank();
  }

  /** A text that must be there, as written. */
  public String text(String column) {
    if (!has(column)) {
      refuse("`" + column + "` is empty", "every row needs it");
    }
    return cell(column);
  }

  /** One of a few words; {@code whenEmpty} for an empty cell, unless empty itself. */
  public String word(String column, List<String> words, String whenEmpty) {
    String word = cell(column).strip();
    if (word.isEmpty() && !whenEmpty.isEmpty()) {
      return whenEmpty;
    }
    if (!words.contains(word)) {
      String guess = NearestName.question(word, words);
      int last = words.size() - 1;
      String most = last == 0 ? "" : "`" + String.join("`, `", words.subList(0, last)) + "`";
      refuse(shown(column), guess + "write " + most + " or `" + words.get(last) + "`");
    }
    return word;
  }

  /**
   * A reason in words; empty for none. A word that says no is a reason all the same, which is told.
   *
   * @param then what any reason does, and how to undo it
   */
  public String reason(String column, String then) {
    String written = cell(column).strip();
    if (NO.contains(written.toLowerCase(Locale.ROOT))) {
      note("`" + column + "` is `" + written + "`, and whatever stands there " + then);
    }
    return written;
  }

  /** A reason given to doubts about what the row is of. */
  public String confirmed() {
    return reason(
        "confirmed", "answers the doubts about this row; empty the cell to leave them open");
  }

  /** A whole number that must be there, from the smallest to the largest that makes sense. */
  public int count(String column, int least, int most) {
    OptionalLong number = PlainNumber.whole(cell(column));
    if (number.isEmpty() || number.getAsLong() < least || number.getAsLong() > most) {
      refuse(shown(column), "write a whole number from " + least + " to " + most);
      return least;
    }
    return (int) number.getAsLong();
  }

  /** A decimal number that must be there; finite. */
  public double decimal(String column) {
    return text(column).isBlank() ? 0 : parsed(column).orElse(0);
  }

  /** A decimal number that may be left out, from the smallest to the largest that makes sense. */
  public OptionalDouble decimalIfAny(String column, double least, double most) {
    if (!has(column)) {
      return OptionalDouble.empty();
    }
    OptionalDouble number = parsed(column);
    if (number.isPresent() && (number.getAsDouble() < least || number.getAsDouble() > most)) {
      refuse(
          shown(column),
          String.format(Locale.ROOT, "write a number from %.0f to %.0f", least, most));
    }
    return number;
  }

  /** Leaves the row out: what is wrong, and what would be right. */
  public void refuse(String what, String remedy) {
    problems.add(Problem.refused(source, line, what, remedy));
  }

  /** Tells how the row was taken. */
  public void note(String what) {
    problems.add(Problem.note(source, line, what));
  }

  /** Makes the row's value when no getter and no check refused the row. */
  public <T> Optional<T> ifSound(Supplier<T> value) {
    boolean sound = problems.stream().allMatch(p -> p.kind() == Problem.Kind.NOTE);
    return sound ? Optional.of(value.get()) : Optional.empty();
  }

  List<Problem> problems() {
    return List.copyOf(problems);
  }

  private OptionalDouble parsed(String column) {
    OptionalDouble number = PlainNumber.decimal(cell(column), decimalCommas);
    if (number.isEmpty()) {
      refuse(
          shown(column),
          PlainNumber.commaRemedy(cell(column))
              .orElse("write a number such as 94.0, without a unit"));
    }
    return number;
  }

  private String shown(String column) {
    return has(column) ? "`" + column + "` is `" + cell(column) + "`" : "`" + column + "` is empty";
  }
}
