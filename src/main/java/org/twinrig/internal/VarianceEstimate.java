package org.twinrig.internal;

/**
 * A variance that was estimated, 0 or more, with its degrees of freedom, above 0; infinite where
 * the variance is held to be exact.
 */
public record VarianceEstimate(double variance, double degreesOfFreedom) {
  public VarianceEstimate {
    Checks.notNegative(variance, "a variance");
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above 0, but are " + degreesOfFreedom);
    }
  }
}
