package org.twinrig.translation;

import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.MarkedBand;

/**
 * What the transfer of one kind says about a graph at one band.
 *
 * @param shiftDb how far the new fixture's level lies above the old one's, dB
 * @param own uncertainty of the level on the new fixture, for an interval at this band
 * @param whole the same for an interval over the whole curve
 */
record KindPrediction(
    MarkedBand marked,
    BandOutcome.Fitted fitted,
    double shiftDb,
    Uncertainty own,
    Uncertainty whole) {

  /**
   * Whether the best seal of several seatings is farther from a seating like any other than the
   * interval allows for: where seatings on the old fixture scatter by more than half of its
   * standard uncertainty {@code u}, or by nobody knows how much. The best of five lies 1.16
   * standard deviations above the mean; up to {@code u/2} the interval still holds 93 of 100 of
   * them, at {@code u} 88 (Monte Carlo, normal seatings).
   */
  boolean misledByBestSeal() {
    OptionalDouble variance = fitted.scatter().seatVarianceFrom();
    return variance.isEmpty() || Math.sqrt(variance.getAsDouble()) > own.standardDb() / 2;
  }

  static KindPrediction of(
      MarkedBand marked,
      BandOutcome.Fitted fitted,
      OldGraph graph,
      int band,
      double seatings,
      Uncertainty ofOldGraphs) {
    BandOutcome.Prediction prediction = fitted.prediction();
    // A graph that does not reach the anchor cannot be held against the study's units.
    Optional<WindowRule> window = graph.pinned().flatMap(g -> prediction.window());
    boolean whole = window.isEmpty() || window.get().covers(graph.pinned().orElseThrow());
    BandOutcome.Errors errors = window.isEmpty() ? prediction.offset() : prediction.errors();
    double ownVariance = errors.varianceDb2();
    double wholeVariance = errors.wholeVarianceDb2();
    if (!whole) {
      // Part of the window is missing: no better than the offset is known to be.
      ownVariance = Math.max(ownVariance, prediction.offset().varianceDb2());
      wholeVariance = Math.max(wholeVariance, prediction.offset().wholeVarianceDb2());
    }
    OptionalDouble ofWindow =
        window.map(WindowRule::seatingVariance).orElse(OptionalDouble.empty());
    OptionalDouble seating = ofWindow.isPresent() ? ofWindow : fitted.scatter().seatVarianceFrom();
    double ofStudy = fitted.scatter().seatingsFrom();
    double fewer = Math.max(0, 1 / graph.seatings(seatings, ofStudy) - 1 / ofStudy);
    double ofSeatings = seating.orElse(0) * fewer;
    OldGraph.Carried carried = graph.carried(band, window);
    return new KindPrediction(
        marked,
        fitted,
        window.map(w -> w.shiftDb(graph.pinned().orElseThrow())).orElse(fitted.mean().meanDb()),
        carried.own().and(ownVariance + ofSeatings, errors.degreesOfFreedom()).and(ofOldGraphs),
        carried
            .whole()
            .and(wholeVariance + ofSeatings, fitted.mean().degreesOfFreedom())
            .and(ofOldGraphs));
  }
}
