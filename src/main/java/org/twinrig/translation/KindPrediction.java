package org.twinrig.translation;

import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.internal.Satterthwaite;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.MarkedBand;

/**
 * What the transfer of one kind says about a graph at one band.
 *
 * @param shiftDb how far the new fixture's level lies above the old one's, dB
 * @param standardErrorDb standard uncertainty of the level on the new fixture, dB
 * @param degreesOfFreedom of it, effective ones where links are combined
 * @param outside whether the graph lies outside what the study's units span
 */
record KindPrediction(
    MarkedBand marked,
    BandOutcome.Fitted fitted,
    double shiftDb,
    double standardErrorDb,
    int degreesOfFreedom,
    boolean outside) {

  static KindPrediction of(
      MarkedBand marked, BandOutcome.Fitted fitted, OldGraph graph, int band, double seatings) {
    BandOutcome.Prediction prediction = fitted.prediction();
    OptionalDouble shift = OptionalDouble.empty();
    if (prediction.window().isPresent() && graph.pinned().isPresent()) {
      shift = prediction.window().get().shiftDb(graph.pinned().get());
    }
    // Where the graph is too narrow for the window or the anchor: the offset alone, with the
    // offset's own errors.
    Optional<WindowRule> window = shift.isPresent() ? prediction.window() : Optional.empty();
    boolean fallsBack = window.isEmpty() && prediction.window().isPresent();
    double rms = fallsBack ? prediction.looRmsOffsetDb() : prediction.looRmsDb();
    OptionalDouble ofWindow =
        window.isPresent() ? window.get().seatingVariance() : OptionalDouble.empty();
    OptionalDouble seating = ofWindow.isPresent() ? ofWindow : fitted.scatter().seatVarianceFrom();
    double ofStudy = fitted.scatter().seatingsFrom();
    double fewer = Math.max(0, 1 / graph.seatings(seatings, ofStudy) - 1 / ofStudy);
    double ownVariance = rms * rms + seating.orElse(0) * fewer;
    OldGraph.Carried carried = graph.carried(band, window);
    double variance = ownVariance + carried.standardDb() * carried.standardDb();
    return new KindPrediction(
        marked,
        fitted,
        shift.orElse(fitted.mean().meanDb()),
        Math.sqrt(variance),
        freedom(ownVariance, fitted.mean().degreesOfFreedom(), carried),
        window.isPresent()
            && window.get().leverage(graph.pinned().orElseThrow(), fitted.units()) > 1);
  }

  /** Welch–Satterthwaite, JCGM 100:2008, G.4.1, cut to the next lower whole number. */
  private static int freedom(double ownVariance, int own, OldGraph.Carried carried) {
    double other = carried.standardDb() * carried.standardDb();
    if (other == 0) {
      return own;
    }
    double effective =
        Satterthwaite.freedom(
            new double[] {ownVariance, other}, new double[] {own, carried.degreesOfFreedom()});
    return Math.max(1, (int) Math.floor(effective + 1e-9));
  }
}
