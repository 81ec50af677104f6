package org.twinrig.simulation;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One way in which an instrument or a spreadsheet writes a capture.
 *
 * @param extension of its files
 * @param charset how letters become bytes
 * @param byteOrderMark whether the file begins with one
 * @param lineEnd between lines
 * @param separator between columns
 * @param columns what stands in each column, in order
 * @param head lines before the numbers
 */
record Dialect(
    String extension,
    Charset charset,
    boolean byteOrderMark,
    String lineEnd,
    String separator,
    char decimal,
    List<Column> columns,
    List<String> head) {

  /** What a column holds. */
  enum Column {
    HZ,
    DB,
    DEGREES
  }

  private static final List<Column> PLAIN_ORDER = List.of(Column.HZ, Column.DB);
  private static final List<Column> WITH_PHASE = List.of(Column.HZ, Column.DB, Column.DEGREES);
  private static final String LF = "\n";
  private static final String CRLF = "\r\n";

  /** Comma, point, UTF-8, one header line. */
  static final Dialect PLAIN =
      new Dialect(
          "csv",
          StandardCharsets.UTF_8,
          false,
          LF,
          ",",
          '.',
          PLAIN_ORDER,
          List.of("frequency_hz,level_db"));

  /** The ways the demonstration's files are written. */
  static final List<Dialect> ALL =
      List.of(
          PLAIN,
          PLAIN,
          new Dialect(
              "csv",
              StandardCharsets.UTF_8,
              true,
              CRLF,
              ";",
              ',',
              WITH_PHASE,
              List.of("Frequenz [Hz];Pegel [dB];Phase [°]")),
          new Dialect(
              "txt",
              StandardCharsets.ISO_8859_1,
              false,
              CRLF,
              "\t",
              ',',
              PLAIN_ORDER,
              List.of("# Prüfplatz 2, Raum 22,6 °C", "Frequenz (Hz)\tPegel (dB)")),
          new Dialect(
              "txt",
              StandardCharsets.UTF_8,
              false,
              LF,
              "\t",
              '.',
              WITH_PHASE,
              List.of(
                  "# swept sine, 1 s, four averages",
                  "# window: none",
                  "Frequency (Hz)\tSPL (dB)\tPhase (deg)")),
          new Dialect(
              "txt",
              StandardCharsets.US_ASCII,
              false,
              LF,
              "  ",
              '.',
              PLAIN_ORDER,
              List.of("* stepped sine, calibrated, dB re 20 uPa")),
          new Dialect(
              "csv",
              StandardCharsets.UTF_16LE,
              true,
              CRLF,
              ";",
              '.',
              PLAIN_ORDER,
              List.of("Frequency [Hz];Level [dB]")),
          new Dialect(
              "csv",
              StandardCharsets.UTF_8,
              false,
              LF,
              ";",
              '.',
              List.of(Column.DB, Column.HZ),
              List.of("level_db;frequency_hz")));

  Dialect {
    columns = List.copyOf(columns);
    head = List.copyOf(head);
  }
}
