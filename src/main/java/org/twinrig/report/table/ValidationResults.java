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

  static final Result<StudyOutcome> LEFT_OUT =
      errors(
          "validation.csv",
          "kind and region; errors on units left out in turn",
          KindOutcome::errors);

  static final Result<StudyOutcome> HELD_OUT =
      errors(
          "validation-holdout.csv",
          "the same on units with the role *holdout*",
          kind -> kind.evidence().heldOut().regions());

  private static Result<StudyOutcome> errors(
      String file, String rowOf, Function<KindOutcome, List<PredictionErrors>> regions) {
    return Result.inKinds(
        file,
        rowOf,
        Columns.<PredictionErrors>start()
            .region(r -> r.region().orElseThrow())
            .count("units", r -> r.units().size())
            .help("with an error there")
            .number("bias_db", r -> r.biasDb())
            .help("mean error, measured minus predicted")
            .number("rms_offset_db", r -> r.rmsOffsetDb())
            .number("rms_db", r -> r.rmsDb())
            .help("root mean square error of the offset; of the model, its choice included")
            .number("coverage", r -> r.inside())
            .help(
                "share of errors inside the prediction interval, every band of every unit counted"
                    + " once; empty where too few units make one"),
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
          "kind, unit and region, then all bands",
          Columns.<Trial<PredictionErrors>>start()
              .text("kind", t -> t.kind.kind())
              .word("tried", t -> t.tried)
              .help("*left out* or *held out*")
              .text("unit", t -> t.it.unit())
              .word("region", Trial::where)
              .hz("from_hz", Trial::fromHz)
              .hz("to_hz", Trial::toHz)
              .count("bands", t -> t.it.bands())
              .help("with an error")
              .number("bias_db", t -> t.it.biasDb())
              .number("rms_offset_db", t -> t.it.rmsOffsetDb())
              .number("rms_db", t -> t.it.rmsDb())
              .number("inside", t -> t.it.inside())
              .help("share of its bands inside the prediction interval"),
          study -> trials(study, v -> v.units().stream(), PredictionErrors::region));

  static final Result<StudyOutcome> COVERAGE =
      Result.of(
          "coverage.csv",
          "kind, *left out* or *held out*, region and stated confidence",
          Columns.<Trial<Coverage>>start()
              .text("kind", t -> t.kind.kind())
              .word("tried", t -> t.tried)
              .help("*left out* or *held out*")
              .word("region", Trial::where)
              .hz("from_hz", Trial::fromHz)
              .hz("to_hz", Trial::toHz)
              .number("stated", t -> t.it.stated())
              .help("confidence of the prediction interval: 0.5, 0.8, 0.9, 0.95, 0.99")
              .count("counted", t -> t.it.units())
              .help("how many units")
              .number("reached", t -> t.it.reached())
              .help("mean over units of the share of bands inside")
              .number("low", t -> t.it.low())
              .number("high", t -> t.it.high())
              .help("interval of *reached*, by units"),
          study -> trials(study, v -> v.coverage().stream(), Coverage::region));

  private record Ranked(RankKeeping.Result among, RankKeeping.Ranked unit) {}

  static final Result<StudyOutcome> RANKS =
      Result.inKinds(
          "ranks.csv",
          "kind and unit with all bands of the range",
          Columns.<Ranked>start()
              .text("unit", r -> r.unit.unit())
              .hz("from_hz", r -> r.among.range().fromHz())
              .hz("to_hz", r -> r.among.range().toHz())
              .help("the range of *publishing* in *study.yaml*")
              .number("deviation_from_db", r -> r.unit.fromDb())
              .number("deviation_to_db", r -> r.unit.toDb())
              .help("from the fixture's own reference curve, root mean square over the range")
              .number("rank_from", r -> r.unit.rankFrom())
              .number("rank_to", r -> r.unit.rankTo())
              .help("1 is nearest; equals share the mean of their ranks")
              .number("rank_change", r -> r.unit.change())
              .help("new minus old: above 0 the unit falls"),
          kind ->
              kind.evidence().ranks().stream()
                  .flatMap(all -> all.units().stream().map(u -> new Ranked(all, u))));

  static final Result<StudyOutcome> RANK_CORRELATION =
      Result.inKinds(
          "rank-correlation.csv",
          "kind and coefficient",
          Columns.<RankCorrelation>start()
              .word("measure", r -> r.measure().word())
              .help("*Spearman* or *Kendall tau-b*")
              .count("units", r -> r.units())
              .number("coefficient", r -> r.coefficient())
              .help("1: the order of units is the same on both fixtures")
              .number("low", r -> r.interval().map(RankCorrelation.Interval::low))
              .number("high", r -> r.interval().map(RankCorrelation.Interval::high))
              .help("empty with too few units, or where the coefficient is 1 or -1"),
          kind ->
              kind.evidence().ranks().stream()
                  .flatMap(r -> Stream.concat(r.spearman().stream(), r.kendall().stream())));
}
