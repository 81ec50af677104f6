package org.twinrig.simulation;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Response;

/**
 * One way in which an instrument or a spreadsheet writes a capture: how letters become bytes,
 * whether the file begins with a byte order mark, what stands between lines and between columns,
 * its decimal sign, what each column holds, and the lines before the numbers.
 */
record CaptureFormat(
    Charset charset,
    boolean byteOrderMark,
    String lineEnd,
    String separator,
    char decimal,
    List<Column> columns,
    String head) {

  enum Column {
    HZ,
    DB,
    DEGREES
  }

  private static final List<Column> HZ_DB = List.of(Column.HZ, Column.DB);
  private static final List<Column> DB_HZ = List.of(Column.DB, Column.HZ);
  private static final List<Column> WITH_PHASE = List.of(Column.HZ, Column.DB, Column.DEGREES);
  private static final String LF = "\n";
  private static final String CRLF = "\r\n";

  /** Comma, point, UTF-8, one header line. */
  static final CaptureFormat PLAIN =
      new CaptureFormat(UTF_8, false, LF, ",", '.', HZ_DB, "frequency_hz,level_db");

  /** The ways the demonstration's files are written. */
  static final List<CaptureFormat> ALL =
      List.of(
          PLAIN,
          PLAIN,
          new CaptureFormat(
              UTF_8, true, CRLF, ";", ',', WITH_PHASE, "Frequenz [Hz];Pegel [dB];Phase [°]"),
          new CaptureFormat(
              ISO_8859_1,
              false,
              CRLF,
              "\t",
              ',',
              HZ_DB,
              "# Prüfplatz 2, Raum 22,6 °C\nFrequenz (Hz)\tPegel (dB)"),
          new CaptureFormat(
              UTF_8,
              false,
              LF,
              "\t",
              '.',
              WITH_PHASE,
              "# swept sine, 1 s, four averages\n# window: none\n"
                  + "Frequency (Hz)\tSPL (dB)\tPhase (deg)"),
          new CaptureFormat(
              US_ASCII, false, LF, "  ", '.', HZ_DB, "* stepped sine, calibrated, dB re 20 uPa"),
          new CaptureFormat(UTF_16LE, true, CRLF, ";", '.', HZ_DB, "Frequency [Hz];Level [dB]"),
          new CaptureFormat(UTF_8, false, LF, ";", '.', DB_HZ, "level_db;frequency_hz"));

  String extension() {
    return separator.isBlank() ? "txt" : "csv";
  }

  static byte[] file(SimulatedCapture made) {
    return made.format().bytes(made.capture().response(), made.phaseDeg());
  }

  /** A curve in this format; where it starts late, the phases are those of its last points. */
  byte[] bytes(Response response, double... phaseDeg) {
    List<String> lines = new ArrayList<>(head.lines().toList());
    for (int i = 0; i < response.size(); i++) {
      List<String> cells = new ArrayList<>();
      for (Column column : columns) {
        String number =
            switch (column) {
              case HZ -> hertz(response.frequencyHz(i));
              case DB -> Numbers.fixed(response.levelDb(i), 2);
              case DEGREES -> Numbers.fixed(phaseDeg[phaseDeg.length - response.size() + i], 1);
            };
        cells.add(number.replace('.', decimal));
      }
      lines.add(String.join(separator, cells));
    }
    String text = String.join(lineEnd, lines) + lineEnd;
    return (byteOrderMark ? "\uFEFF" + text : text).getBytes(charset);
  }

  /** As many digits as {@link SimulationPlan.Axis} keeps, without idle zeros. */
  private static String hertz(double hz) {
    return Numbers.fixed(hz, hz < 100 ? 2 : 1).replaceFirst("\\.?0+$", "");
  }
}
