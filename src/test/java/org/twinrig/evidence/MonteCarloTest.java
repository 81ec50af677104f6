package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.twinrig.evidence.UncertaintyBudgetTest.typeA;
import static org.twinrig.evidence.UncertaintyBudgetTest.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;
import org.apache.commons.math3.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.internal.VarianceEstimate;

/** Distributions whose quantiles are known in closed form, and those of JCGM 101:2008, clause 9. */
class MonteCarloTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** Independent inputs, each with its own distribution. */
  private static MonteCarlo.Result run(
      MonteCarlo procedure, long seed, List<VarianceEstimate> inputs, double... halfWidths) {
    VarianceEstimate[] typeA =
        inputs.stream().filter(c -> c.variance() > 0).toArray(VarianceEstimate[]::new);
    return procedure.run(random -> sum(typeA, random), halfWidths, seed);
  }

  private static DoubleSupplier sum(VarianceEstimate[] typeA, RandomGenerator random) {
    DoubleSupplier[] factors =
        Arrays.stream(typeA)
            .map(c -> MonteCarlo.varianceFactor(random, c.degreesOfFreedom()))
            .toArray(DoubleSupplier[]::new);
    return () -> {
      double sum = 0;
      for (int i = 0; i < factors.length; i++) {
        sum += typeA[i].variance() * factors[i].getAsDouble();
      }
      return sum;
    };
  }

  private static MonteCarlo.Result run(int trials, VarianceEstimate... typeA) {
    return run(new MonteCarlo(0.95, trials), 11, List.of(typeA));
  }

  private static MonteCarlo.Result rectangles(double... halfWidths) {
    return run(new MonteCarlo(0.95, 400_000), 11, List.of(), halfWidths);
  }

  /** JCGM 101:2008, 9.2.2: four standard normal inputs give u = 2.0 and ± 3.92 (from memory). */
  @Test
  void fourNormalInputs() {
    VarianceEstimate one = typeA(1, INFINITE);
    MonteCarlo.Result result = run(20_000, one, one, one, one);
    assertEquals(2, result.standardDeviation(), 1e-3);
    assertEquals(3.92, result.halfWidth(), 5e-3);
  }

  /** JCGM 101:2008, 9.2.3: four rectangular inputs of u = 1 give ± 3.88 (from memory). */
  @Test
  void fourRectangularInputs() {
    double a = Math.sqrt(3);
    MonteCarlo.Result result = rectangles(a, a, a, a);
    assertEquals(2, result.standardDeviation(), 0.01);
    assertEquals(3.88, result.halfWidth(), 0.015);
  }

  /**
   * JCGM 101:2008, 9.2.4: one of ten times the width gives ± 17.0, where the Guide would say 19.9
   * (from memory).
   */
  @Test
  void oneRectangularInputOfTenTimesTheWidth() {
    double a = Math.sqrt(3);
    MonteCarlo.Result result = rectangles(a, a, a, 10 * a);
    assertEquals(10.1, result.standardDeviation(), 0.06);
    assertEquals(17.0, result.halfWidth(), 0.06);
    UncertaintyBudget guide =
        new UncertaintyBudget(List.of(within(a), within(a), within(a), within(10 * a)), 0.95);
    assertEquals(19.9, guide.expanded(), 0.05);
  }

  /** Two equal rectangles make a triangle of half-base 2a: half-width 2a(1 - √(1-p)). */
  @Test
  void twoRectanglesMakeATriangle() {
    assertEquals(2 * (1 - Math.sqrt(0.05)), rectangles(1, 1).halfWidth(), 4e-3);
  }

  /**
   * Rectangles of half-widths a > b make a trapezoid: with tails of area 1-p inside its slopes the
   * half-width is a + b - √(4ab(1-p)).
   */
  @Test
  void twoUnequalRectanglesMakeATrapezoid() {
    double half = 3 + 1 - Math.sqrt(4 * 3 * 1 * 0.05);
    assertEquals(half, rectangles(3, 1).halfWidth(), 6e-3);
  }

  /** Student's quantiles of JCGM 100:2008, Table G.2, p = 95 % (from memory). */
  @ParameterizedTest
  @CsvSource({"1, 12.71", "2, 4.30", "3, 3.18", "7, 2.36", "10, 2.23", "50, 2.01"})
  void oneInputOfTypeA(double degreesOfFreedom, double published) {
    MonteCarlo.Result result = run(400_000, typeA(1, degreesOfFreedom));
    assertEquals(published, result.halfWidth(), 0.005 + 0.006 * published);
    if (degreesOfFreedom > 4) {
      double closed = Math.sqrt(degreesOfFreedom / (degreesOfFreedom - 2));
      assertEquals(closed, result.standardDeviation(), 0.01 * closed);
    }
  }

  /**
   * H.1 of the Guide has an input of half the variance with two degrees of freedom. Its t is so
   * wide that the draws cannot agree with U = 92 nm: 173.2 nm by numerical convolution of the four
   * t densities (scipy 1.17.1, stats.t and signal.fftconvolve on a grid of 0.05 nm).
   */
  @Test
  void theEndGaugeOfTheGuideIsAnExampleThatDoesNotAgree() {
    UncertaintyBudget gauge = UncertaintyBudgetTest.endGauge();
    MonteCarlo.Result result = run(new MonteCarlo(0.99, 400_000), 5, gauge.contributions());
    assertEquals(173.2, result.halfWidth(), 0.01 * 173.2);
    assertTrue(
        Math.abs(result.halfWidth() - gauge.expanded())
            > MonteCarlo.numericalTolerance(gauge.combined(), 1));
  }

  @Test
  void theSameSeedGivesTheSameAndAnotherSeedAnother() {
    MonteCarlo procedure = new MonteCarlo(0.95, 2000);
    List<VarianceEstimate> input = List.of(typeA(1, 5));
    assertEquals(run(procedure, 1, input), run(procedure, 1, input));
    assertTrue(run(procedure, 1, input).halfWidth() != run(procedure, 2, input).halfWidth());
  }

  /** JCGM 101:2008, 7.9.2; the first two are its examples (from memory), the rest by its rule. */
  @ParameterizedTest
  @CsvSource({
    "0.00035, 2, 0.000005",
    "0.00035, 1, 0.00005",
    "2, 1, 0.5",
    "0.94, 1, 0.05",
    "0.96, 1, 0.5",
    "9.96, 2, 0.5"
  })
  void theNumericalTolerance(double uncertainty, int digits, double delta) {
    assertEquals(delta, MonteCarlo.numericalTolerance(uncertainty, digits), 1e-12);
  }
}
