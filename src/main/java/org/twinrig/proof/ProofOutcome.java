package org.twinrig.proof;

import java.util.List;
import org.twinrig.study.PredictionModel;

/**
 * What a proof gave.
 *
 * @param plan what was tried
 * @param confidence the level every interval states
 * @param rows by number of units, seatings of the old graph, kind and span: the regions, then
 *     {@link Span#ALL_BANDS} and {@link Span#MEAN_OF_REGIONS}
 */
public record ProofOutcome(ProofPlan plan, double confidence, List<ProofRow> rows) {

  /** Copies the rows. */
  public ProofOutcome {
    rows = List.copyOf(rows);
  }

  /**
   * Whether the stated level is kept.
   *
   * @param model {@code OFFSET} or the one that was tried
   * @return the judgement
   */
  public Promise promise(PredictionModel model) {
    return Promise.judged(rows, model);
  }
}
