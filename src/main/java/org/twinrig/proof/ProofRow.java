package org.twinrig.proof;

import org.twinrig.internal.Checks;
import org.twinrig.study.PredictionModel;

/**
 * What many studies gave for one number of units, kind, sort of old graph and part of the axis.
 *
 * @param place what the row is about
 * @param studies how many studies
 * @param judgements how many bands of units were judged, under each model
 * @param offset the plain offset's figures
 * @param tried the figures of the model that is tried beside it
 * @param ratio root mean square error of the tried model over that of {@code offset}
 */
public record ProofRow(
    Place place, int studies, long judgements, ByModel offset, ByModel tried, Figure ratio) {

  /**
   * What a row is about.
   *
   * @param units of the kind that entered each fit
   * @param kind the kind
   * @param graphSeatings how many seatings the old graphs average
   * @param span the part of the axis
   */
  public record Place(int units, String kind, int graphSeatings, Span span) {}

  /**
   * Figures under one model.
   *
   * @param rmsDb root mean square error on unseen units, dB
   * @param coverage share of unseen units, band by band, inside their prediction interval
   * @param below share of re-captures that lie below the interval; with an even spread half of what
   *     is not inside
   * @param meanHalfDb mean half-width of the prediction interval, dB
   */
  public record ByModel(Figure rmsDb, Figure coverage, double below, double meanHalfDb) {
    /** Refuses anything that is not a number. */
    public ByModel {
      Checks.notNegative(below, "a share below the interval");
      Checks.notNegative(meanHalfDb, "a mean half-width in dB");
    }
  }

  /**
   * The figures under a model.
   *
   * @param model {@code OFFSET}, or any other for the one that was tried
   * @return its figures
   */
  public ByModel under(PredictionModel model) {
    return model == PredictionModel.OFFSET ? offset : tried;
  }
}
