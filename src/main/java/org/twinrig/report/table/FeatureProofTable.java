package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.proof.FeatureRow;

/** Writes the table of a proof of shared features. */
public final class FeatureProofTable {
  private static final String FIRST_COLUMNS = "units,fixtures,kind";

  private FeatureProofTable() {}

  /**
   * Writes the table.
   *
   * @param rows what the proof gave
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void write(List<FeatureRow> rows, Path file) throws IOException {
    ResultTable table =
        new ResultTable(
            (FIRST_COLUMNS
                    + ",studies,clean,clean_low,clean_high,claims_per_study,place_hz,height_db,"
                    + "found,found_low,found_high,centre_held,height_held")
                .split(","));
    for (FeatureRow row : rows) {
      table
          .count(row.units())
          .word(row.fixtures().word())
          .text(row.kind())
          .count(row.clean().trials());
      share(table, row.clean());
      table.number(row.claimsPerStudy());
      row.planted().ifPresentOrElse(p -> planted(table, p), () -> table.empty(7));
      table.endRow();
    }
    table.write(file);
  }

  private static void planted(ResultTable table, FeatureRow.Planted planted) {
    table.hz(planted.placeHz()).number(planted.heightDb());
    share(table, planted.found());
    held(table, planted.centreHeld());
    held(table, planted.heightHeld());
  }

  private static void share(ResultTable table, ClopperPearson share) {
    table.number(share.share()).number(share.low()).number(share.high());
  }

  private static void held(ResultTable table, Optional<ClopperPearson> share) {
    share.ifPresentOrElse(s -> table.number(s.share()), () -> table.empty(1));
  }
}
