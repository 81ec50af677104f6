package org.twinrig.study;

/** How one unit's difference is predicted; named as study.yaml writes it. */
public enum PredictionModel {
  /** The best model that is offered, chosen band by band. */
  AUTO,
  /** The mean transfer of the kind alone. */
  OFFSET,
  /** A ridge regression on the neighbouring bands of the old fixture. */
  WINDOW
}
