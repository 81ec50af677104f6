package org.twinrig.evidence;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.stat.correlation.KendallsCorrelation;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.twinrig.internal.Checks;
import org.twinrig.regression.StudentT;

/**
 * How far two quantities put the same units in the same order.
 *
 * <p>The interval is that of Fisher's {@code z = artanh(r)}, {@code tanh(z ± z_{(1+C)/2}·SE)}, with
 * {@code SE² = (1 + r²/2)/(n-3)} for Spearman's coefficient and {@code SE² = 0.437/(n-4)} for
 * Kendall's, {@code n} counting units. It is an approximation that is rough below a dozen units,
 * and knows nothing of the errors of the two quantities: both lower a coefficient.
 *
 * <p>Sources: Spearman 1904, Am. J. Psychol. 15:72; Kendall 1945, Biometrika 33:239 (tau-b); Bonett
 * and Wright 2000, Psychometrika 65:23 (Spearman's variance); Fieller, Hartley and Pearson 1957,
 * Biometrika 44:470 (Kendall's).
 *
 * <p>The interval is missing with too few units for the variance, or where the order is wholly the
 * same or wholly reversed, which z does not know.
 */
public record RankCorrelation(
    Measure measure, int units, double coefficient, Optional<Interval> interval) {

  public enum Measure {
    /** Of the ranks, tied units sharing the mean of theirs. */
    SPEARMAN("Spearman", 3),
    /** Tau-b: pairs in the same order less pairs in the other, corrected for ties. */
    KENDALL("Kendall tau-b", 4);

    private final String word;

    /** What the variance of z loses of the number of units. */
    private final int lost;

    Measure(String word, int lost) {
      this.word = word;
      this.lost = lost;
    }

    private double coefficient(double[] x, double[] y) {
      return switch (this) {
        case SPEARMAN -> new SpearmansCorrelation().correlation(x, y);
        case KENDALL -> new KendallsCorrelation().correlation(x, y);
      };
    }

    private double variance(double r, int units) {
      double numerator =
          switch (this) {
            case SPEARMAN -> 1 + r * r / 2;
            case KENDALL -> 0.437;
          };
      return numerator / (units - lost);
    }

    /** The coefficient's name: for example {@code Kendall tau-b}. */
    public String word() {
      return word;
    }
  }

  public record Interval(double low, double high) {}

  /**
   * The coefficient of two quantities, one finite number per unit each, in the same order of units;
   * nothing with fewer than two units, or where one quantity is the same on all of them.
   */
  public static Optional<RankCorrelation> of(
      Measure measure, double[] x, double[] y, double confidence) {
    Checks.fraction(confidence, "confidence");
    if (x.length != y.length) {
      throw new IllegalArgumentException("both quantities need the same units");
    }
    if (x.length < 2 || same(x) || same(y)) {
      return Optional.empty();
    }
    double r = Math.max(-1, Math.min(1, measure.coefficient(x, y)));
    return Optional.of(
        new RankCorrelation(measure, x.length, r, interval(measure, x.length, r, confidence)));
  }

  private static boolean same(double[] values) {
    return Arrays.stream(values).allMatch(v -> v == values[0]);
  }

  private static Optional<Interval> interval(
      Measure measure, int units, double r, double confidence) {
    if (units <= measure.lost || Math.abs(r) == 1) {
      return Optional.empty();
    }
    double z = 0.5 * Math.log((1 + r) / (1 - r));
    double half =
        StudentT.twoSided(confidence, Double.POSITIVE_INFINITY)
            * Math.sqrt(measure.variance(r, units));
    return Optional.of(new Interval(Math.tanh(z - half), Math.tanh(z + half)));
  }
}
