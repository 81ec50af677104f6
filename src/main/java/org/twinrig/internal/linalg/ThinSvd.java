package org.twinrig.internal.linalg;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.SingularOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.QRDecomposition;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * The thin singular value decomposition {@code W = U·diag(σ)·Vᵀ} of a matrix with {@code m} rows
 * and {@code p} columns.
 *
 * <p>Any shape is taken: with fewer rows than columns, or columns that depend on each other, the
 * last singular values are 0 and what belongs to them carries no weight in a fit.
 *
 * <p>The matrix is first made triangular, {@code W = QR}, and only {@code R} (columns × columns) is
 * decomposed: directions that a long matrix holds only weakly keep four digits more than when its
 * columns and rows are reduced together (Wampler's polynomials), and fewer numbers are turned.
 *
 * <p>Source: Chan 1982, ACM Trans. Math. Softw. 8:72 (QR before the decomposition); Golub and Van
 * Loan, Matrix Computations, 4th ed., 8.6.3.
 */
public final class ThinSvd {
  private final int rows;
  private final int columns;
  private final double[] singularValues;
  private final double[] left;
  private final double[] right;

  private ThinSvd(int rows, int columns, double[] singularValues, double[] left, double[] right) {
    this.rows = rows;
    this.columns = columns;
    this.singularValues = singularValues;
    this.left = left;
    this.right = right;
  }

  /**
   * Decomposes a matrix of finite elements, given row after row.
   *
   * @param rows {@code m}, 1 or more
   * @param columns {@code p}, 1 or more
   */
  public static ThinSvd of(double[] rowMajor, int rows, int columns) {
    // Zero rows change neither σ nor V, and make every matrix at least as tall as wide.
    int tall = Math.max(rows, columns);
    DMatrixRMaj w = new DMatrixRMaj(tall, columns);
    System.arraycopy(rowMajor, 0, w.data, 0, rows * columns);
    QRDecomposition<DMatrixRMaj> qr = DecompositionFactory_DDRM.qr(tall, columns);
    qr.decompose(w);
    DMatrixRMaj q = qr.getQ(null, true);
    SingularValueDecomposition_F64<DMatrixRMaj> svd =
        DecompositionFactory_DDRM.svd(columns, columns, true, true, true);
    if (!svd.decompose(qr.getR(null, true))) {
      throw new IllegalArgumentException("the matrix holds numbers that are not finite");
    }
    DMatrixRMaj turn = svd.getU(null, false);
    DMatrixRMaj v = svd.getV(null, false);
    double[] sigma = svd.getSingularValues();
    SingularOps_DDRM.descendingOrder(turn, false, sigma, columns, v, false);
    DMatrixRMaj u = new DMatrixRMaj(tall, columns);
    CommonOps_DDRM.mult(q, turn, u);
    return new ThinSvd(rows, columns, sigma, u.data, v.data);
  }

  /** Number of columns {@code p}: 1 or more. */
  public int columns() {
    return columns;
  }

  /** The singular value {@code σ_k}, 0 or more; falling from {@code k = 0}. */
  public double sigma(int k) {
    return singularValues[k];
  }

  /** An element of {@code U}; rows and {@code k} count from 0. */
  public double u(int row, int k) {
    return left[row * columns + k];
  }

  /** An element of {@code V}; columns and {@code k} count from 0. */
  public double v(int column, int k) {
    return right[column * columns + k];
  }

  /**
   * Ridge coefficients, one per column, {@code β = V·diag(σ/(σ²+λ))·Uᵀ·y} for one response per row
   * and a penalty {@code λ} of 0 or more; with {@code λ = 0} those of least squares, of least
   * length where columns depend on each other.
   */
  public double[] ridge(double[] y, double lambda) {
    double[] beta = new double[columns];
    double negligible = columns * Math.ulp(1.0) * singularValues[0];
    for (int k = 0; k < columns; k++) {
      double sigma = singularValues[k];
      if (sigma > negligible) {
        double projected = 0;
        for (int r = 0; r < rows; r++) {
          projected += u(r, k) * y[r];
        }
        double weight = projected * sigma / (sigma * sigma + lambda);
        for (int c = 0; c < columns; c++) {
          beta[c] += v(c, k) * weight;
        }
      }
    }
    return beta;
  }
}
