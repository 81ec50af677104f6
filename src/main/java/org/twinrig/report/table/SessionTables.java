package org.twinrig.report.table;

import java.util.Optional;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.SessionReview;

/**
 * The rows of drift.csv, the check unit's charts, one row per chart and session; and of
 * drift-correction.csv, what was taken out of captures.
 */
final class SessionTables {
  private SessionTables() {}

  /** An octave's value is relative to the level; without limits their cells are empty. */
  static ResultTable drift(SessionReview review) {
    ResultTable table =
        new ResultTable(
            ("unit,fixture,quantity,band_hz,session,seatings,value_db,centre_db,lower_db,upper_db,"
                    + "ewma_db,ewma_lower_db,ewma_upper_db,outside")
                .split(","));
    for (FixtureDrift fixture : review.fixtures()) {
      for (DriftChart chart : fixture.charts()) {
        for (DriftChart.Point point : chart.points()) {
          table.text(review.unit()).text(fixture.fixture());
          if (chart.midHz().isPresent()) {
            table.word("octave re level").hz(chart.midHz().getAsDouble());
          } else {
            table.word("level").empty(1);
          }
          table.text(point.session()).count(point.seatings()).number(point.valueDb());
          limits(table, chart.limits(), point);
        }
      }
    }
    return table;
  }

  /** What was taken out of the captures of every session, octave by octave. */
  static ResultTable correction(DriftCorrection correction) {
    ResultTable table = new ResultTable("fixture,session,band_hz,taken_out_db".split(","));
    for (DriftCorrection.Taken taken : correction.taken()) {
      table.text(taken.fixture()).text(taken.session());
      table.hz(taken.midHz()).number(taken.departureDb()).endRow();
    }
    return table;
  }

  private static void limits(
      ResultTable table, Optional<ControlLimits> limits, DriftChart.Point point) {
    if (limits.isEmpty()) {
      table.empty(6).word("no limits").endRow();
      return;
    }
    double centre = limits.get().centreDb();
    DriftChart.Average average = point.ewma().orElseThrow();
    table
        .number(centre)
        .number(limits.get().lowerDb())
        .number(limits.get().upperDb())
        .number(average.valueDb())
        .number(centre - average.halfWidthDb())
        .number(centre + average.halfWidthDb())
        .word(point.outside() ? "yes" : "no")
        .endRow();
  }
}
