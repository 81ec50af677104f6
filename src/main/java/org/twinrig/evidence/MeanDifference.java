package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Satterthwaite;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.SignFlipInterval;
import org.twinrig.regression.StudentT;
import org.twinrig.study.BandSample;
import org.twinrig.study.FrequencyRange;
import org.twinrig.study.PairedUnits;

/**
 * How the mean transfers of one kind in two studies of the same fixtures differ, band by band:
 * whether they are shown to differ, and whether they are shown to be as good as the same.
 *
 * <p>With means {@code δ̂_1}, {@code δ̂_2} and their standard errors, {@code D = δ̂_1 - δ̂_2},
 * {@code SE² = SE_1² + SE_2²} on {@code ν = SE⁴/(SE_1⁴/(n_1-1) + SE_2⁴/(n_2-1))} degrees of
 * freedom. The interval of a band by itself is {@code D ± t_ν·SE}; that of all bands of the kind at
 * once has the half-width {@code min(q, t_{ν, 1-α/(2·bands)})·SE} with {@code q} of {@link
 * SignFlipInterval#ofDifference}, never below the pointwise one. Means are called different where
 * the interval of all bands leaves out 0: of two studies of one truth, at most {@code α} are called
 * different anywhere in a kind. They are called equivalent at all bands at once where that interval
 * lies within {@code ±Δ}, and alone by {@link TwoOneSidedTests}. Different and equivalent may both
 * hold: a small difference, well known. Where neither holds nothing is shown.
 *
 * <p>Assumed: the studies are independent. Where both hold the same specimens the interval is wider
 * than need be. Each pair of studies and each kind is a family of its own.
 *
 * <p>Sources: Welch 1947, Biometrika 34:28; Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657.
 *
 * <p>{@code Δ} in dB, {@code 1-α}, and one verdict per band; nothing where either study has no
 * estimate, or no unit that differs from any other.
 */
public record MeanDifference(
    String kind, double limitDb, double confidence, List<Optional<Verdict>> bands) {

  public MeanDifference {
    bands = List.copyOf(bands);
    Checks.positive(limitDb, "the limit of equivalence in dB");
    Checks.fraction(confidence, "confidence");
  }

  /** One study's answer about a kind. */
  public record Side(PairedUnits paired, KindEstimate estimate) {}

  /** How to judge: {@code Δ} in dB, {@code 1-α}, and the seed of the sign patterns. */
  public record Terms(double limitDb, double confidence, long seed) {}

  /**
   * What was found at one band: {@code D} and {@code SE} in dB, {@code ν}, half-width in dB of the
   * band's own interval and of the one that holds at all bands at once; whether the means are shown
   * to differ at all bands at once, and to be equivalent at this band by itself and at all at once.
   */
  public record Verdict(
      Band band,
      double differenceDb,
      double standardErrorDb,
      double degreesOfFreedom,
      double halfDb,
      double simultaneousHalfDb,
      boolean different,
      boolean equivalentAlone,
      boolean equivalent) {
    public Verdict {
      Checks.finite(differenceDb, "a difference of means in dB");
      Checks.notNegative(standardErrorDb, "a standard error in dB");
      Checks.notNegative(halfDb, "a half-width in dB");
      Checks.notNegative(simultaneousHalfDb, "a simultaneous half-width in dB");
    }
  }

  /** Compares two studies of the same kind on the same bands. */
  public static MeanDifference of(Side first, Side second, Terms terms) {
    if (!first.estimate.grid().equals(second.estimate.grid())
        || !first.estimate.kind().equals(second.estimate.kind())) {
      throw new IllegalArgumentException("only the same kind on the same bands can be compared");
    }
    List<Optional<Welch>> compared =
        IntStream.range(0, first.estimate.bands().size())
            .mapToObj(
                b ->
                    fitted(first, b)
                        .flatMap(one -> fitted(second, b).map(two -> Welch.of(one, two))))
            .toList();
    long fitted = compared.stream().flatMap(Optional::stream).count();
    double q =
        fitted == 0
            ? 0
            : new SignFlipInterval(terms.confidence, terms.seed)
                .ofDifference(differences(first), differences(second));
    List<Optional<Verdict>> verdicts = new ArrayList<>();
    for (int b = 0; b < compared.size(); b++) {
      Band band = first.estimate.bands().get(b).band();
      verdicts.add(compared.get(b).map(welch -> verdict(band, welch, q, fitted, terms)));
    }
    return new MeanDifference(first.estimate.kind(), terms.limitDb, terms.confidence, verdicts);
  }

  public double octaves(Predicate<Verdict> found) {
    return bands.stream()
        .flatMap(Optional::stream)
        .filter(found)
        .mapToDouble(v -> v.band().octaves())
        .sum();
  }

  /** Where something was found: runs of adjacent bands, rising in frequency. */
  public List<FrequencyRange> runs(Predicate<Verdict> found) {
    return FrequencyRange.runs(bands, v -> v.filter(found).isPresent(), v -> v.get().band());
  }

  /** The band with the greatest difference; nothing where no band was compared. */
  public Optional<Verdict> largest() {
    return bands.stream()
        .flatMap(Optional::stream)
        .max(Comparator.comparingDouble(v -> Math.abs(v.differenceDb())));
  }

  private static Optional<RandomEffects.Result> fitted(Side side, int band) {
    return side.estimate.scatters(band)
            && side.estimate.bands().get(band) instanceof BandOutcome.Fitted fitted
        ? Optional.of(fitted.mean())
        : Optional.empty();
  }

  private static double[][] differences(Side side) {
    int bands = side.paired.grid().size();
    double[][] values = new double[side.paired.units().size()][bands];
    for (double[] row : values) {
      Arrays.fill(row, Double.NaN);
    }
    for (int b = 0; b < bands; b++) {
      BandSample sample = side.paired.at(b);
      if (fitted(side, b).isPresent()) {
        for (int k = 0; k < sample.size(); k++) {
          values[sample.members()[k]][b] = sample.differencesDb()[k];
        }
      }
    }
    return values;
  }

  record Welch(double differenceDb, double standardErrorDb, double degreesOfFreedom) {
    static Welch of(RandomEffects.Result one, RandomEffects.Result two) {
      double first = one.standardErrorDb() * one.standardErrorDb();
      double second = two.standardErrorDb() * two.standardErrorDb();
      double all = first + second;
      double freedom =
          all == 0
              ? one.degreesOfFreedom() + two.degreesOfFreedom()
              : Satterthwaite.freedom(
                  new double[] {first, second},
                  new double[] {one.degreesOfFreedom(), two.degreesOfFreedom()});
      return new Welch(one.meanDb() - two.meanDb(), Math.sqrt(all), freedom);
    }
  }

  private static Verdict verdict(Band band, Welch welch, double q, long bands, Terms terms) {
    double se = welch.standardErrorDb;
    double freedom = welch.degreesOfFreedom;
    double alone = StudentT.twoSided(terms.confidence, freedom);
    double bonferroni = StudentT.twoSided(1 - (1 - terms.confidence) / bands, freedom);
    double together = Math.max(alone, Math.min(q, bonferroni)) * se;
    double size = Math.abs(welch.differenceDb);
    double p = TwoOneSidedTests.p(welch.differenceDb, se, freedom, terms.limitDb);
    return new Verdict(
        band,
        welch.differenceDb,
        se,
        freedom,
        alone * se,
        together,
        size > together,
        p < 1 - terms.confidence,
        size + together < terms.limitDb);
  }
}
