package org.twinrig.report.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.RegionEquivalence;
import org.twinrig.evidence.Sensitivity;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.LevelShift;

/** How the fixtures differ: band by band, unit by unit, and where the difference makes none. */
final class TransferResults {
  private TransferResults() {}

  static final Result<StudyOutcome> TRANSFER =
      Result.inKinds(
          "transfer.csv",
          Columns.<MarkedBand>start()
              .band(r -> r.band())
              .count("units", r -> r.outcome().units())
              .part(r -> fitted(r), TransferResults::estimate)
              .word("mark", r -> r.mark().word())
              .word("reasons", r -> Reason.join(r.reasons())),
          kind -> kind.transfer().bands().stream());

  private static Optional<BandOutcome.Fitted> fitted(MarkedBand band) {
    return band.outcome() instanceof BandOutcome.Fitted f ? Optional.of(f) : Optional.empty();
  }

  private static Columns<BandOutcome.Fitted> estimate(Columns<BandOutcome.Fitted> columns) {
    return columns
        .number("offset_db", f -> f.mean().meanDb())
        .number("se_db", f -> f.mean().standardErrorDb())
        .number("ci_low_db", f -> f.mean().lowDb())
        .number("ci_high_db", f -> f.mean().highDb())
        .interval("sim_%s_db", f -> f.mean().meanDb(), f -> f.simultaneousHalfDb())
        .word("model", f -> f.prediction().model().word())
        .number("offset_weight", f -> f.prediction().offsetWeight())
        .number("prediction_half_db", f -> f.prediction().halfDb())
        .number("unit_sd_db", f -> Math.sqrt(f.mean().tauSquared()))
        .number("seat_sd_from_db", f -> root(f.scatter().seatVarianceFrom()))
        .number("seat_sd_to_db", f -> root(f.scatter().seatVarianceTo()))
        .number("loo_rms_offset_db", f -> f.prediction().offset().looRmsDb())
        .number("loo_rms_db", f -> f.prediction().errors().looRmsDb());
  }

  static OptionalDouble root(OptionalDouble variance) {
    return variance.isPresent() ? OptionalDouble.of(Math.sqrt(variance.getAsDouble())) : variance;
  }

  /** What a unit showed at a band on either fixture. */
  private record Paired(PairedUnits all, int unit, int band) {
    boolean complete() {
      return all.from().means().get(unit).has(band) && all.to().means().get(unit).has(band);
    }

    double fromDb() {
      return all.from().means().get(unit).db(band);
    }

    double toDb() {
      return all.to().means().get(unit).db(band);
    }
  }

  static final Result<StudyOutcome> DIFFERENCES =
      Result.<StudyOutcome, Paired>of(
          "differences.csv",
          Columns.<Paired>start()
              .text("kind", p -> p.all.kind())
              .text("unit", p -> p.all.units().get(p.unit))
              .hz("band_hz", p -> p.all.grid().band(p.band).midHz())
              .number("from_db", Paired::fromDb)
              .number("to_db", Paired::toDb)
              .number("difference_db", p -> p.toDb() - p.fromDb())
              .count("seatings_from", p -> p.all.from().seatings().get(p.unit).get(p.band))
              .count("seatings_to", p -> p.all.to().seatings().get(p.unit).get(p.band)),
          study -> study.kinds().stream().flatMap(k -> paired(k.paired())));

  private static Stream<Paired> paired(PairedUnits all) {
    return IntStream.range(0, all.units().size())
        .boxed()
        .flatMap(u -> IntStream.range(0, all.grid().size()).mapToObj(b -> new Paired(all, u, b)))
        .filter(Paired::complete);
  }

  private record Judged(double limitDb, Equivalence.Verdict at) {}

  static final Result<StudyOutcome> EQUIVALENCE =
      Result.inKinds(
          "equivalence.csv",
          Columns.<Judged>start()
              .band(r -> r.at.band())
              .count("units", r -> r.at.mean().units())
              .number("offset_db", r -> r.at.mean().meanDb())
              .number("equivalence_db", r -> r.limitDb)
              .number("p", r -> r.at.p())
              .interval("tost_%s_db", r -> r.at.mean().meanDb(), r -> r.at.halfDb())
              .interval("sim_%s_db", r -> r.at.mean().meanDb(), r -> r.at.simultaneousHalfDb())
              .word("equivalent", r -> r.at.alone())
              .word("equivalent_at_once", r -> r.at.together()),
          kind -> {
            Equivalence all = kind.evidence().equivalence();
            return all.bands().stream()
                .flatMap(Optional::stream)
                .map(at -> new Judged(all.limitDb(), at));
          });

  static final Result<StudyOutcome> EQUIVALENCE_REGIONS =
      Result.of(
          "equivalence-regions.csv",
          Columns.<RegionEquivalence>start()
              .text("kind", RegionEquivalence::kind)
              .region(r -> r.region())
              .count("bands", RegionEquivalence::bands)
              .number("p", RegionEquivalence::p)
              .number("p_holm", RegionEquivalence::adjustedP)
              .word("equivalent", RegionEquivalence::shown),
          study -> study.regionEquivalence().stream());

  static final Result<StudyOutcome> LEVEL_SHIFT =
      Result.of(
          "level-shift.csv",
          Columns.<LevelShift>start()
              .text("kind", LevelShift::kind)
              .count("units", s -> s.mean().units())
              .number("shift_db", s -> s.mean().meanDb())
              .number("ci_low_db", s -> s.mean().lowDb())
              .number("ci_high_db", s -> s.mean().highDb())
              .number("prediction_half_db", LevelShift::predictionHalfDb),
          study -> study.levelShifts().stream());

  static final Result<StudyOutcome> SENSITIVITY =
      Result.of(
          "sensitivity.csv",
          Columns.<Sensitivity>start()
              .text("unit", s -> s.unit().name())
              .text("kind", s -> s.unit().kind())
              .text("fixture", Sensitivity::fixture)
              .count("captures", Sensitivity::captures)
              .number("level_at_1_v_db", Sensitivity::levelAt1VoltDb)
              .number("level_at_1_mw_db", Sensitivity::levelAt1MilliwattDb),
          study -> study.sensitivities().stream());
}
