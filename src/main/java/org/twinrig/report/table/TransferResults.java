package org.twinrig.report.table;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.LevelShift;
import org.twinrig.evidence.RegionEquivalence;
import org.twinrig.evidence.Sensitivity;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.study.PairedUnits;

/** How the fixtures differ: band by band, unit by unit, and where the difference makes none. */
final class TransferResults {
  private TransferResults() {}

  static final Result<StudyOutcome> TRANSFER =
      Result.inKinds(
          "transfer.csv",
          "kind and band",
          Columns.<MarkedBand>start()
              .band(r -> r.band())
              .count("units", r -> r.outcome().units())
              .help("with a level on both fixtures")
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
        .help(
            "mean transfer, new minus old; with fewer than three units this and all up to the mark"
                + " are empty")
        .number("se_db", f -> f.mean().standardErrorDb())
        .help("its standard error")
        .number("ci_low_db", f -> f.mean().lowDb())
        .number("ci_high_db", f -> f.mean().highDb())
        .help("its interval at this band alone")
        .interval("sim_%s_db", f -> f.mean().meanDb(), f -> f.simultaneousHalfDb())
        .word("model", f -> f.prediction().model().word())
        .help(
            "what predicts one unit: *offset*, its old level plus the mean transfer; or *average*, where"
                + " what its old graph shows around the band counts as well")
        .number("offset_weight", f -> f.prediction().offsetWeight())
        .help("how much of the prediction is the offset's, 0 to 1")
        .number("prediction_half_db", f -> f.prediction().halfDb())
        .help("for a graph averaged over as many seatings as in the study")
        .number("unit_sd_db", f -> Math.sqrt(f.mean().tauSquared()))
        .help("between units, seating scatter taken out")
        .number("seat_sd_from_db", f -> root(f.scatter().seatVarianceFrom()))
        .number("seat_sd_to_db", f -> root(f.scatter().seatVarianceTo()))
        .help("between seatings of a unit; empty where no unit was seated twice")
        .number("loo_rms_offset_db", f -> f.prediction().offset().looRmsDb())
        .number("loo_rms_db", f -> f.prediction().errors().looRmsDb())
        .help(
            "root mean square error on units left out in turn: of the offset; of the model, its"
                + " weights found without the unit");
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
              "kind, unit and band with a level on both fixtures",
              Columns.<Paired>start()
                  .text("kind", p -> p.all.kind())
                  .text("unit", p -> p.all.units().get(p.unit))
                  .hz("band_hz", p -> p.all.grid().band(p.band).midHz())
                  .number("from_db", Paired::fromDb)
                  .number("to_db", Paired::toDb)
                  .help(
                      "mean level over accepted seatings and sides, anchored if the study has an"
                          + " anchor")
                  .number("difference_db", p -> p.toDb() - p.fromDb())
                  .count("seatings_from", p -> p.all.from().seatings().get(p.unit).get(p.band))
                  .count("seatings_to", p -> p.all.to().seatings().get(p.unit).get(p.band))
                  .help("how many accepted seatings have a level there"),
              study -> study.kinds().stream().flatMap(k -> paired(k.paired())))
          .remark(
              ". Units with the role *holdout*, and a check unit without the role *fit*, are not in"
                  + " it");

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
          "kind and band with an estimate",
          Columns.<Judged>start()
              .band(r -> r.at.band())
              .count("units", r -> r.at.mean().units())
              .number("offset_db", r -> r.at.mean().meanDb())
              .number("equivalence_db", r -> r.limitDb)
              .help(
                  "the study's limit: a mean transfer within plus or minus that makes no difference")
              .number("p", r -> r.at.p())
              .help("of two one-sided tests against it")
              .interval("tost_%s_db", r -> r.at.mean().meanDb(), r -> r.at.halfDb())
              .help("the interval that goes with them: at 90 % where the confidence is 95 %")
              .interval("sim_%s_db", r -> r.at.mean().meanDb(), r -> r.at.simultaneousHalfDb())
              .help("at the confidence itself")
              .word("equivalent", r -> r.at.alone())
              .help("shown at this band by itself")
              .word("equivalent_at_once", r -> r.at.together())
              .help("shown at all such bands at once"),
          kind -> {
            Equivalence all = kind.evidence().equivalence();
            return all.bands().stream()
                .flatMap(Optional::stream)
                .map(at -> new Judged(all.limitDb(), at));
          });

  static final Result<StudyOutcome> EQUIVALENCE_REGIONS =
      Result.of(
          "equivalence-regions.csv",
          "kind and region in which every band has an estimate",
          Columns.<RegionEquivalence>start()
              .text("kind", RegionEquivalence::kind)
              .region(r -> r.region())
              .count("bands", RegionEquivalence::bands)
              .number("p", RegionEquivalence::p)
              .help("the greatest of its bands")
              .number("p_holm", RegionEquivalence::adjustedP)
              .help("the same adjusted after Holm over all kinds and regions")
              .word("equivalent", RegionEquivalence::shown)
              .help("shown in the whole region, by *p_holm*"),
          study -> study.regionEquivalence().stream());

  static final Result<StudyOutcome> LEVEL_SHIFT =
      Result.<StudyOutcome, LevelShift>of(
              "level-shift.csv",
              "kind with levels known on both fixtures",
              Columns.<LevelShift>start()
                  .text("kind", LevelShift::kind)
                  .count("units", s -> s.mean().units())
                  .help("whose captures all belong to sessions")
                  .number("shift_db", s -> s.mean().meanDb())
                  .help("mean level over the anchor, new minus old")
                  .number("ci_low_db", s -> s.mean().lowDb())
                  .number("ci_high_db", s -> s.mean().highDb())
                  .help("its interval")
                  .number("prediction_half_db", LevelShift::predictionHalfDb)
                  .help("half-width of the interval for one unit, seated as often as in the study"),
              study -> study.levelShifts().stream())
          .remark(
              ". Without rows where the study has no anchor, or fewer than three units of a kind"
                  + " have sessions");

  static final Result<StudyOutcome> SENSITIVITY =
      Result.<StudyOutcome, Sensitivity>of(
          "sensitivity.csv",
          "unit and fixture whose captures all have a session with *drive_v*",
          Columns.<Sensitivity>start()
              .text("unit", s -> s.unit().name())
              .text("kind", s -> s.unit().kind())
              .text("fixture", Sensitivity::fixture)
              .count("captures", Sensitivity::captures)
              .number("level_at_1_v_db", Sensitivity::levelAt1VoltDb)
              .help("mean level from 500 Hz to 1 kHz, dB SPL")
              .number("level_at_1_mw_db", Sensitivity::levelAt1MilliwattDb)
              .help("empty where *impedance_ohm* is not noted"),
          study -> study.sensitivities().stream());
}
