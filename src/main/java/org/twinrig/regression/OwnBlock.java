package org.twinrig.regression;

/**
 * What one unit's own block {@code I - H_ii = L_i L_iᵀ} gives to every deletion it takes part in,
 * see {@link BlockDeletion}: {@code L_i}, {@code L_i⁻¹}, {@code L_i⁻¹Z_i} and {@code L_i⁻¹e_i}.
 */
final class OwnBlock {
  private final int rows;
  private final int predictors;
  private final double[] factor;
  private final double[] inverse;
  private final double[][] scaledRows;
  private final double[] scaledErrors;

  OwnBlock(int rows, int predictors) {
    this.rows = rows;
    this.predictors = predictors;
    this.factor = new double[rows * rows];
    this.inverse = new double[rows * rows];
    this.scaledRows = new double[rows][predictors];
    this.scaledErrors = new double[rows];
  }

  /** The last element of {@code L_i}. */
  double lastPivot() {
    return factor[rows * rows - 1];
  }

  /** {@code L_i⁻¹}, an element at or below the diagonal; 0 above it. */
  double inverse(int row, int column) {
    return inverse[row * rows + column];
  }

  /** {@code L_i⁻¹Z_i}, rows × predictors. */
  double[][] scaledRows() {
    return scaledRows;
  }

  /** {@code L_i⁻¹e_i}. */
  double[] scaledErrors() {
    return scaledErrors;
  }

  /** Cholesky factor of {@code I - H_ii} and what is made from it; small, done once per penalty. */
  void factor(double[][] diagonal, double[][] z, double[][] e, int i) {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        double sum = diagonal[BlockDeletion.triangle(r, s)][i];
        for (int q = 0; q < s; q++) {
          sum -= factor[r * rows + q] * factor[s * rows + q];
        }
        factor[r * rows + s] = r == s ? Math.sqrt(sum) : sum / factor[s * rows + s];
      }
    }
    invert();
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < predictors; c++) {
        scaledRows[r][c] = scaled(r, z, c * rows, i);
      }
      scaledErrors[r] = scaled(r, e, 0, i);
    }
  }

  private void invert() {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        double sum = r == s ? 1 : 0;
        for (int q = s; q < r; q++) {
          sum -= factor[r * rows + q] * inverse[q * rows + s];
        }
        inverse[r * rows + s] = sum / factor[r * rows + r];
      }
    }
  }

  /** One row of {@code L_i⁻¹} times a unit's column. */
  private double scaled(int r, double[][] columns, int first, int i) {
    double sum = 0;
    for (int q = 0; q <= r; q++) {
      sum += inverse[r * rows + q] * columns[first + q][i];
    }
    return sum;
  }
}
