package org.twinrig.screening;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;

/**
 * Takes out of every capture what the check unit departed in that session from its mean over the
 * sessions of the fixture.
 *
 * <p>{@code L'(f) = L(f) - (y_s(f) - ybar(f))}: {@code y_s} the check unit's mean octave levels in
 * session {@code s} as calibrated, {@code ybar} their mean over the sessions; between octave mid
 * frequencies the departure runs linearly over lg f, beyond the first and last it stays as it is
 * there. So narrow features of the check unit, which move with its seating and not with the chain,
 * do not get into other units' captures. A session without the check unit is left as it is.
 *
 * <p>The check unit's own seating scatter gets into the correction; {@link #uncertainty} says how
 * much that is.
 */
public final class DriftCorrection {
  private final List<OnFixture> fixtures;

  DriftCorrection(List<OnFixture> fixtures) {
    this.fixtures = List.copyOf(fixtures);
  }

  /**
   * The correction on one fixture.
   *
   * @param fixture its name
   * @param departures of the check unit by session; only sessions in which it was captured, and
   *     none when there are fewer than two
   * @param uncertainty variance of a departure that is only due to the check unit's seating; empty
   *     when nothing is corrected
   */
  record OnFixture(
      String fixture, Map<String, OctaveCurve> departures, Optional<DriftUncertainty> uncertainty) {

    /** Copies the map. */
    OnFixture {
      departures = Map.copyOf(departures);
    }

    static OnFixture of(String fixture, List<CheckSession> seen, Anchor anchor) {
      return new OnFixture(fixture, Departures.of(seen), DriftUncertainty.of(seen, anchor));
    }
  }

  /**
   * What the correction adds to the error of a level.
   *
   * @param variance dB²
   * @param degreesOfFreedom above 0
   */
  public record Uncertainty(double variance, double degreesOfFreedom) {
    /** Checks the numbers. */
    public Uncertainty {
      Checks.notNegative(variance, "a variance");
      Checks.positive(degreesOfFreedom, "degrees of freedom");
    }
  }

  /**
   * Corrects captures.
   *
   * @param captures corrected for their calibrators, not anchored
   * @return the same captures in the same order; those of sessions without the check unit as they
   *     were
   */
  public List<Capture> apply(List<Capture> captures) {
    return captures.stream().map(this::corrected).toList();
  }

  private Capture corrected(Capture capture) {
    return fixtures.stream()
        .filter(f -> f.fixture().equals(capture.entry().fixture()))
        .flatMap(f -> Optional.ofNullable(f.departures().get(capture.entry().session())).stream())
        .findFirst()
        .map(
            departure ->
                new Capture(
                    capture.entry(), departure.takenFrom(capture.response()), capture.sha256()))
        .orElse(capture);
  }

  /**
   * What the correction on both fixtures adds to the error of a difference between them, at one
   * frequency.
   *
   * @param hz the frequency in Hz
   * @return the sum of the fixtures' variances with Satterthwaite's degrees of freedom (JCGM
   *     100:2008, G.4.1); nothing when no fixture was corrected
   */
  public Optional<Uncertainty> uncertainty(double hz) {
    double sum = 0;
    double squares = 0;
    double least = Double.POSITIVE_INFINITY;
    for (OnFixture f : fixtures) {
      if (f.uncertainty().isPresent()) {
        Uncertainty own = f.uncertainty().get().at(hz);
        sum += own.variance;
        squares += own.variance * own.variance / own.degreesOfFreedom;
        least = Math.min(least, own.degreesOfFreedom);
      }
    }
    return Double.isInfinite(least)
        ? Optional.empty()
        : Optional.of(new Uncertainty(sum, squares == 0 ? least : sum * sum / squares));
  }
}
