package org.twinrig.report.table;

import java.util.List;
import org.twinrig.internal.Numbers;

/** The zones of all kinds as a table for readers of graphs. */
public final class PlainZones {
  private PlainZones() {}

  /**
   * One zone.
   *
   * @param kind its kind
   * @param fromHz lower end, Hz
   * @param toHz upper end, Hz
   * @param mark its mark
   * @param advice what the mark allows
   * @param reason why, in plain words
   */
  public record Row(
      String kind, double fromHz, double toHz, String mark, String advice, String reason) {}

  /**
   * The table.
   *
   * @param rows the zones
   * @return comma-separated text with one header line
   */
  public static String text(List<Row> rows) {
    ResultTable table = new ResultTable("kind", "from_hz", "to_hz", "mark", "what_to_do", "reason");
    for (Row row : rows) {
      table
          .text(row.kind)
          .word(Numbers.fixed(row.fromHz, 0))
          .word(Numbers.fixed(row.toHz, 0))
          .word(row.mark)
          .word(row.advice)
          .text(row.reason)
          .endRow();
    }
    return table.text();
  }
}
