package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Fixture;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.evidence.UncertaintyBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.study.Study;

/** Where errors come from: the budget, and how far seatings scatter. */
final class ErrorResults {
  private ErrorResults() {}

  static final Result<StudyOutcome> BUDGET =
      Result.inKinds(
          "error-budget.csv",
          Columns.<BandBudget>start()
              .hz("band_hz", r -> r.band().midHz())
              .number("seating_from_db", r -> sd(r, ErrorSource.SEATING_FROM))
              .number("seating_to_db", r -> sd(r, ErrorSource.SEATING_TO))
              .number("units_db", r -> sd(r, ErrorSource.UNITS))
              .number("fit_db", r -> sd(r, ErrorSource.FIT))
              .number("calibrator_db", r -> TransferResults.root(r.calibratorVariance()))
              .number("drift_db", r -> sd(r, ErrorSource.DRIFT))
              .part(r -> r.total(), ErrorResults::total)
              .word(
                  "not_known",
                  r ->
                      r.unknown().stream().map(ErrorSource::word).collect(Collectors.joining("; ")))
              .part(
                  r -> r.monteCarlo(),
                  check ->
                      check
                          .number("monte_carlo_sd_db", c -> c.standardDeviationDb())
                          .number("monte_carlo_expanded_db", c -> c.expandedDb())
                          .word("monte_carlo_agrees", c -> c.agrees())),
          kind -> kind.budget().bands().stream());

  private static Object sd(BandBudget band, ErrorSource source) {
    return TransferResults.root(band.variance(source));
  }

  private static Columns<UncertaintyBudget> total(Columns<UncertaintyBudget> columns) {
    return columns
        .number("combined_db", UncertaintyBudget::combined)
        .word("effective_dof", t -> freedom(t.effectiveDegreesOfFreedom()))
        .number("coverage_factor", UncertaintyBudget::coverageFactor)
        .number("expanded_db", t -> t.coverageFactor() * t.combined());
  }

  private static String freedom(double degrees) {
    return Double.isInfinite(degrees) ? "Inf" : Numbers.fixed(degrees, 6);
  }

  private record Scatter(String kind, String fixture, Repeatability.Scatter at) {}

  private static Stream<Scatter> scatter(
      KindOutcome kind, Fixture fixture, List<Optional<Repeatability.Scatter>> bands) {
    return bands.stream()
        .flatMap(Optional::stream)
        .map(at -> new Scatter(kind.kind(), fixture.name(), at));
  }

  private static Stream<Scatter> scatter(Study study, KindOutcome kind) {
    return Stream.concat(
        scatter(kind, study.from(), kind.repeatability().from()),
        scatter(kind, study.to(), kind.repeatability().to()));
  }

  static final Result<StudyOutcome> REPEATABILITY =
      Result.of(
          "repeatability.csv",
          Columns.<Scatter>start()
              .text("kind", Scatter::kind)
              .text("fixture", Scatter::fixture)
              .hz("band_hz", r -> r.at.band().midHz())
              .count("units", r -> r.at.units())
              .count("degrees_of_freedom", r -> r.at.degreesOfFreedom())
              .number("sd_db", r -> r.at.sdDb())
              .number("low_db", r -> r.at.lowDb())
              .number("high_db", r -> r.at.highDb()),
          study -> study.kinds().stream().flatMap(kind -> scatter(study.study(), kind)));

  /** What so many seatings buy in a region; which of them is an index. */
  private record Seatings(SeatingsNeeded there, int which) {}

  static final Result<StudyOutcome> SEATINGS =
      Result.inKinds(
          "seatings.csv",
          Columns.<Seatings>start()
              .region(r -> r.there.region())
              .count("seatings", r -> SeatingsNeeded.SEATINGS.get(r.which))
              .number("prediction_half_db", r -> r.there.halfDb().get(r.which))
              .number("never_below_db", r -> r.there.neverBelowDb()),
          kind ->
              kind.seatings().stream()
                  .flatMap(
                      s ->
                          IntStream.range(0, SeatingsNeeded.SEATINGS.size())
                              .mapToObj(k -> new Seatings(s, k))));
}
