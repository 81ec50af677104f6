package org.twinrig.regression;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.internal.Checks;

/**
 * The means of one quantity over units at many bands, each with an interval of its own and one that
 * holds at all bands at once.
 *
 * <p>Each mean is that of {@link RandomEffects}. The simultaneous half-width is {@code t_{n-1,
 * 1-α/(2·bands)}·√(mean of SE² over the bands within 1/6 octave)}, {@code bands} the number of
 * bands that have a mean: Bonferroni's, because it asks nothing of the shape of the differences.
 * Flipping signs does, and where in-ear seals leak and differences are skewed it held the whole
 * true curve in fewer studies than it said. Averaging neighbours' {@code SE²} keeps a band whose
 * few units agree by chance from being the one where the curve leaves.
 */
public record MeanCurve(double confidence) {
  /** Fewer units than this have no mean. */
  static final int LEAST_UNITS = 3;

  public MeanCurve {
    Checks.fraction(confidence, "confidence");
  }

  /**
   * A mean with its pointwise interval, and the half-width in dB that holds at all bands at once.
   */
  public record Mean(RandomEffects.Result estimate, double simultaneousHalfDb) {
    public Mean {
      Checks.notNegative(simultaneousHalfDb, "the simultaneous half-width in dB");
    }
  }

  /**
   * Estimates one mean for each sample, one sample per band of a grid; nothing where fewer than
   * three units have a number.
   */
  public List<Optional<Mean>> fit(List<UnitSample> samples, int perOctave) {
    RandomEffects procedure = new RandomEffects(confidence);
    List<Optional<RandomEffects.Result>> means =
        samples.stream()
            .map(
                s ->
                    s.size() < LEAST_UNITS
                        ? Optional.<RandomEffects.Result>empty()
                        : Optional.of(procedure.fit(s.valuesDb(), s.variances())))
            .toList();
    double[] halves =
        simultaneousHalfDb(
            means.stream()
                .mapToDouble(m -> m.map(r -> r.standardErrorDb()).orElse(Double.NaN))
                .toArray(),
            means.stream().mapToDouble(m -> m.map(r -> r.units() - 1.0).orElse(0.0)).toArray(),
            perOctave);
    return IntStream.range(0, means.size())
        .mapToObj(b -> means.get(b).map(m -> new Mean(m, halves[b])))
        .toList();
  }

  /**
   * Half-widths that hold at all bands at once, dB, for standard errors on some degrees of freedom;
   * NaN stands for a band without an estimate, going in and coming out.
   */
  public double[] simultaneousHalfDb(double[] standardErrors, double[] freedom, int perOctave) {
    int bands = standardErrors.length;
    double[] squares = new double[bands];
    long estimated = 0;
    for (int b = 0; b < bands; b++) {
      squares[b] = standardErrors[b] * standardErrors[b];
      estimated += Double.isNaN(squares[b]) ? 0 : 1;
    }
    double together = 1 - (1 - confidence) / Math.max(1, estimated);
    Neighbourhood near = Neighbourhood.of(bands, b -> !Double.isNaN(squares[b]), perOctave / 6);
    StudentT.Quantiles quantiles = new StudentT.Quantiles(together);
    double[] halves = new double[bands];
    for (int b = 0; b < bands; b++) {
      halves[b] =
          Double.isNaN(squares[b])
              ? Double.NaN
              : quantiles.at(freedom[b]) * Math.sqrt(near.mean(b, squares));
    }
    return halves;
  }
}
