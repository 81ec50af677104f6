package org.twinrig.simulation;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Response;

/** The bytes of a capture file. */
final class CaptureText {
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private CaptureText() {}

  static byte[] bytes(SimulatedCapture made) {
    Response response = made.capture().response();
    double[] phases = made.phaseDeg();
    Dialect dialect = made.dialect();
    // A capture that starts late has fewer points than the axis; its phases end with it.
    int skipped = phases.length - response.size();
    List<String> lines = new ArrayList<>(dialect.head());
    for (int i = 0; i < response.size(); i++) {
      lines.add(line(dialect, response, i, phases[skipped + i]));
    }
    String text = String.join(dialect.lineEnd(), lines) + dialect.lineEnd();
    return (dialect.byteOrderMark() ? BYTE_ORDER_MARK + text : text).getBytes(dialect.charset());
  }

  /** A curve in the plain dialect. */
  static byte[] plain(Response response) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    bytes.writeBytes(text(Dialect.PLAIN.head().get(0) + "\n"));
    for (int i = 0; i < response.size(); i++) {
      bytes.writeBytes(text(line(Dialect.PLAIN, response, i, 0) + "\n"));
    }
    return bytes.toByteArray();
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String line(Dialect dialect, Response response, int point, double phaseDeg) {
    List<String> cells = new ArrayList<>();
    for (Dialect.Column column : dialect.columns()) {
      String number =
          switch (column) {
            case HZ -> hertz(response.frequencyHz(point));
            case DB -> Numbers.fixed(response.levelDb(point), 2);
            case DEGREES -> Numbers.fixed(phaseDeg, 1);
          };
      cells.add(number.replace('.', dialect.decimal()));
    }
    return String.join(dialect.separator(), cells);
  }

  /** As many digits as {@link SimulationPlan.Axis} keeps, without idle zeros. */
  private static String hertz(double hz) {
    String text = Numbers.fixed(hz, hz < 100 ? 2 : 1);
    String trimmed = text.replaceFirst("0+$", "");
    return trimmed.endsWith(".") ? trimmed.substring(0, trimmed.length() - 1) : trimmed;
  }
}
