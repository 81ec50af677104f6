package org.twinrig.screening;

import java.util.Arrays;
import org.apache.commons.math3.distribution.TDistribution;
import org.twinrig.internal.Checks;

/**
 * Limits of a Shewhart chart of single values: {@code centre ± kσ}, the handbook's {@code k} being
 * 3.
 *
 * <p>{@code σ} comes from the moving range, the distance between one value and the next, so that a
 * slow trend does not widen the limits that are to show it.
 */
public record ControlLimits(double centreDb, double sigmaDb, double sigmas) {
  /** Median range of two normal values over σ, {@code √2·Φ⁻¹(0.75)}. */
  private static final double MEDIAN_RANGE = 0.9538725524;

  /** Studies whose check unit is steady and in which a session is named all the same. */
  private static final double FALSE_ALARMS = 0.05;

  /**
   * For every session, what is looked at and may raise a false alarm: on two fixtures the level and
   * the octaves, each as a single value and as a moving average. That an octave counts only beside
   * a neighbour makes up for there being ten.
   */
  private static final int CHANCES = 8;

  /** Weight {@code λ} of the newest value: the handbook's choice for a mix of shifts. */
  private static final double LAMBDA = 0.3;

  /**
   * Scatter of a level that is read to 0.01 dB, {@code 0.01/√12}: nothing is steadier than that.
   */
  private static final double LEAST_SIGMA_DB = 0.01 / Math.sqrt(12);

  public ControlLimits {
    Checks.finite(centreDb, "a centre line");
    Checks.notNegative(sigmaDb, "a standard deviation");
    Checks.positive(sigmas, "a multiple of it");
  }

  /**
   * Limits from medians: {@code median ± k·MMR/0.954} with the median moving range {@code MMR}, for
   * values of which some may be out of control. One odd value moves neither much. The textbook's
   * mean moving range (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2) suits values that
   * are known to be in control: one odd value makes two great ranges, and among fewer than eight
   * values it can never lie outside limits that it widened itself. Common practice; the factor
   * follows from the normal distribution.
   *
   * <p>{@code k} holds for the whole study: with 3, half of all studies name a steady session. By
   * Bonferroni's inequality (Dunn 1961, J. Am. Stat. Assoc. 56:52, from memory) each of the {@code
   * 8n} chances among {@code n} sessions may raise a false alarm in {@code 0.05/(8n)} of studies:
   * {@code k} is Student's {@code t} at {@code 1 - 0.05/(16n)} with {@code n/2 + 1} degrees of
   * freedom. They are our choice: {@code MMR} is known about as badly. With normal values it makes
   * 2 % to 5 % of studies, the more the more neighbouring octaves move together; simulated
   * headphones are tried in studies/drift-proof. Of 2 or more values, in the order of time.
   */
  static ControlLimits byMedianRange(double[] valuesDb) {
    double[] ranges = new double[valuesDb.length - 1];
    Arrays.setAll(ranges, i -> Math.abs(valuesDb[i + 1] - valuesDb[i]));
    return new ControlLimits(
        Scatter.median(valuesDb),
        Math.max(LEAST_SIGMA_DB, Scatter.median(ranges) / MEDIAN_RANGE),
        sigmasOfStudy(valuesDb.length));
  }

  private static double sigmasOfStudy(int sessions) {
    return new TDistribution(null, sessions / 2.0 + 1)
        .inverseCumulativeProbability(1 - FALSE_ALARMS / (2.0 * CHANCES * sessions));
  }

  /** Half-width of the limits: {@code kσ}, dB. */
  public double halfWidthDb() {
    return sigmas * sigmaDb;
  }

  boolean exceededBy(double valueDb) {
    return Math.abs(valueDb - centreDb) > halfWidthDb();
  }

  public double lowerDb() {
    return centreDb - halfWidthDb();
  }

  public double upperDb() {
    return centreDb + halfWidthDb();
  }

  /**
   * Exponentially weighted moving average of values, which finds small lasting shifts that single
   * values hide: {@code z_i = λ·x_i + (1-λ)·z_{i-1}} from {@code z_0} the centre line. Source:
   * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4. A value outside the limits of single
   * values is passed over, {@code z_i = z_{i-1}}, as the average would go on to accuse the sessions
   * after it.
   */
  double[] averagesDb(double[] valuesDb) {
    double[] averages = new double[valuesDb.length];
    double before = centreDb;
    for (int i = 0; i < averages.length; i++) {
      if (!exceededBy(valuesDb[i])) {
        before = LAMBDA * valuesDb[i] + (1 - LAMBDA) * before;
      }
      averages[i] = before;
    }
    return averages;
  }

  /**
   * Half-width of the limits of the average, {@code kσ·√( λ/(2-λ) · (1-(1-λ)^(2i)) )} at value
   * {@code i} from 1. These limits for a starting chart instead of their end value: Montgomery,
   * Introduction to Statistical Quality Control (from memory).
   */
  double averageHalfWidthDb(int number) {
    double settled = LAMBDA / (2 - LAMBDA);
    return halfWidthDb() * Math.sqrt(settled * (1 - Math.pow(1 - LAMBDA, 2.0 * number)));
  }
}
