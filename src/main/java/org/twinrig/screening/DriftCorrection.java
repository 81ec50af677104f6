package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.capture.Capture;
import org.twinrig.internal.VarianceEstimate;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

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
 * <p>What all sessions of a fixture share cannot be seen and stays: a drift in one session of three
 * leaves a third of itself in every session, so that sessions agree, but about their mean.
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
   * The correction on one fixture. Departures of the check unit by session, only of those in which
   * it was captured and none when there are fewer than two; the variance of a departure that is
   * only due to the check unit's seating, none when nothing is corrected.
   */
  record OnFixture(
      String fixture, Map<String, OctaveCurve> departures, Optional<DriftUncertainty> uncertainty) {

    static OnFixture of(String fixture, List<CheckSession> seen, Anchor anchor) {
      return new OnFixture(fixture, departures(seen), DriftUncertainty.of(seen, anchor));
    }

    private static Map<String, OctaveCurve> departures(List<CheckSession> seen) {
      Map<String, OctaveCurve> departures = new LinkedHashMap<>();
      if (seen.size() < 2) {
        return departures;
      }
      List<double[]> means = seen.stream().map(OnFixture::means).toList();
      for (int s = 0; s < seen.size(); s++) {
        double[] departure = means.get(s).clone();
        for (int b = 0; b < departure.length; b++) {
          int octave = b;
          departure[b] -= mean(means.stream().mapToDouble(m -> m[octave]));
        }
        Levels levels = Levels.copyOf(CheckCaptures.OCTAVES, departure);
        if (levels.present() > 0) {
          departures.put(seen.get(s).session(), OctaveCurve.through(levels));
        }
      }
      return departures;
    }

    /** Octave levels averaged over seatings: NaN where no seating has the octave. */
    private static double[] means(CheckSession session) {
      return IntStream.range(0, CheckCaptures.OCTAVES.size())
          .mapToDouble(b -> mean(Arrays.stream(session.absolute(b))))
          .toArray();
    }

    private static double mean(DoubleStream values) {
      return values.filter(v -> !Double.isNaN(v)).average().orElse(Double.NaN);
    }
  }

  /**
   * What was taken out of every capture of a session at one octave. The mid frequency of the octave
   * in Hz, and the check unit's departure from its mean over the sessions in dB.
   */
  public record Taken(String fixture, String session, double midHz, double departureDb) {}

  /**
   * All that was taken out. By fixture, by session in the order of time, by frequency; none of a
   * session without the check unit.
   */
  public List<Taken> taken() {
    List<Taken> taken = new ArrayList<>();
    for (OnFixture on : fixtures) {
      on.departures()
          .forEach(
              (session, curve) ->
                  curve
                      .points()
                      .forEach((hz, db) -> taken.add(new Taken(on.fixture(), session, hz, db))));
    }
    return taken;
  }

  /**
   * Corrects captures. They are corrected for their calibrators, not anchored, and stay in their
   * order; those of sessions without the check unit stay as they were.
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
   * frequency. It is the sum of the fixtures' variances with Satterthwaite's degrees of freedom
   * (JCGM 100:2008, G.4.1); nothing when no fixture was corrected.
   */
  public Optional<VarianceEstimate> uncertainty(double hz) {
    List<VarianceEstimate> own =
        fixtures.stream().flatMap(f -> f.uncertainty().stream()).map(u -> u.at(hz)).toList();
    if (own.isEmpty()) {
      return Optional.empty();
    }
    double sum = own.stream().mapToDouble(VarianceEstimate::variance).sum();
    return Optional.of(
        new VarianceEstimate(
            sum,
            sum == 0
                ? own.stream().mapToDouble(VarianceEstimate::degreesOfFreedom).min().orElseThrow()
                : VarianceEstimate.freedom(own)));
  }
}
