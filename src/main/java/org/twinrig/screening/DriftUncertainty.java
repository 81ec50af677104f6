package org.twinrig.screening;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

/**
 * How badly the check unit's departures are known, because its own seating scatters.
 *
 * <p>The departure of session {@code s} from the mean of {@code S} sessions has, averaged over the
 * sessions, the variance {@code u² = s_w²·mean(1/m_s)·(1 - 1/S)}: {@code s_w²} the pooled variance
 * between seatings within a session on {@code ν = Σ(m_s - 1)} degrees of freedom, {@code m_s} the
 * seatings of the check unit in session {@code s}. Where no session has two seatings, seating
 * cannot be told from drift, and the variance between the sessions' values, {@code S - 1} degrees
 * of freedom, stands for {@code s_w²}: on the wide side, as it holds the drift itself.
 *
 * <p>With an anchor the octaves count relative to the level, without one as calibrated: that is
 * what is left of an error of the correction. Between octaves the variance runs linearly over lg f,
 * never below that of the interpolated departure.
 *
 * <p>{@code u²} at the octaves, dB², with the fewest degrees of freedom of any.
 */
record DriftUncertainty(OctaveCurve variance, double degreesOfFreedom) {

  static Optional<DriftUncertainty> of(List<CheckSession> seen, Anchor anchor) {
    double[] variances = new double[CheckCaptures.OCTAVES.size()];
    Arrays.fill(variances, Double.NaN);
    double freedom = Double.POSITIVE_INFINITY;
    for (int b = 0; b < variances.length; b++) {
      int octave = b;
      Optional<VarianceEstimate> at =
          at(
              seen.stream()
                  .map(s -> anchor instanceof Anchor.None ? s.absolute(octave) : s.shape(octave))
                  .filter(v -> v.length > 0)
                  .toList());
      if (at.isPresent()) {
        variances[b] = at.get().variance();
        freedom = Math.min(freedom, at.get().degreesOfFreedom());
      }
    }
    Levels levels = Levels.copyOf(CheckCaptures.OCTAVES, variances);
    return levels.present() == 0
        ? Optional.empty()
        : Optional.of(new DriftUncertainty(OctaveCurve.through(levels), freedom));
  }

  private static Optional<VarianceEstimate> at(List<double[]> sessions) {
    int count = sessions.size();
    if (count < 2) {
      return Optional.empty();
    }
    double reciprocal = sessions.stream().mapToDouble(v -> 1.0 / v.length).average().orElseThrow();
    double within = sessions.stream().mapToDouble(DriftUncertainty::squares).sum();
    int freedom = sessions.stream().mapToInt(v -> v.length - 1).sum();
    if (freedom == 0) {
      within = squares(sessions.stream().mapToDouble(v -> v[0]).toArray());
      freedom = count - 1;
    }
    return Optional.of(
        new VarianceEstimate(within / freedom * reciprocal * (1 - 1.0 / count), freedom));
  }

  private static double squares(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
  }

  VarianceEstimate at(double hz) {
    return new VarianceEstimate(variance.at(hz), degreesOfFreedom);
  }
}
