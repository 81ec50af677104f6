package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import org.twinrig.proof.Figure;
import org.twinrig.proof.ProofOutcome;
import org.twinrig.proof.ProofRow;

/** Writes the table of an interval proof. */
public final class ProofTable {
  private static final String FIRST_COLUMNS = "units,kind,graph_seatings,region";
  private static final String COLUMNS =
      FIRST_COLUMNS
          + ",from_hz,to_hz,studies,judgements,"
          + "rms_offset_db,rms_offset_mc_se_db,rms_TRIED_db,rms_TRIED_mc_se_db,ratio,ratio_mc_se,"
          + "coverage_offset,coverage_offset_mc_se,coverage_TRIED,coverage_TRIED_mc_se,"
          + "half_offset_db,half_TRIED_db,below_offset,below_TRIED";

  private ProofTable() {}

  /**
   * Writes the table.
   *
   * @param outcome what the proof gave
   * @param file where to
   * @throws IOException when it cannot be written
   */
  public static void write(ProofOutcome outcome, Path file) throws IOException {
    String tried = outcome.plan().model().name().toLowerCase(Locale.ROOT);
    ResultTable table = new ResultTable(COLUMNS.replace("TRIED", tried).split(","));
    for (ProofRow row : outcome.rows()) {
      table
          .count(row.place().units())
          .text(row.place().kind())
          .count(row.place().graphSeatings())
          .word(row.place().span().word())
          .hz(row.place().span().fromHz())
          .hz(row.place().span().toHz())
          .count(row.studies())
          .count(row.judgements());
      figure(table, row.offset().rmsDb());
      figure(table, row.tried().rmsDb());
      figure(table, row.ratio());
      figure(table, row.offset().coverage());
      figure(table, row.tried().coverage());
      table
          .number(row.offset().meanHalfDb())
          .number(row.tried().meanHalfDb())
          .number(row.offset().below())
          .number(row.tried().below())
          .endRow();
    }
    table.write(file);
  }

  private static void figure(ResultTable table, Figure figure) {
    table.number(figure.value()).number(figure.monteCarloSe());
  }
}
