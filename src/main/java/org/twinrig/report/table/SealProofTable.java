package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.proof.SealRow;

/** Writes how well lost seals are found. */
public final class SealProofTable {
  private static final String FIRST_COLUMNS = "kind,limit_factor,lost_seals";

  private SealProofTable() {}

  /**
   * Writes the table.
   *
   * @param rows one per kind and limit
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void write(List<SealRow> rows, Path file) throws IOException {
    ResultTable table =
        new ResultTable(
            (FIRST_COLUMNS
                    + ",found,sensitivity,slight_lost_seals,slight_found,sound_captures,accused,"
                    + "false_alarm_share,rms_suggest_db,rms_exclude_db,rms_all_sound_db")
                .split(","));
    for (SealRow row : rows) {
      table
          .text(row.kind())
          .number(row.limitFactor())
          .count(row.lost())
          .count(row.found())
          .number(row.sensitivity())
          .count(row.slight())
          .count(row.slightFound())
          .count(row.sound())
          .count(row.accused())
          .number(OptionalDouble.of(row.falseAlarms()))
          .number(row.effect().suggestDb())
          .number(row.effect().excludeDb())
          .number(row.effect().soundDb())
          .endRow();
    }
    table.write(file);
  }
}
