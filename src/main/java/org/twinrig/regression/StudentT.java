package org.twinrig.regression;

import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/** Quantiles of Student's t distribution. */
public final class StudentT {
  private StudentT() {}

  /**
   * Quantiles {@link #twoSided} of one confidence by degrees of freedom: many bands share a few of
   * these. For any number of threads.
   */
  public static final class Quantiles {
    private final double confidence;
    private final ConcurrentHashMap<Double, Double> known = new ConcurrentHashMap<>();

    /** The quantiles of a confidence. */
    public Quantiles(double confidence) {
      this.confidence = confidence;
    }

    /** {@code t} at degrees of freedom above 0. */
    public double at(double degreesOfFreedom) {
      // Looked up first without the lock that computeIfAbsent may take: threads ask all the time.
      Double found = known.get(degreesOfFreedom);
      return found != null
          ? found
          : known.computeIfAbsent(degreesOfFreedom, f -> twoSided(confidence, f));
    }
  }

  /**
   * {@code t} of a two-sided interval, {@code P(|T| <= t) = confidence}; degrees of freedom above
   * 0, not whole where they are approximate.
   */
  public static double twoSided(double confidence, double degreesOfFreedom) {
    double upper = (1 + confidence) / 2;
    // The generator is left out: nothing is drawn.
    return Double.isInfinite(degreesOfFreedom)
        ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(upper)
        : new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(upper);
  }

  /** {@code t} of a one-sided interval, {@code P(T <= t) = confidence}. */
  public static double oneSided(double confidence, double degreesOfFreedom) {
    return new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(confidence);
  }

  /** How often chance alone goes as high: {@code P(T >= t)} for any {@code t}, also infinite. */
  public static double upperTail(double t, double degreesOfFreedom) {
    // Of the negative, so that a small share keeps its digits.
    return Double.isInfinite(t)
        ? (t > 0 ? 0 : 1)
        : new TDistribution(null, degreesOfFreedom).cumulativeProbability(-t);
  }
}
