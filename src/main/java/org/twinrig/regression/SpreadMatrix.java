package org.twinrig.regression;

import java.util.List;

/** The lower triangle of a symmetric matrix, row after row, as a window keeps its spread. */
final class SpreadMatrix {
  private SpreadMatrix() {}

  /** {@code M·v}. */
  static double[] times(List<Double> lowerTriangle, double[] vector) {
    double[] product = new double[vector.length];
    int element = 0;
    for (int r = 0; r < vector.length; r++) {
      for (int s = 0; s <= r; s++) {
        double m = lowerTriangle.get(element++);
        product[r] += m * vector[s];
        if (r != s) {
          product[s] += m * vector[r];
        }
      }
    }
    return product;
  }
}
