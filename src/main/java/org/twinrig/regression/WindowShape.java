package org.twinrig.regression;

import java.util.ArrayList;
import java.util.List;

/**
 * Which bands predict and which are pooled in the fit, in steps of the grid.
 *
 * <p>A step is {@code max(1, N/12)} bands at {@code N} bands per octave, so that a window has at
 * most 13 predictors at any resolution.
 *
 * <p>The window reaches {@code h} steps to either side; the coefficients are fitted on {@code J}
 * further bands to either side.
 */
record WindowShape(int half, int pooled) {
  private static final double[] HALF_OCTAVES = {0, 1.0 / 12, 1.0 / 6, 1.0 / 3, 1.0 / 2};
  private static final double[] POOLED_OCTAVES = {0, 1.0 / 12, 1.0 / 6};

  /** The penalties offered for every shape, {@code κ}, in units of the window's mean square. */
  static final List<Double> KAPPAS = List.of(0.01, 0.03, 0.1, 0.3, 1.0, 3.0);

  /** Bands per step of a grid with so many bands per octave. */
  static int step(int perOctave) {
    return Math.max(1, perOctave / 12);
  }

  /** The shapes of a grid: window rising, then pooled bands; widths that fall together once. */
  static List<WindowShape> all(int perOctave) {
    List<WindowShape> shapes = new ArrayList<>();
    for (double half : HALF_OCTAVES) {
      for (double pooled : POOLED_OCTAVES) {
        WindowShape shape = new WindowShape(steps(half, perOctave), steps(pooled, perOctave));
        if (!shapes.contains(shape)) {
          shapes.add(shape);
        }
      }
    }
    return List.copyOf(shapes);
  }

  /** Whole steps within a width; a hair is added so that 12·(1/12) is 1. */
  private static int steps(double octaves, int perOctave) {
    return (int) Math.floor(octaves * perOctave / step(perOctave) + 1e-9);
  }

  /** {@code p}, predictors outside the grid included. */
  int predictors() {
    return 2 * half + 1;
  }

  /** Width of so many steps in octaves. */
  static double octaves(int steps, int perOctave) {
    return (double) steps * step(perOctave) / perOctave;
  }
}
