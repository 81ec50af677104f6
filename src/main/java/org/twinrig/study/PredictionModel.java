package org.twinrig.study;

/** How one unit's difference is predicted; named as study.yaml writes it. */
public enum PredictionModel {
  /**
   * The mean transfer and what the old graph shows around a band, weighted by what each is worth.
   */
  AVERAGE,
  /** The mean transfer of the kind alone. */
  OFFSET
}
