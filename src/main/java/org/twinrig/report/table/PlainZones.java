package org.twinrig.report.table;

import java.util.List;
import org.twinrig.internal.Numbers;

/** The zones of all kinds as a table for readers of graphs. */
public final class PlainZones {
  private PlainZones() {}

  /** One zone, its ends in Hz, with what the mark allows and why, in plain words. */
  public record Row(
      String kind, double fromHz, double toHz, String mark, String advice, String reason) {}

  /** What a page carries as a file to be saved. */
  public static final Result<List<Row>> RESULT =
      Result.of(
          "explained.html",
          Columns.<Row>start()
              .text("kind", Row::kind)
              .word("from_hz", r -> Numbers.fixed(r.fromHz, 0))
              .word("to_hz", r -> Numbers.fixed(r.toHz, 0))
              .word("mark", Row::mark)
              .word("what_to_do", Row::advice)
              .text("reason", Row::reason),
          List::stream);
}
