package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.twinrig.band.Band;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Checks;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Anchor;

/**
 * At which bands the mean transfer of a kind is shown to make no difference: old graphs can stand
 * there as they are, as far as the mean of the kind goes.
 *
 * <p>At a band by itself these are {@link #p two one-sided t tests} at level {@code α = 1 -}
 * confidence. Over all bands at once a band counts when the simultaneous interval of {@link
 * org.twinrig.regression.MeanCurve} lies within the limit: that interval misses the truth at no
 * band with probability {@code 1-α}, so that the chance of a single wrong claim anywhere is at most
 * {@code α}. (An interval at {@code 1-2α}, as for a single band, would not do: with many bands the
 * misses on either side add up.)
 *
 * <p>Where no unit differs from any other nothing is shown: copies of one curve agree so.
 *
 * <p>Within the anchor levels are equal because they were made equal: nothing is said there.
 *
 * <p>{@code Δ} in dB, {@code 1-α}, and one verdict per band; nothing where the band has no estimate
 * or is lined up by the anchor.
 */
public record Equivalence(
    String kind, Anchor anchor, double limitDb, double confidence, List<Optional<Verdict>> bands) {

  public Equivalence {
    bands = List.copyOf(bands);
    Checks.positive(limitDb, "the limit of equivalence in dB");
    Checks.fraction(confidence, "confidence");
  }

  /**
   * What was shown at one band. {@code p} of both one-sided tests together; half-width in dB of the
   * interval at confidence {@code 1-2α} that goes with it, and of the one that holds at all bands
   * at once; whether equivalence is shown at this band by itself, and at this and all others of
   * which it is said at once.
   */
  public record Verdict(
      Band band,
      RandomEffects.Result mean,
      double p,
      double halfDb,
      double simultaneousHalfDb,
      boolean alone,
      boolean together) {}

  /** The verdicts of a kind within {@code ±Δ} dB at confidence {@code 1-α}. */
  public static Equivalence of(
      KindEstimate estimate, Anchor anchor, double limitDb, double confidence) {
    List<Optional<Verdict>> bands = new ArrayList<>();
    for (int b = 0; b < estimate.bands().size(); b++) {
      bands.add(
          estimate.bands().get(b) instanceof BandOutcome.Fitted fitted
                  && !anchor.linesUp(fitted.band())
              ? Optional.of(verdict(fitted, estimate.scatters(b), limitDb, confidence))
              : Optional.empty());
    }
    return new Equivalence(estimate.kind(), anchor, limitDb, confidence, bands);
  }

  private static Verdict verdict(
      BandOutcome.Fitted fitted, boolean scatters, double limitDb, double confidence) {
    RandomEffects.Result mean = fitted.mean();
    int freedom = mean.degreesOfFreedom();
    double p = p(mean.meanDb(), mean.standardErrorDb(), freedom, limitDb);
    // Below a confidence of one half 1-2α is no confidence at all.
    double t = Math.max(0, StudentT.oneSided(confidence, freedom));
    return new Verdict(
        fitted.band(),
        mean,
        p,
        t * mean.standardErrorDb(),
        fitted.simultaneousHalfDb(),
        scatters && p < 1 - confidence,
        scatters && Math.abs(mean.meanDb()) + fitted.simultaneousHalfDb() < limitDb);
  }

  /**
   * Whether a mean is shown to lie within a limit on either side of 0: the p value of two one-sided
   * t tests together, the greater of both.
   *
   * <p>With mean {@code m}, standard error {@code SE}, {@code ν} degrees of freedom (above 0, not
   * whole where approximate) and limit {@code Δ}, the hypothesis {@code δ <= -Δ} is tested by
   * {@code (m+Δ)/SE} and {@code δ >= Δ} by {@code (m-Δ)/SE}; both are rejected at level {@code α}
   * exactly when the two-sided interval at confidence {@code 1-2α}, {@code m ± t_{ν,1-α}·SE}, lies
   * within the limit. A mean that is not shown to lie there may still lie there. Without scatter
   * ({@code SE = 0}) the mean is what it is: p is 0 inside the limit, 1 elsewhere.
   *
   * <p>Source: Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657.
   */
  static double p(double meanDb, double standardErrorDb, double degreesOfFreedom, double limitDb) {
    Checks.finite(meanDb, "a mean in dB");
    Checks.notNegative(standardErrorDb, "a standard error in dB");
    Checks.positive(limitDb, "the limit of equivalence in dB");
    // The nearer limit has the greater p.
    double roomDb = limitDb - Math.abs(meanDb);
    if (standardErrorDb == 0) {
      return roomDb > 0 ? 0 : 1;
    }
    return StudentT.upperTail(roomDb / standardErrorDb, degreesOfFreedom);
  }

  /**
   * Over how many octaves something is shown: {@link Verdict#alone} or {@link Verdict#together}.
   */
  public double octaves(Predicate<Verdict> shown) {
    return bands.stream()
        .flatMap(Optional::stream)
        .filter(shown)
        .mapToDouble(v -> v.band().octaves())
        .sum();
  }

  /** Where equivalence is shown at once: runs of adjacent bands, rising in frequency. */
  public List<FrequencyRange> runs() {
    return FrequencyRange.runs(
        bands, v -> v.filter(Verdict::together).isPresent(), v -> v.get().band());
  }
}
