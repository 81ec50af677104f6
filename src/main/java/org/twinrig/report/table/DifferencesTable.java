package org.twinrig.report.table;

import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.study.PairedUnits;

/**
 * The rows of differences.csv: what every unit showed on either fixture, band by band, mean over
 * its accepted seatings and sides; what all estimates start from. A band that a unit lacks on a
 * fixture has no row.
 */
final class DifferencesTable {
  private DifferencesTable() {}

  static ResultTable of(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,unit,band_hz,from_db,to_db,difference_db,seatings_from,seatings_to".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (int unit = 0; unit < kind.paired().units().size(); unit++) {
        rows(table, kind.paired(), unit);
      }
    }
    return table;
  }

  private static void rows(ResultTable table, PairedUnits paired, int unit) {
    PairedUnits.OnFixture from = paired.from();
    PairedUnits.OnFixture to = paired.to();
    for (int band = 0; band < paired.grid().size(); band++) {
      if (from.means().get(unit).has(band) && to.means().get(unit).has(band)) {
        double fromDb = from.means().get(unit).db(band);
        double toDb = to.means().get(unit).db(band);
        table
            .text(paired.kind())
            .text(paired.units().get(unit))
            .hz(paired.grid().band(band).midHz())
            .number(fromDb)
            .number(toDb)
            .number(toDb - fromDb)
            .count(from.seatings().get(unit).get(band))
            .count(to.seatings().get(unit).get(band))
            .endRow();
      }
    }
  }
}
