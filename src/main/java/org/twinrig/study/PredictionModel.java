package org.twinrig.study;

/** How one unit's difference is predicted; named as study.yaml writes it. */
public enum PredictionModel {
  /** Offset or window, chosen band by band; the window only where it gains. */
  AUTO,
  /** The mean transfer of the kind alone. */
  OFFSET,
  /** A ridge regression on the neighbouring bands of the old fixture. */
  WINDOW,
  /** All windows and the offset, weighted by how well each does on units left out. */
  AVERAGE
}
