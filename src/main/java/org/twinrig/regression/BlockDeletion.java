package org.twinrig.regression;

import java.util.Arrays;

/**
 * The errors of a ridge fit on units that did not enter it, one unit or two left out at a time, in
 * closed form.
 *
 * <p>A unit has {@code R} stacked rows, the row that counts last; they leave together. With {@code
 * Z} (rows × predictors) such that {@code Z·Zᵀ = W(WᵀW+λI)⁻¹Wᵀ}, residuals {@code e} of the fit on
 * all {@code n} units and an own, unpenalised mean per stacked row, the hat matrix has the blocks
 * {@code H_ij = I/n + Z_i Z_jᵀ}, and the errors on a set {@code S} of units that did not enter are
 * {@code r_S = (I - H_SS)⁻¹ e_S}.
 *
 * <p>One unit: the last element of {@code r_i} is the last element of {@code L_i⁻¹e_i} over that of
 * {@code L_i}, with {@code I - H_ii = L_i L_iᵀ}. Two units: the factor of the first is kept, {@code
 * M = -H_ji L_i⁻ᵀ}, and only {@code K = I - H_jj - M·Mᵀ} is factored anew. All partners {@code j}
 * of a unit go through each step together, one array per element and one number per partner: see
 * {@link Loops} for why. Nothing is allocated after construction.
 *
 * <p>Sources: Cook and Weisberg 1982, Residuals and Influence in Regression, section 3.6 (deletion
 * of several cases); Golub and Van Loan, Matrix Computations, 4th ed., 4.2 (block Cholesky, LDLᵀ).
 */
final class BlockDeletion {
  private final int units;
  private final int rows;
  private final int predictors;

  /** The rows of all units, {@code z[k·R + r][i]}, and their residuals {@code e[r][i]}. */
  private final double[][] z;

  private final double[][] e;

  /** Lower triangles of {@code I - H_ii}: {@code diagonal[triangle(r, s)][i]}. */
  private final double[][] diagonal;

  private final OwnBlock[] own;

  /** M as {@code m[q·R + r][j]}, K as {@code diagonal}, and the right-hand side. */
  private final double[][] m;

  private final double[][] k;
  private final double[][] v;

  /** Reciprocal pivots of K, and one element of its factor. */
  private final double[][] reciprocal;

  private final double[] ratio;

  /**
   * Room for {@code n} units of 3 or more, {@code R} stacked rows a unit and {@code p} predictors.
   */
  BlockDeletion(int units, int rows, int predictors) {
    this.units = units;
    this.rows = rows;
    this.predictors = predictors;
    int triangle = rows * (rows + 1) / 2;
    this.z = new double[predictors * rows][units];
    this.e = new double[rows][units];
    this.diagonal = new double[triangle][units];
    this.own = new OwnBlock[units];
    Arrays.setAll(own, i -> new OwnBlock(rows, predictors));
    this.m = new double[rows * rows][units];
    this.k = new double[triangle][units];
    this.v = new double[rows][units];
    this.reciprocal = new double[rows][units];
    this.ratio = new double[units];
  }

  /** Where {@code z} is to be written, {@code [k·R + r][i]}. */
  double[][] z() {
    return z;
  }

  /** Where the residuals are to be written, {@code [r][i]}. */
  double[][] e() {
    return e;
  }

  /** Factors every unit's own block; call after z and e were written. */
  void prepare() {
    formDiagonal();
    for (int i = 0; i < units; i++) {
      own[i].factor(diagonal, z, e, i);
    }
  }

  /** The error {@code r_i} on a unit left out alone, at the last row, dB. */
  double withoutOne(int i) {
    return own[i].scaledErrors[rows - 1] / own[i].lastPivot();
  }

  /**
   * The errors on a unit and each of its later partners when both are left out.
   *
   * @param i the unit left out with each of {@code j = from..n-1}
   * @param from the first partner; what is found where {@code j = i} means nothing
   * @param onPartner receives at {@code j} the error on {@code j}, dB
   * @param onUnit receives at {@code j} the error on {@code i}, dB
   */
  void withoutTwo(int i, int from, double[] onPartner, double[] onUnit) {
    if (from >= units) {
      return;
    }
    crossBlocks(own[i], from);
    schurComplements(from);
    rightHandSides(own[i], from);
    solve(from);
    int last = rows - 1;
    System.arraycopy(v[last], from, onPartner, from, units - from);
    Arrays.fill(onUnit, from, units, own[i].scaledErrors[last]);
    for (int r = 0; r < rows; r++) {
      Loops.subtractProduct(onUnit, m[last * rows + r], v[r], from, units);
    }
    Loops.multiply(onUnit, 1 / own[i].lastPivot(), from, units);
  }

  private void formDiagonal() {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        double[] to = diagonal[triangle(r, s)];
        Arrays.fill(to, r == s ? 1 - 1.0 / units : 0);
        for (int c = 0; c < predictors; c++) {
          Loops.subtractProduct(to, z[c * rows + r], z[c * rows + s], 0, units);
        }
      }
    }
  }

  /** {@code M = -H_ji L_i⁻ᵀ = -(Z_j (L_i⁻¹Z_i)ᵀ + L_i⁻ᵀ/n)} for every partner. */
  private void crossBlocks(OwnBlock unit, int from) {
    for (int q = 0; q < rows; q++) {
      for (int r = 0; r < rows; r++) {
        double[] to = m[q * rows + r];
        double mean = -unit.inverse[q * rows + r] / units;
        Loops.difference(to, mean, z[r], unit.scaledRows[q][0], from, units);
        subtractRest(to, z, r, unit.scaledRows[q], from);
      }
    }
  }

  private void schurComplements(int from) {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        double[] to = k[triangle(r, s)];
        Loops.difference(to, diagonal[triangle(r, s)], m[r], m[s], from, units);
        int q = 1;
        for (; q + 1 < rows; q += 2) {
          int next = (q + 1) * rows;
          Loops.subtractTwoProducts(
              to, m[q * rows + r], m[q * rows + s], m[next + r], m[next + s], from, units);
        }
        if (q < rows) {
          Loops.subtractProduct(to, m[q * rows + r], m[q * rows + s], from, units);
        }
      }
    }
  }

  private void rightHandSides(OwnBlock unit, int from) {
    for (int r = 0; r < rows; r++) {
      Loops.difference(v[r], e[r], m[r], unit.scaledErrors[0], from, units);
      subtractRest(v[r], m, r, unit.scaledErrors, from);
    }
  }

  /** {@code to -= Σ factors[c]·x[c·R + r]} over all {@code c} but the first. */
  private void subtractRest(double[] to, double[][] x, int r, double[] factors, int from) {
    int c = 1;
    for (; c + 3 < factors.length; c += 4) {
      Loops.subtractFour(to, x, c * rows + r, rows, factors, c, from, units);
    }
    for (; c < factors.length; c++) {
      Loops.subtractScaled(to, x[c * rows + r], factors[c], from, units);
    }
  }

  /** Solves {@code K x = v} for every partner by LDLᵀ, leaving {@code x} in {@code v}. */
  private void solve(int from) {
    for (int c = 0; c < rows; c++) {
      Loops.invert(reciprocal[c], k[triangle(c, c)], from, units);
      for (int r = c + 1; r < rows; r++) {
        Loops.product(ratio, k[triangle(r, c)], reciprocal[c], from, units);
        for (int s = c + 1; s <= r; s++) {
          Loops.subtractProduct(k[triangle(r, s)], ratio, k[triangle(s, c)], from, units);
        }
        Loops.subtractProduct(v[r], ratio, v[c], from, units);
      }
    }
    for (int r = rows - 1; r >= 0; r--) {
      for (int s = r + 1; s < rows; s++) {
        Loops.subtractProduct(v[r], k[triangle(s, r)], v[s], from, units);
      }
      Loops.product(v[r], v[r], reciprocal[r], from, units);
    }
  }

  private static int triangle(int row, int column) {
    return row * (row + 1) / 2 + column;
  }

  /**
   * What one unit's own block {@code I - H_ii = L_i L_iᵀ} gives to every deletion it takes part in:
   * {@code L_i}, {@code L_i⁻¹}, {@code L_i⁻¹Z_i} and {@code L_i⁻¹e_i}.
   */
  private static final class OwnBlock {
    private final int rows;
    private final int predictors;

    /** {@code L_i}, and {@code L_i⁻¹}, row after row; 0 above the diagonal. */
    private final double[] factor;

    private final double[] inverse;

    /** {@code L_i⁻¹Z_i}, rows × predictors, and {@code L_i⁻¹e_i}. */
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

    /**
     * Cholesky factor of {@code I - H_ii} and what is made from it; small, done once per penalty.
     */
    void factor(double[][] diagonal, double[][] z, double[][] e, int i) {
      for (int r = 0; r < rows; r++) {
        for (int s = 0; s <= r; s++) {
          double sum = diagonal[triangle(r, s)][i];
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
}
