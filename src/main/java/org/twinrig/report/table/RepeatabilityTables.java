package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;

/** The rows of repeatability.csv and seatings.csv; a band where nothing was repeated has none. */
final class RepeatabilityTables {
  private RepeatabilityTables() {}

  static ResultTable scatter(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,fixture,band_hz,units,degrees_of_freedom,sd_db,low_db,high_db".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      rows(table, kind, outcome.study().from().name(), kind.repeatability().from());
      rows(table, kind, outcome.study().to().name(), kind.repeatability().to());
    }
    return table;
  }

  private static void rows(
      ResultTable table,
      KindOutcome kind,
      String fixture,
      List<Optional<Repeatability.Scatter>> bands) {
    for (Optional<Repeatability.Scatter> band : bands) {
      band.ifPresent(
          s ->
              table
                  .text(kind.kind())
                  .text(fixture)
                  .hz(s.band().midHz())
                  .count(s.units())
                  .count(s.degreesOfFreedom())
                  .number(s.sdDb())
                  .number(s.lowDb())
                  .number(s.highDb())
                  .endRow());
    }
  }

  static ResultTable seatings(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,region,from_hz,to_hz,seatings,prediction_half_db,never_below_db".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (SeatingsNeeded row : kind.seatings()) {
        for (int k = 0; k < SeatingsNeeded.SEATINGS.size(); k++) {
          table
              .text(kind.kind())
              .word(row.region().word())
              .hz(row.region().fromHz())
              .hz(row.region().toHz())
              .count(SeatingsNeeded.SEATINGS.get(k))
              .number(row.halfDb().get(k))
              .number(row.neverBelowDb())
              .endRow();
        }
      }
    }
    return table;
  }
}
