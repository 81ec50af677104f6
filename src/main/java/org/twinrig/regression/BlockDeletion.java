package org.twinrig.regression;

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
 * of a unit go through each step together, in loops over contiguous numbers that the compiler turns
 * into vector instructions; nothing is allocated after construction.
 *
 * <p>Sources: Cook and Weisberg 1982, Residuals and Influence in Regression, section 3.6 (deletion
 * of several cases); Golub and Van Loan, Matrix Computations, 4th ed., 4.2 (block Cholesky, LDLᵀ).
 */
final class BlockDeletion {
  private final int units;
  private final int rows;
  private final int predictors;

  /** {@code z[(r·p + k)·n + i]}: the rows of all units, one column after the other. */
  private final double[] z;

  /** {@code e[r·n + i]}. */
  private final double[] e;

  /** Lower triangles of {@code I - H_ii}: {@code diagonal[triangle(r, s)·n + i]}. */
  private final double[] diagonal;

  /** {@code L_i}, {@code L_i⁻¹}, {@code L_i⁻¹Z_i} and {@code L_i⁻¹e_i}, unit after unit. */
  private final double[] factor;

  private final double[] inverse;
  private final double[] scaledRows;
  private final double[] scaledErrors;

  /** One number per partner and element of M, K and the right-hand side. */
  private final double[] m;

  private final double[] k;
  private final double[] v;

  /** Reciprocal pivots of K, and one row of its factor. */
  private final double[] reciprocal;

  private final double[] ratio;

  /**
   * Room for one shape of problem.
   *
   * @param units {@code n}, 3 or more
   * @param rows {@code R}, stacked rows of a unit
   * @param predictors {@code p}
   */
  BlockDeletion(int units, int rows, int predictors) {
    this.units = units;
    this.rows = rows;
    this.predictors = predictors;
    this.z = new double[rows * predictors * units];
    this.e = new double[rows * units];
    int triangle = rows * (rows + 1) / 2;
    this.diagonal = new double[triangle * units];
    this.factor = new double[rows * rows * units];
    this.inverse = new double[rows * rows * units];
    this.scaledRows = new double[rows * predictors * units];
    this.scaledErrors = new double[rows * units];
    this.m = new double[rows * rows * units];
    this.k = new double[triangle * units];
    this.v = new double[rows * units];
    this.reciprocal = new double[rows * units];
    this.ratio = new double[units];
  }

  /** Where {@code z} is to be written, {@code [(r·p + k)·n + i]}. */
  double[] z() {
    return z;
  }

  /** Where the residuals are to be written, {@code [r·n + i]}. */
  double[] e() {
    return e;
  }

  /** Factors every unit's own block; call after z and e were written. */
  void prepare() {
    formDiagonal();
    for (int i = 0; i < units; i++) {
      factorOwnBlock(i);
    }
  }

  /**
   * The error on a unit left out alone.
   *
   * @param i the unit
   * @return {@code r_i} at the last row, dB
   */
  double withoutOne(int i) {
    return scaledErrors[i * rows + rows - 1] / factor[(i * rows + rows) * rows - 1];
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
    crossBlocks(i, from);
    schurComplements(from);
    rightHandSides(i, from);
    solve(from);
    int last = rows - 1;
    System.arraycopy(v, last * units + from, onPartner, from, units - from);
    double own = scaledErrors[i * rows + last];
    double scale = 1 / factor[(i * rows + rows) * rows - 1];
    java.util.Arrays.fill(onUnit, from, units, own);
    for (int r = 0; r < rows; r++) {
      subtractProduct(onUnit, 0, m, (r * rows + last) * units, v, r * units, from, units);
    }
    multiply(onUnit, scale, from, units);
  }

  private void formDiagonal() {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        int to = triangle(r, s) * units;
        java.util.Arrays.fill(diagonal, to, to + units, r == s ? 1 - 1.0 / units : 0);
        for (int c = 0; c < predictors; c++) {
          subtractProduct(
              diagonal,
              to,
              z,
              (r * predictors + c) * units,
              z,
              (s * predictors + c) * units,
              0,
              units);
        }
      }
    }
  }

  /** Cholesky factor of {@code I - H_ii} and what is made from it; small, done once per unit. */
  private void factorOwnBlock(int i) {
    int at = i * rows * rows;
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        double sum = diagonal[triangle(r, s) * units + i];
        for (int q = 0; q < s; q++) {
          sum -= factor[at + r * rows + q] * factor[at + s * rows + q];
        }
        factor[at + r * rows + s] = r == s ? Math.sqrt(sum) : sum / factor[at + s * rows + s];
      }
    }
    for (int r = 0; r < rows; r++) {
      double pivot = factor[at + r * rows + r];
      for (int s = 0; s <= r; s++) {
        double sum = r == s ? 1 : 0;
        for (int q = s; q < r; q++) {
          sum -= factor[at + r * rows + q] * inverse[at + q * rows + s];
        }
        inverse[at + r * rows + s] = sum / pivot;
      }
    }
    for (int r = 0; r < rows; r++) {
      for (int c = 0; c < predictors; c++) {
        double sum = 0;
        for (int q = 0; q <= r; q++) {
          sum += inverse[at + r * rows + q] * z[(q * predictors + c) * units + i];
        }
        scaledRows[(i * rows + r) * predictors + c] = sum;
      }
      double sum = 0;
      for (int q = 0; q <= r; q++) {
        sum += inverse[at + r * rows + q] * e[q * units + i];
      }
      scaledErrors[i * rows + r] = sum;
    }
  }

  /** {@code M = -H_ji L_i⁻ᵀ = -(Z_j (L_i⁻¹Z_i)ᵀ + L_i⁻ᵀ/n)} for every partner. */
  private void crossBlocks(int i, int from) {
    for (int r = 0; r < rows; r++) {
      for (int q = 0; q < rows; q++) {
        int to = (r * rows + q) * units;
        java.util.Arrays.fill(
            m, to + from, to + units, -inverse[(i * rows + q) * rows + r] / units);
        int left = (i * rows + q) * predictors;
        int c = 0;
        for (; c + 3 < predictors; c += 4) {
          int at = (r * predictors + c) * units;
          subtractFour(m, to, z, at, units, scaledRows, left + c, from);
        }
        for (; c < predictors; c++) {
          int at = (r * predictors + c) * units;
          subtractScaled(m, to, z, at, scaledRows[left + c], from, units);
        }
      }
    }
  }

  private void schurComplements(int from) {
    for (int r = 0; r < rows; r++) {
      for (int s = 0; s <= r; s++) {
        int to = triangle(r, s) * units;
        System.arraycopy(diagonal, to + from, k, to + from, units - from);
        int left = r * rows * units;
        int right = s * rows * units;
        int q = 0;
        for (; q + 1 < rows; q += 2) {
          subtractTwoProducts(k, to, m, left + q * units, right + q * units, from, units);
        }
        if (q < rows) {
          subtractProduct(k, to, m, left + q * units, m, right + q * units, from, units);
        }
      }
    }
  }

  private void rightHandSides(int i, int from) {
    for (int r = 0; r < rows; r++) {
      System.arraycopy(e, r * units + from, v, r * units + from, units - from);
      for (int q = 0; q < rows; q++) {
        double y = scaledErrors[i * rows + q];
        subtractScaled(v, r * units, m, (r * rows + q) * units, y, from, units);
      }
    }
  }

  /** Solves {@code K x = v} for every partner by LDLᵀ, leaving {@code x} in {@code v}. */
  private void solve(int from) {
    for (int c = 0; c < rows; c++) {
      invert(reciprocal, c * units, k, triangle(c, c) * units, from, units);
      for (int r = c + 1; r < rows; r++) {
        product(ratio, k, triangle(r, c) * units, reciprocal, c * units, from, units);
        for (int s = c + 1; s <= r; s++) {
          subtractProduct(
              k, triangle(r, s) * units, ratio, 0, k, triangle(s, c) * units, from, units);
        }
        subtractProduct(v, r * units, ratio, 0, v, c * units, from, units);
      }
    }
    for (int r = rows - 1; r >= 0; r--) {
      for (int s = r + 1; s < rows; s++) {
        subtractProduct(v, r * units, k, triangle(s, r) * units, v, s * units, from, units);
      }
      scale(v, r * units, reciprocal, r * units, from, units);
    }
  }

  private static int triangle(int row, int column) {
    return row * (row + 1) / 2 + column;
  }

  private static void subtractFour(
      double[] to, int t, double[] x, int at, int stride, double[] factors, int f, int from) {
    double a = factors[f];
    double b = factors[f + 1];
    double c = factors[f + 2];
    double d = factors[f + 3];
    int second = at + stride;
    int third = second + stride;
    int fourth = third + stride;
    for (int j = from; j < stride; j++) {
      to[t + j] -= a * x[at + j] + b * x[second + j] + c * x[third + j] + d * x[fourth + j];
    }
  }

  private static void subtractScaled(
      double[] to, int t, double[] x, int at, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[t + j] -= factor * x[at + j];
    }
  }

  private static void subtractProduct(
      double[] to, int t, double[] left, int l, double[] right, int r, int from, int end) {
    for (int j = from; j < end; j++) {
      to[t + j] -= left[l + j] * right[r + j];
    }
  }

  private static void subtractTwoProducts(
      double[] to, int t, double[] x, int left, int right, int from, int stride) {
    int nextLeft = left + stride;
    int nextRight = right + stride;
    for (int j = from; j < stride; j++) {
      to[t + j] -= x[left + j] * x[right + j] + x[nextLeft + j] * x[nextRight + j];
    }
  }

  private static void product(
      double[] to, double[] left, int l, double[] right, int r, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] = left[l + j] * right[r + j];
    }
  }

  private static void scale(double[] to, int t, double[] by, int b, int from, int end) {
    for (int j = from; j < end; j++) {
      to[t + j] *= by[b + j];
    }
  }

  private static void invert(double[] to, int t, double[] x, int at, int from, int end) {
    for (int j = from; j < end; j++) {
      to[t + j] = 1 / x[at + j];
    }
  }

  private static void multiply(double[] to, double factor, int from, int end) {
    for (int j = from; j < end; j++) {
      to[j] *= factor;
    }
  }
}
