package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.proof.Figure;
import org.twinrig.proof.PlanProofRow;
import org.twinrig.proof.PlanTrials;

/** Writes the table of a proof of plans. */
public final class PlanProofTable {
  private static final String FIRST_COLUMNS = "pilot_units,pilot_seatings,tolerance_db,kind,claim";

  private PlanProofTable() {}

  /**
   * Writes the table.
   *
   * @param trials what was tried
   * @param rows what it gave
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void write(PlanTrials trials, List<PlanProofRow> rows, Path file)
      throws IOException {
    ResultTable table =
        new ResultTable(
            (FIRST_COLUMNS
                    + ",trials,studies,zones,within_ten_percent,within_ten_percent_mc_se,"
                    + "within_tolerance,within_tolerance_mc_se,ratio,ratio_mc_se,mean_units,"
                    + "mean_seatings")
                .split(","));
    for (PlanProofRow row : rows) {
      table
          .count(trials.units())
          .count(trials.seatings())
          .number(trials.toleranceDb())
          .text(row.kind())
          .word(row.claim().word())
          .count(trials.studies())
          .count(row.studies())
          .count(row.zones());
      figure(table, row.withinSlack());
      figure(table, row.withinTolerance());
      figure(table, row.ratio());
      table.number(row.meanUnits()).number(row.meanSeatings()).endRow();
    }
    table.write(file);
  }

  private static void figure(ResultTable table, Figure figure) {
    table.number(figure.value()).number(figure.monteCarloSe());
  }
}
