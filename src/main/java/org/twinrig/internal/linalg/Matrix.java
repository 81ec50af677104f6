package org.twinrig.internal.linalg;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/** A dense matrix of doubles; the only door to the linear-algebra library. */
public final class Matrix {
  private final DMatrixRMaj values;

  private Matrix(DMatrixRMaj values) {
    this.values = values;
  }

  /** A matrix from its equally long rows, which are copied. */
  public static Matrix ofRows(double[][] rows) {
    return new Matrix(new DMatrixRMaj(rows));
  }

  /** The product with a matrix that has as many rows as this has columns. */
  public Matrix times(Matrix right) {
    DMatrixRMaj product = new DMatrixRMaj(values.numRows, right.values.numCols);
    CommonOps_DDRM.mult(values, right.values, product);
    return new Matrix(product);
  }

  /** One element; rows and columns count from 0. */
  public double get(int row, int column) {
    return values.unsafe_get(row, column);
  }
}
