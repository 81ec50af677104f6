package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.screening.KindScreening;
import org.twinrig.screening.SessionReview;
import org.twinrig.screening.UnitVerdict;
import org.twinrig.screening.Verdict;

/**
 * Writes all tables of a study: transfer.csv, differences.csv, zones.csv and those of what carries
 * them; drift.csv and drift-correction.csv only where there is a check unit.
 */
public final class StudyTables {
  private final StudyOutcome outcome;

  /**
   * The tables of a study.
   *
   * @param outcome what it found
   */
  public StudyTables(StudyOutcome outcome) {
    this.outcome = outcome;
  }

  /**
   * Writes all tables.
   *
   * @param folder an existing folder
   * @throws IOException when one cannot be written
   */
  public void write(Path folder) throws IOException {
    transfer().write(folder.resolve("transfer.csv"));
    DifferencesTable.of(outcome).write(folder.resolve("differences.csv"));
    zones().write(folder.resolve("zones.csv"));
    StabilityTables.bands(outcome).write(folder.resolve("mark-stability.csv"));
    StabilityTables.edges(outcome).write(folder.resolve("zone-edges.csv"));
    ValidationTables.leftOut(outcome).write(folder.resolve("validation.csv"));
    ValidationTables.heldOut(outcome).write(folder.resolve("validation-holdout.csv"));
    ValidationTables.units(outcome).write(folder.resolve("validation-units.csv"));
    ValidationTables.coverage(outcome).write(folder.resolve("coverage.csv"));
    BudgetTable.of(outcome.kinds()).write(folder.resolve("error-budget.csv"));
    RepeatabilityTables.scatter(outcome).write(folder.resolve("repeatability.csv"));
    RepeatabilityTables.seatings(outcome).write(folder.resolve("seatings.csv"));
    FeatureTables.resonances(outcome).write(folder.resolve("resonances.csv"));
    FeatureTables.shifts(outcome).write(folder.resolve("resonance-shifts.csv"));
    FeatureTables.features(outcome).write(folder.resolve("features.csv"));
    EquivalenceTable.of(outcome).write(folder.resolve("equivalence.csv"));
    EquivalenceTable.ofRegions(outcome).write(folder.resolve("equivalence-regions.csv"));
    RankTables.ranks(outcome).write(folder.resolve("ranks.csv"));
    RankTables.correlations(outcome).write(folder.resolve("rank-correlation.csv"));
    screening().write(folder.resolve("screening.csv"));
    if (outcome.sessions().isPresent()) {
      SessionReview review = outcome.sessions().get();
      SessionTables.drift(review).write(folder.resolve("drift.csv"));
      if (review.correction().isPresent()) {
        SessionTables.correction(review.correction().get())
            .write(folder.resolve("drift-correction.csv"));
      }
    }
  }

  private ResultTable transfer() {
    ResultTable table =
        new ResultTable(
            ("kind,band_hz,lower_hz,upper_hz,units,offset_db,se_db,ci_low_db,ci_high_db,"
                    + "sim_low_db,sim_high_db,model,window_octaves,borrow_octaves,shrinkage,"
                    + "prediction_half_db,unit_sd_db,seat_sd_from_db,seat_sd_to_db,"
                    + "loo_rms_offset_db,loo_rms_db,mark,reasons")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (MarkedBand marked : kind.transfer().bands()) {
        table
            .text(kind.kind())
            .hz(marked.band().midHz())
            .hz(marked.band().lowerHz())
            .hz(marked.band().upperHz())
            .count(marked.outcome().units());
        if (marked.outcome() instanceof BandOutcome.Fitted fitted) {
          estimate(table, fitted);
        } else {
          table.empty(16);
        }
        table.word(marked.mark().word()).word(Reason.join(marked.reasons())).endRow();
      }
    }
    return table;
  }

  private static void estimate(ResultTable table, BandOutcome.Fitted fitted) {
    RandomEffects.Result mean = fitted.mean();
    table
        .number(mean.meanDb())
        .number(mean.standardErrorDb())
        .number(mean.lowDb())
        .number(mean.highDb())
        .number(mean.meanDb() - fitted.simultaneousHalfDb())
        .number(mean.meanDb() + fitted.simultaneousHalfDb())
        .word(fitted.prediction().model().word());
    fitted
        .prediction()
        .window()
        .ifPresentOrElse(
            window ->
                table
                    .number(window.halfOctaves())
                    .number(window.borrowOctaves())
                    .number(window.shrinkage()),
            () -> table.empty(3));
    table
        .number(fitted.prediction().halfDb())
        .number(Math.sqrt(mean.tauSquared()))
        .number(root(fitted.scatter().seatVarianceFrom()))
        .number(root(fitted.scatter().seatVarianceTo()))
        .number(fitted.prediction().looRmsOffsetDb())
        .number(fitted.prediction().looRmsDb());
  }

  private static OptionalDouble root(OptionalDouble variance) {
    return variance.isPresent()
        ? OptionalDouble.of(Math.sqrt(variance.getAsDouble()))
        : OptionalDouble.empty();
  }

  private ResultTable zones() {
    ResultTable table = new ResultTable("kind,from_hz,to_hz,octaves,mark,reasons".split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (Zone zone : kind.zones()) {
        table
            .text(kind.kind())
            .hz(zone.fromHz())
            .hz(zone.toHz())
            .number(zone.octaves())
            .word(zone.mark().word())
            .word(Reason.join(zone.reasons()))
            .endRow();
      }
    }
    return table;
  }

  private ResultTable screening() {
    ResultTable table =
        new ResultTable("unit,fixture,side,seating,file,finding,value,limit,excluded".split(","));
    for (CaptureEntry entry : outcome.study().captures()) {
      if (entry.excludedByLab()) {
        capture(table, entry);
        table.text("left out by the lab: " + entry.exclude()).empty(2).word("lab").endRow();
      }
    }
    for (Verdict verdict : outcome.screening().verdicts()) {
      capture(table, verdict.capture());
      table
          .word(verdict.finding().word())
          .number(verdict.value())
          .number(verdict.limit())
          .word(verdict.excluded() ? "rule" : "no")
          .endRow();
    }
    for (KindScreening kind : outcome.screening().kinds()) {
      for (UnitVerdict verdict : kind.verdicts()) {
        table.text(verdict.unit()).empty(4).word(UnitVerdict.WORD);
        table.number(verdict.value()).number(verdict.limit()).word("no").endRow();
      }
    }
    return table;
  }

  private static void capture(ResultTable table, CaptureEntry entry) {
    table
        .text(entry.unit())
        .text(entry.fixture())
        .word(entry.side().name())
        .count(entry.seating())
        .text(entry.file());
  }
}
