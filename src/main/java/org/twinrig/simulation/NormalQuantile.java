package org.twinrig.simulation;

/**
 * Quantile of the standard normal distribution after Wichura, Algorithm AS 241 (PPND7), Applied
 * Statistics 37 (1988), 477-484: relative accuracy about 1e-7.
 */
final class NormalQuantile {
  private NormalQuantile() {}

  /** {@code z} with {@code Φ(z) = probability}, which lies strictly between 0 and 1. */
  static double of(double probability) {
    double q = probability - 0.5;
    if (Math.abs(q) <= 0.425) {
      double r = 0.180625 - q * q;
      return q
          * (((59.109374720 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)
          / (((67.187563600 * r + 78.757757664) * r + 17.895169469) * r + 1);
    }
    double tail = Math.sqrt(-StrictMath.log(q < 0 ? probability : 1 - probability));
    return Math.copySign(tail <= 5 ? near(tail - 1.6) : far(tail - 5), q);
  }

  private static double near(double r) {
    return (((0.17023821103 * r + 1.3067284816) * r + 2.7568153900) * r + 1.4234372777)
        / ((0.12021132975 * r + 0.73700164250) * r + 1);
  }

  private static double far(double r) {
    return (((0.017337203997 * r + 0.42868294337) * r + 3.0812263860) * r + 6.6579051150)
        / ((0.012258202635 * r + 0.24197894225) * r + 1);
  }
}
