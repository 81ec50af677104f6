package org.twinrig.report.table;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingGain;

/** The rows of repeatability.csv and seating-gain.csv. */
final class RepeatabilityTables {
  private RepeatabilityTables() {}

  /** One row per kind, fixture and band at which a unit was seated twice. */
  static ResultTable bands(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            "kind,fixture,band_hz,units,degrees_of_freedom,sd_db,low_db,high_db,confidence"
                .split(","));
    double confidence = outcome.study().settings().confidence();
    for (Repeatability kind : outcome.repeatability()) {
      rows(table, kind.kind(), outcome.study().from().name(), kind.from(), confidence);
      rows(table, kind.kind(), outcome.study().to().name(), kind.to(), confidence);
    }
    return table;
  }

  private static void rows(
      ResultTable table,
      String kind,
      String fixture,
      List<Repeatability.AtBand> bands,
      double confidence) {
    for (Repeatability.AtBand at : bands) {
      table
          .text(kind)
          .text(fixture)
          .hz(at.band().midHz())
          .count(at.units())
          .count(at.degreesOfFreedom())
          .number(at.sd().sdDb())
          .number(at.sd().lowDb())
          .number(at.sd().highDb())
          .number(confidence)
          .endRow();
    }
  }

  /** One row per kind, region and number of seatings. */
  static ResultTable gain(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,region,from_hz,to_hz,seatings,seating_half_db,half_db,seating_share,"
                    + "endless_half_db,confidence")
                .split(","));
    List<Repeatability> repeatability = outcome.repeatability();
    double confidence = outcome.study().settings().confidence();
    for (int k = 0; k < repeatability.size(); k++) {
      KindOutcome kind = outcome.kinds().get(k);
      for (SeatingGain gain : SeatingGain.of(repeatability.get(k), kind.estimate(), confidence)) {
        for (SeatingGain.Step step : gain.steps()) {
          table
              .text(kind.kind())
              .word(gain.region().word())
              .hz(gain.region().fromHz())
              .hz(gain.region().toHz())
              .count(step.seatings())
              .number(step.seatingHalfDb())
              .number(step.halfDb())
              .number(step.share())
              .number(gain.endlessHalfDb())
              .number(confidence)
              .endRow();
        }
      }
    }
    return table;
  }
}
