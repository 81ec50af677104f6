package org.twinrig.report.table;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Fixture;
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
    for (Repeatability kind : outcome.repeatability()) {
      for (Fixture fixture : List.of(outcome.study().from(), outcome.study().to())) {
        boolean old = fixture.equals(outcome.study().from());
        for (Repeatability.AtBand at : old ? kind.from() : kind.to()) {
          table.text(kind.kind()).text(fixture.name());
          row(table, at, outcome.study().settings().confidence());
        }
      }
    }
    return table;
  }

  private static void row(ResultTable table, Repeatability.AtBand at, double confidence) {
    table
        .hz(at.band().midHz())
        .count(at.units())
        .count(at.degreesOfFreedom())
        .number(at.sd().sdDb())
        .number(at.sd().lowDb())
        .number(at.sd().highDb())
        .number(confidence)
        .endRow();
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
