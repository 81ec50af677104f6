package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Checks;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.MeanCurve;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Anchor;

/**
 * How the mean transfers of one kind in two studies of the same fixtures differ, band by band:
 * whether they are shown to differ, and whether they are shown to be as good as the same.
 *
 * <p>With means {@code δ̂_1}, {@code δ̂_2} and their standard errors, {@code D = δ̂_1 - δ̂_2},
 * {@code SE² = SE_1² + SE_2²} on {@code ν = SE⁴/(SE_1⁴/(n_1-1) + SE_2⁴/(n_2-1))} degrees of
 * freedom. The interval of a band by itself is {@code D ± t_ν·SE}; that of all bands of the kind at
 * once has the half-width of {@link MeanCurve#simultaneousHalfDb}. Means are called different where
 * the interval of all bands leaves out 0: of two studies of one truth, at most {@code α} are called
 * different anywhere in a kind. They are called equivalent at all bands at once where that interval
 * lies within {@code ±Δ}, and alone by {@link Equivalence#p two one-sided tests}. Different and
 * equivalent may both hold: a small difference, well known. Where neither holds nothing is shown.
 *
 * <p>Assumed: the studies are independent. Where both hold the same specimens the interval is wider
 * than need be. Each pair of studies and each kind is a family of its own.
 *
 * <p>Sources: Welch 1947, Biometrika 34:28; Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657.
 *
 * <p>{@code Δ} in dB, {@code 1-α}, and one verdict per band; nothing where either study has no
 * estimate, or no unit that differs from any other, or where levels are lined up.
 */
public record MeanDifference(
    String kind, double limitDb, double confidence, List<Optional<Verdict>> bands) {

  public MeanDifference {
    bands = List.copyOf(bands);
    Checks.positive(limitDb, "the limit of equivalence in dB");
    Checks.fraction(confidence, "confidence");
  }

  /**
   * How to judge: {@code Δ} in dB and {@code 1-α}, and the anchor that both studies line levels up
   * by.
   */
  public record Terms(double limitDb, double confidence, Anchor anchor) {}

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
      boolean equivalent) {}

  /** Compares two studies of the same kind on the same bands. */
  public static MeanDifference of(KindEstimate first, KindEstimate second, Terms terms) {
    if (!first.grid().equals(second.grid()) || !first.kind().equals(second.kind())) {
      throw new IllegalArgumentException("only the same kind on the same bands can be compared");
    }
    int bands = first.bands().size();
    List<Optional<Welch>> differences =
        IntStream.range(0, bands)
            .mapToObj(
                b ->
                    fitted(first, b)
                        .filter(one -> !terms.anchor.linesUp(first.grid().band(b)))
                        .flatMap(one -> fitted(second, b).map(two -> Welch.of(one, two))))
            .toList();
    double[] errors = new double[bands];
    double[] freedom = new double[bands];
    for (int b = 0; b < bands; b++) {
      errors[b] = differences.get(b).map(Welch::standardErrorDb).orElse(Double.NaN);
      freedom[b] = differences.get(b).map(Welch::degreesOfFreedom).orElse(0.0);
    }
    double[] together =
        new MeanCurve(terms.confidence)
            .simultaneousHalfDb(errors, freedom, first.grid().perOctave());
    List<Optional<Verdict>> verdicts = new ArrayList<>(bands);
    for (int b = 0; b < bands; b++) {
      Band band = first.grid().band(b);
      double half = together[b];
      verdicts.add(differences.get(b).map(d -> verdict(band, d, half, terms)));
    }
    return new MeanDifference(first.kind(), terms.limitDb, terms.confidence, verdicts);
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

  private static Optional<RandomEffects.Result> fitted(KindEstimate study, int band) {
    return study.scatters(band) && study.bands().get(band) instanceof BandOutcome.Fitted fitted
        ? Optional.of(fitted.mean())
        : Optional.empty();
  }

  record Welch(double differenceDb, double standardErrorDb, double degreesOfFreedom) {
    static Welch of(RandomEffects.Result one, RandomEffects.Result two) {
      List<VarianceEstimate> squares = Stream.of(one, two).map(Welch::square).toList();
      double all = squares.get(0).variance() + squares.get(1).variance();
      double freedom =
          all == 0
              ? one.degreesOfFreedom() + two.degreesOfFreedom()
              : VarianceEstimate.freedom(squares);
      return new Welch(one.meanDb() - two.meanDb(), Math.sqrt(all), freedom);
    }

    private static VarianceEstimate square(RandomEffects.Result mean) {
      double se = mean.standardErrorDb();
      return new VarianceEstimate(se * se, mean.degreesOfFreedom());
    }
  }

  private static Verdict verdict(Band band, Welch welch, double together, Terms terms) {
    double se = welch.standardErrorDb;
    double freedom = welch.degreesOfFreedom;
    double size = Math.abs(welch.differenceDb);
    double p = Equivalence.p(welch.differenceDb, se, freedom, terms.limitDb);
    return new Verdict(
        band,
        welch.differenceDb,
        se,
        freedom,
        StudentT.twoSided(terms.confidence, freedom) * se,
        together,
        size > together,
        p < 1 - terms.confidence,
        size + together < terms.limitDb);
  }
}
