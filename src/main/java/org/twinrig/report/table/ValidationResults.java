package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Validation;

/**
 * Whether predictions hold on units the rule never saw, left out each in turn or held out by the
 * lab, and whether units keep their rank.
 */
final class ValidationResults {
  private ValidationResults() {}

  static final Result<StudyOutcome> LEFT_OUT = errors("validation.csv", KindOutcome::errors);

  static final Result<StudyOutcome> HELD_OUT =
      errors("validation-holdout.csv", kind -> kind.evidence().heldOut().regions());

  private static Result<StudyOutcome> errors(
      String file, Function<KindOutcome, List<PredictionErrors>> regions) {
    return Result.inKinds(
        file,
        Columns.<PredictionErrors>start()
            .region(r -> r.region().orElseThrow())
            .count("units", r -> r.units().size())
            .number("bias_db", r -> r.biasDb())
            .number("rms_offset_db", r -> r.rmsOffsetDb())
            .number("rms_db", r -> r.rmsDb())
            .number("coverage", r -> r.inside()),
        kind -> regions.apply(kind).stream());
  }

  /** A trial of the prediction on units it never saw, in a region or, without one, all bands. */
  private record Trial<T>(KindOutcome kind, String tried, Optional<Region> region, T it) {
    String where() {
      return region.map(Region::word).orElse("all bands");
    }

    double fromHz() {
      return region.map(Region::fromHz).orElse(kind.paired().grid().lowerHz());
    }

    double toHz() {
      return region.map(Region::toHz).orElse(kind.paired().grid().upperHz());
    }
  }

  private static <T> Stream<Trial<T>> trials(
      StudyOutcome study,
      Function<Validation, Stream<T>> rows,
      Function<T, Optional<Region>> region) {
    BiFunction<KindOutcome, Boolean, Stream<Trial<T>>> of =
        (kind, held) ->
            rows.apply(held ? kind.evidence().heldOut() : kind.evidence().leftOut())
                .map(it -> new Trial<>(kind, held ? "held out" : "left out", region.apply(it), it));
    return study.kinds().stream()
        .flatMap(kind -> Stream.concat(of.apply(kind, false), of.apply(kind, true)));
  }

  static final Result<StudyOutcome> UNITS =
      Result.of(
          "validation-units.csv",
          Columns.<Trial<PredictionErrors>>start()
              .text("kind", t -> t.kind.kind())
              .word("tried", t -> t.tried)
              .text("unit", t -> t.it.unit())
              .word("region", Trial::where)
              .hz("from_hz", Trial::fromHz)
              .hz("to_hz", Trial::toHz)
              .count("bands", t -> t.it.bands())
              .number("bias_db", t -> t.it.biasDb())
              .number("rms_offset_db", t -> t.it.rmsOffsetDb())
              .number("rms_db", t -> t.it.rmsDb())
              .number("inside", t -> t.it.inside()),
          study -> trials(study, v -> v.units().stream(), PredictionErrors::region));

  static final Result<StudyOutcome> COVERAGE =
      Result.of(
          "coverage.csv",
          Columns.<Trial<Coverage>>start()
              .text("kind", t -> t.kind.kind())
              .word("tried", t -> t.tried)
              .word("region", Trial::where)
              .hz("from_hz", Trial::fromHz)
              .hz("to_hz", Trial::toHz)
              .number("stated", t -> t.it.stated())
              .count("counted", t -> t.it.units())
              .number("reached", t -> t.it.reached())
              .number("low", t -> t.it.low())
              .number("high", t -> t.it.high()),
          study -> trials(study, v -> v.coverage().stream(), Coverage::region));

  private record Ranked(RankKeeping.Result among, RankKeeping.Ranked unit) {}

  static final Result<StudyOutcome> RANKS =
      Result.inKinds(
          "ranks.csv",
          Columns.<Ranked>start()
              .text("unit", r -> r.unit.unit())
              .hz("from_hz", r -> r.among.range().fromHz())
              .hz("to_hz", r -> r.among.range().toHz())
              .number("deviation_from_db", r -> r.unit.fromDb())
              .number("deviation_to_db", r -> r.unit.toDb())
              .number("rank_from", r -> r.unit.rankFrom())
              .number("rank_to", r -> r.unit.rankTo())
              .number("rank_change", r -> r.unit.change()),
          kind ->
              kind.evidence().ranks().stream()
                  .flatMap(all -> all.units().stream().map(u -> new Ranked(all, u))));

  static final Result<StudyOutcome> RANK_CORRELATION =
      Result.inKinds(
          "rank-correlation.csv",
          Columns.<RankCorrelation>start()
              .word("measure", r -> r.measure().word())
              .count("units", r -> r.units())
              .number("coefficient", r -> r.coefficient())
              .number("low", r -> r.interval().map(RankCorrelation.Interval::low))
              .number("high", r -> r.interval().map(RankCorrelation.Interval::high)),
          kind ->
              kind.evidence().ranks().stream()
                  .flatMap(r -> Stream.concat(r.spearman().stream(), r.kendall().stream())));
}
