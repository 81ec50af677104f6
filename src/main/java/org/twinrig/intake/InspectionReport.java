package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.intake.Layout.Order;
import org.twinrig.intake.Layout.SkippedLines;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** How a capture file was understood, in plain sentences. */
public final class InspectionReport {
  private InspectionReport() {}

  /**
   * What a file was taken to be.
   *
   * @param reading the file as read
   * @return several lines, each ended by a line feed
   */
  public static String text(Reading reading) {
    List<String> lines = new ArrayList<>();
    lines.add(reading.source());
    lines.add("  " + curve(reading));
    if (reading.layout() instanceof SoundLayout sound) {
      SoundWords.of(sound).forEach(sentence -> lines.add("  " + sentence));
    } else if (reading.layout() instanceof Layout text) {
      lines.add("  " + characters(text));
      lines.add("  " + columns(text));
      lines.add("  " + skipped(text));
    }
    for (Problem note : reading.notes()) {
      lines.add(
          "  Note" + (note.line() > 0 ? " on line " + note.line() : "") + ": " + note.what() + ".");
    }
    lines.add("  SHA-256 " + reading.sha256());
    return String.join("\n", lines) + "\n";
  }

  /**
   * Why a file was refused.
   *
   * @param failure what was wrong
   * @return a line per problem, each ended by a line feed
   */
  public static String text(UnusableInput failure) {
    return failure.problems().stream()
        .map(p -> "Not read: " + p.text() + ".\n")
        .collect(Collectors.joining());
  }

  private static String curve(Reading reading) {
    Response response = reading.response();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < response.size(); i++) {
      low = Math.min(low, response.levelDb(i));
      high = Math.max(high, response.levelDb(i));
    }
    return "A curve of "
        + Numbers.count(response.size(), "point", "points")
        + " from "
        + Numbers.hertz(response.fromHz())
        + " to "
        + Numbers.hertz(response.toHz())
        + ", with levels from "
        + Numbers.fixed(low, 1)
        + " dB to "
        + Numbers.fixed(high, 1)
        + " dB"
        + (reading.layout() instanceof Layout text && text.order() == Order.FALLING
            ? "; in the file the frequencies fall."
            : ".");
  }

  private static String characters(Layout layout) {
    return "The text is "
        + layout.encoding().words()
        + (layout.byteOrderMark() ? " with a byte-order mark" : "")
        + "; lines end with "
        + layout.lineEnds().words()
        + ".";
  }

  private static String columns(Layout layout) {
    Columns columns = layout.columns();
    StringBuilder text = new StringBuilder("Columns are parted by " + layout.separator().words());
    text.append(", with ").append(layout.decimalMark().words()).append(": ");
    text.append(column(columns, columns.frequency()))
        .append(" is the frequency in ")
        .append(layout.frequencyUnit().symbol());
    text.append(", ").append(column(columns, columns.level())).append(" the level in dB");
    columns
        .phase()
        .ifPresent(c -> text.append(", ").append(column(columns, c)).append(" the phase"));
    return text.append(".").toString();
  }

  private static String column(Columns columns, int column) {
    return "column " + columns.named(column);
  }

  private static String skipped(Layout layout) {
    if (layout.skipped().isEmpty()) {
      return "Every line holds a point.";
    }
    return "Lines without a point: "
        + layout.skipped().stream().map(InspectionReport::range).collect(Collectors.joining(", "))
        + ".";
  }

  private static String range(SkippedLines lines) {
    return lines.fromLine()
        + (lines.toLine() > lines.fromLine() ? " to " + lines.toLine() : "")
        + " ("
        + lines.why().words()
        + ")";
  }
}
