package org.twinrig.report.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.UnitVerdict;
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

  private static Found unit(UnitVerdict v) {
    return new Found(
        v.unit(),
        Optional.empty(),
        UnitVerdict.WORD,
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
            study.screening().kinds().stream()
                .flatMap(k -> k.verdicts().stream())
                .map(ScreeningResults::unit))
        .flatMap(s -> s);
  }

  static final Result<StudyOutcome> SCREENING =
      Result.of(
          "screening.csv",
          "finding: a capture may have several, or none and no row",
          Columns.<Found>start()
              .text("unit", Found::unit)
              .part(
                  Found::capture,
                  capture ->
                      capture
                          .text("fixture", CaptureEntry::fixture)
                          .word("side", c -> c.side().name())
                          .count("seating", CaptureEntry::seating)
                          .text("file", CaptureEntry::file)
                          .help(
                              "from fixture to file empty for *unit outlier*, which is about a"
                                  + " whole unit"))
              .text("finding", Found::finding)
              .help("see below")
              .number("value", Found::value)
              .number("limit", Found::limit)
              .help("what was found, and what it exceeds; empty where the lab left the capture out")
              .word("excluded", Found::excluded)
              .help("*lab*: left out by *captures.csv*; *rule*: by screening; *no*: used"),
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
          "fixture, quantity and session, for the check unit",
          Columns.<Charted>start()
              .text("unit", c -> c.review.unit())
              .text("fixture", Charted::fixture)
              .word("quantity", c -> c.chart.midHz().isPresent() ? "octave re level" : "level")
              .help("*level*, or *octave re level*: the octave less the level")
              .hz("band_hz", c -> c.chart.midHz())
              .help("middle of the octave; empty for *level*")
              .text("session", c -> c.point.session())
              .help("in the order of dates")
              .count("seatings", c -> c.point.seatings())
              .help("of the check unit")
              .number("value_db", c -> c.point.valueDb())
              .help("their mean, as calibrated and before any anchor")
              .part(
                  Charted::limited,
                  limited ->
                      limited
                          .number("centre_db", l -> l.limits.centreDb())
                          .number("lower_db", l -> l.limits.lowerDb())
                          .number("upper_db", l -> l.limits.upperDb())
                          .help("centre line and limits of single values")
                          .number("ewma_db", l -> l.average.valueDb())
                          .number(
                              "ewma_lower_db", l -> l.limits.centreDb() - l.average.halfWidthDb())
                          .number(
                              "ewma_upper_db", l -> l.limits.centreDb() + l.average.halfWidthDb())
                          .help("moving average and its limits"))
              .word("outside", Charted::outside)
              .help(
                  "whether the value or the average is; *no limits* with fewer than six sessions,"
                      + " and the six before are empty"),
          ScreeningResults::charted);

  static final Result<DriftCorrection> DRIFT_CORRECTION =
      Result.of(
          "drift-correction.csv",
          "fixture, session with the check unit, and octave",
          Columns.<DriftCorrection.Taken>start()
              .text("fixture", DriftCorrection.Taken::fixture)
              .text("session", DriftCorrection.Taken::session)
              .hz("band_hz", DriftCorrection.Taken::midHz)
              .help("middle of the octave")
              .number("taken_out_db", DriftCorrection.Taken::departureDb)
              .help(
                  "subtracted from every capture of the session; in between it runs linearly over"
                      + " the logarithm of frequency"),
          correction -> correction.taken().stream());
}
