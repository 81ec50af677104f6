package org.twinrig.regression;

import java.util.ArrayList;
import java.util.List;

/**
 * One rule that may predict a unit: a window ridge of some shape and penalty.
 *
 * <p>The penalty is {@code κ} times the mean square of the window.
 */
record Candidate(WindowShape shape, double kappa) {
  /** The penalties offered, {@code κ}. */
  static final List<Double> KAPPAS = List.of(0.01, 0.03, 0.1, 0.3, 1.0, 3.0);

  /** All candidates of a grid: by window, then pooled bands, then penalty, all rising. */
  static List<Candidate> all(int perOctave) {
    List<Candidate> candidates = new ArrayList<>();
    for (WindowShape shape : WindowShape.all(perOctave)) {
      for (double kappa : KAPPAS) {
        candidates.add(new Candidate(shape, kappa));
      }
    }
    return List.copyOf(candidates);
  }
}
