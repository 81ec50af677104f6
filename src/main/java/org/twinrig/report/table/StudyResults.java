package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.SessionReview;

/** All tables of a study. */
public final class StudyResults {
  private StudyResults() {}

  /** The tables that every study has, in the order of the manual. */
  public static final List<Result<StudyOutcome>> ALL =
      List.of(
          TransferResults.TRANSFER,
          TransferResults.DIFFERENCES,
          TransferResults.EQUIVALENCE,
          TransferResults.EQUIVALENCE_REGIONS,
          TransferResults.LEVEL_SHIFT,
          TransferResults.SENSITIVITY,
          MarkResults.ZONES,
          MarkResults.STABILITY,
          MarkResults.EDGES,
          ValidationResults.LEFT_OUT,
          ValidationResults.HELD_OUT,
          ValidationResults.UNITS,
          ValidationResults.COVERAGE,
          ValidationResults.RANKS,
          ValidationResults.RANK_CORRELATION,
          MarkResults.RESONANCES,
          MarkResults.SHIFTS,
          MarkResults.FEATURES,
          ErrorResults.BUDGET,
          ErrorResults.REPEATABILITY,
          ErrorResults.SEATINGS,
          ScreeningResults.SCREENING,
          DoubtResults.STUDY);

  /** The transfer band by band, which the report shows in its details. */
  public static Result<StudyOutcome> transfer() {
    return TransferResults.TRANSFER;
  }

  /** Writes them; drift.csv and drift-correction.csv only where there is a check unit. */
  public static void write(Path folder, StudyOutcome outcome) throws IOException {
    for (Result<StudyOutcome> result : ALL) {
      result.write(folder, outcome);
    }
    Optional<SessionReview> review = outcome.sessions();
    if (review.isPresent()) {
      ScreeningResults.DRIFT.write(folder, review.get());
      Optional<DriftCorrection> correction = review.get().correction();
      if (correction.isPresent()) {
        ScreeningResults.DRIFT_CORRECTION.write(folder, correction.get());
      }
    }
  }
}
