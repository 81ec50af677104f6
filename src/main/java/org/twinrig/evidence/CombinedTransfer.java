package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.StudentT;

/**
 * The mean transfer of a kind from several studies of the same fixtures, and what a further lab is
 * to expect.
 *
 * <p>Random effects over studies, band by band: {@code δ̂_j ~ N(δ, τ² + SE_j²)}, {@code τ²} between
 * studies by restricted maximum likelihood, as in {@link RandomEffects} with studies for units.
 * {@code SE²} is the greater of Hartung and Knapp's and the model's own {@code 1/Σw}: with few
 * studies that happen to agree, Hartung and Knapp's comes out near 0, narrower than what each study
 * says of itself. The interval of the mean is {@code δ̂ ± t_{k-1}·SE} with {@code k} studies; the
 * true mean transfer of a further lab is expected in {@code δ̂ ± t_{k-1}·√(τ² + SE²)}.
 *
 * <p>With two studies {@code τ²} rests on a single difference and {@code t_1} is 12.7 at 95 %: the
 * intervals are wide because two labs say next to nothing of how labs differ. Below five studies
 * {@code τ²} is an order of magnitude, no more. The standard errors are taken as known.
 *
 * <p>Sources: those of {@link RandomEffects}; Röver, Knapp and Friede 2015, BMC Med. Res. Methodol.
 * 15:99 (the greater of the two); Higgins, Thompson and Spiegelhalter 2009, J. R. Stat. Soc. A
 * 172:137 (prediction; with {@code k-2} degrees of freedom there).
 *
 * <p>A band where fewer than two studies have an estimate has none.
 */
public record CombinedTransfer(String kind, double confidence, List<Optional<Combined>> bands) {

  public CombinedTransfer {
    bands = List.copyOf(bands);
    Checks.fraction(confidence, "confidence");
  }

  /**
   * One band: {@code k} studies that have an estimate, the units of these together, {@code δ̂} and
   * {@code SE}, {@code τ} between studies, half-width of the interval of the mean, and of where a
   * further lab's mean is expected; all in dB.
   */
  public record Combined(
      Band band,
      int studies,
      int units,
      double meanDb,
      double standardErrorDb,
      double tauDb,
      double halfDb,
      double furtherHalfDb) {}

  /** Combines two or more studies' estimates of one kind on the same bands. */
  public static CombinedTransfer of(List<KindEstimate> estimates, double confidence) {
    if (estimates.size() < 2) {
      throw new IllegalArgumentException("needs two or more studies, but has " + estimates.size());
    }
    List<Optional<Combined>> bands = new ArrayList<>();
    for (int b = 0; b < estimates.get(0).bands().size(); b++) {
      List<RandomEffects.Result> means = new ArrayList<>();
      for (KindEstimate estimate : estimates) {
        // A width of 0 would outweigh every other study.
        if (estimate.scatters(b) && estimate.bands().get(b) instanceof BandOutcome.Fitted fitted) {
          means.add(fitted.mean());
        }
      }
      bands.add(
          means.size() < 2
              ? Optional.empty()
              : Optional.of(combined(estimates.get(0).bands().get(b).band(), means, confidence)));
    }
    return new CombinedTransfer(estimates.get(0).kind(), confidence, bands);
  }

  static Combined combined(Band band, List<RandomEffects.Result> means, double confidence) {
    double[] values = means.stream().mapToDouble(RandomEffects.Result::meanDb).toArray();
    double[] variances =
        means.stream().mapToDouble(m -> m.standardErrorDb() * m.standardErrorDb()).toArray();
    RandomEffects.Result over = new RandomEffects(confidence).fit(values, variances);
    double weights = 0;
    for (double v : variances) {
      weights += 1 / (over.tauSquared() + v);
    }
    double se = Math.max(over.standardErrorDb(), 1 / Math.sqrt(weights));
    double t = StudentT.twoSided(confidence, means.size() - 1);
    return new Combined(
        band,
        means.size(),
        means.stream().mapToInt(RandomEffects.Result::units).sum(),
        over.meanDb(),
        se,
        Math.sqrt(over.tauSquared()),
        t * se,
        t * Math.sqrt(over.tauSquared() + se * se));
  }
}
