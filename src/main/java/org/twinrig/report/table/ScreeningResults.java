package org.twinrig.report.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.doubt.DepartsFromItsKind;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.Verdict;

/** What screening found in captures, units and sessions. */
final class ScreeningResults {
  private ScreeningResults() {}

  /** What was found about a capture or, without one, about a whole unit. */
  private record Found(
      String unit,
      Optional<CaptureEntry> capture,
      String finding,
      OptionalDouble value,
      OptionalDouble limit,
      String excluded) {}

  private static Found byLab(CaptureEntry capture) {
    String finding = "left out by the lab: " + capture.exclude();
    OptionalDouble none = OptionalDouble.empty();
    return new Found(capture.unit(), Optional.of(capture), finding, none, none, "lab");
  }

  private static Found capture(Verdict v) {
    return new Found(
        v.capture().unit(),
        Optional.of(v.capture()),
        v.finding().word(),
        OptionalDouble.of(v.value()),
        OptionalDouble.of(v.limit()),
        v.excluded() ? "rule" : "no");
  }

  private static Found unit(DepartsFromItsKind.Departure v) {
    return new Found(
        v.unit(),
        Optional.empty(),
        "unit outlier",
        OptionalDouble.of(v.value()),
        OptionalDouble.of(v.limit()),
        "no");
  }

  private static Stream<Found> found(StudyOutcome study) {
    return Stream.of(
            study.study().captures().stream()
                .filter(CaptureEntry::excludedByLab)
                .map(ScreeningResults::byLab),
            study.screening().verdicts().stream().map(ScreeningResults::capture),
            study.departures().stream()
                .flatMap(k -> k.departures().stream())
                .map(ScreeningResults::unit))
        .flatMap(s -> s);
  }

  static final Result<StudyOutcome> SCREENING =
      Result.of(
          "screening.csv",
          Columns.<Found>start()
              .text("unit", Found::unit)
              .part(
                  Found::capture,
                  capture ->
                      capture
                          .text("fixture", CaptureEntry::fixture)
                          .word("side", c -> c.side().name())
                          .count("seating", CaptureEntry::seating)
                          .text("file", CaptureEntry::file))
              .text("finding", Found::finding)
              .number("value", Found::value)
              .number("limit", Found::limit)
              .word("excluded", Found::excluded),
          ScreeningResults::found);

  private record Charted(
      SessionReview review, String fixture, DriftChart chart, DriftChart.Point point) {

    Optional<Limited> limited() {
      return chart.limits().map(l -> new Limited(l, point.ewma().orElseThrow()));
    }

    String outside() {
      return chart.limits().isEmpty() ? "no limits" : point.outside() ? "yes" : "no";
    }
  }

  private record Limited(ControlLimits limits, DriftChart.Average average) {}

  private static Stream<Charted> charted(SessionReview review) {
    return review.fixtures().stream()
        .flatMap(
            f ->
                f.charts().stream()
                    .flatMap(
                        c -> c.points().stream().map(p -> new Charted(review, f.fixture(), c, p))));
  }

  static final Result<SessionReview> DRIFT =
      Result.of(
          "drift.csv",
          Columns.<Charted>start()
              .text("unit", c -> c.review.unit())
              .text("fixture", Charted::fixture)
              .word("quantity", c -> c.chart.midHz().isPresent() ? "octave re level" : "level")
              .hz("band_hz", c -> c.chart.midHz())
              .text("session", c -> c.point.session())
              .count("seatings", c -> c.point.seatings())
              .number("value_db", c -> c.point.valueDb())
              .part(
                  Charted::limited,
                  limited ->
                      limited
                          .number("centre_db", l -> l.limits.centreDb())
                          .number("lower_db", l -> l.limits.lowerDb())
                          .number("upper_db", l -> l.limits.upperDb())
                          .number("ewma_db", l -> l.average.valueDb())
                          .number(
                              "ewma_lower_db", l -> l.limits.centreDb() - l.average.halfWidthDb())
                          .number(
                              "ewma_upper_db", l -> l.limits.centreDb() + l.average.halfWidthDb()))
              .word("outside", Charted::outside),
          ScreeningResults::charted);

  static final Result<DriftCorrection> DRIFT_CORRECTION =
      Result.of(
          "drift-correction.csv",
          Columns.<DriftCorrection.Taken>start()
              .text("fixture", DriftCorrection.Taken::fixture)
              .text("session", DriftCorrection.Taken::session)
              .hz("band_hz", DriftCorrection.Taken::midHz)
              .number("taken_out_db", DriftCorrection.Taken::departureDb),
          correction -> correction.taken().stream());
}
