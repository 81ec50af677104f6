package org.twinrig.intake;

import java.util.List;
import java.util.Objects;

/**
 * What a capture text was taken to be.
 *
 * @param encoding how bytes stand for characters
 * @param byteOrderMark whether the file starts with a byte-order mark
 * @param separator what stands between two fields
 * @param decimalMark point or comma
 * @param columns which column is what, and their titles
 * @param frequencyUnit the unit of the frequency column in the file
 * @param order the order of the points in the file
 * @param skipped the lines that hold no point, in order
 */
public record Layout(
    TextEncoding encoding,
    boolean byteOrderMark,
    LineEnds lineEnds,
    Separator separator,
    DecimalMark decimalMark,
    Columns columns,
    FrequencyUnit frequencyUnit,
    Order order,
    List<SkippedLines> skipped)
    implements CaptureLayout {

  /** What ends a line of text. */
  public enum LineEnds {
    /** Line feed. */
    LF("LF"),
    /** Carriage return and line feed. */
    CRLF("CR LF"),
    /** Carriage return. */
    CR("CR"),
    /** More than one of them in a file. */
    MIXED("LF, CR LF or CR, mixed");

    private final String words;

    LineEnds(String words) {
      this.words = words;
    }

    /** The line end in words: for example {@code CR LF}. */
    public String words() {
      return words;
    }
  }

  /** The unit of the frequency column. */
  public enum FrequencyUnit {
    /** Hertz. */
    HZ("Hz", 0),
    /** Kilohertz, as a title said. */
    KHZ("kHz", 3);

    private final String symbol;
    private final int powerOfTen;

    FrequencyUnit(String symbol, int powerOfTen) {
      this.symbol = symbol;
      this.powerOfTen = powerOfTen;
    }

    /** The unit's symbol: {@code Hz} or {@code kHz}. */
    public String symbol() {
      return symbol;
    }

    /** The unit is ten to this power, in Hz. */
    int powerOfTen() {
      return powerOfTen;
    }
  }

  /** The order of the points in the file; a response always rises. */
  public enum Order {
    /** Frequencies rise. */
    RISING,
    /** Frequencies fall; the points were reversed. */
    FALLING
  }

  /** Why a line holds no point. */
  public enum Why {
    /** Text above the numbers. */
    HEADER("header"),
    /** It starts with one of # * ; // % !. */
    COMMENT("comment"),
    /** Nothing but blanks. */
    BLANK("blank"),
    /** Text below the numbers. */
    FOOTER("text after the numbers");

    private final String words;

    Why(String words) {
      this.words = words;
    }

    /** The reason in words: for example {@code header}. */
    public String words() {
      return words;
    }
  }

  /**
   * Adjacent lines that hold no point for the same reason.
   *
   * @param why the reason
   * @param fromLine the first, from 1
   * @param toLine the last, included
   */
  public record SkippedLines(Why why, int fromLine, int toLine) {
    public SkippedLines {
      Objects.requireNonNull(why, "why");
      if (fromLine < 1 || toLine < fromLine) {
        throw new IllegalArgumentException("lines must satisfy 1 <= from <= to");
      }
    }
  }

  public Layout {
    Objects.requireNonNull(columns, "columns");
    skipped = List.copyOf(skipped);
  }
}
