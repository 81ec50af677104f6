/**
 * An old graph re-expressed as if it had been measured on the new fixture.
 *
 * <p>{@link org.twinrig.translation.TransferFunction} holds a kind's estimates together with their
 * marks and is the only thing that can be applied: there is no way to a translated level without
 * its interval and its mark. {@link org.twinrig.translation.CatalogueRun} takes every graph of a
 * catalogue through a {@link org.twinrig.translation.Chain} of translations; in it {@link
 * org.twinrig.translation.Translator} re-expresses one graph, and {@link
 * org.twinrig.translation.Decision} says what the lab should do with the result.
 *
 * <p>The way of a number, {@code low_db} of a translated graph: {@code TranslatedBand.Predicted}
 * takes the half-width from the level; {@code Intervals} makes it, Student's t times the standard
 * uncertainty of {@code KindPrediction}, which holds the formula; the study's part of it is {@code
 * Errors} and {@code Scatter} of {@code regression.BandOutcome}. {@code halfDb} of {@code
 * BandOutcome.Prediction} is the width for a graph of as many seatings as the study's, which the
 * study's own report shows; no graph is translated with it. The level is that of the graph at the
 * band plus {@code WindowRule.shiftDb} of its levels less {@code Anchor.levelOf} its points, or
 * plus {@code offset_db} where no window predicts. {@code level_db} of its points is made by {@link
 * org.twinrig.translation.GraphPoints}.
 *
 * <p>In translation.json the variance of the errors is {@code variance_db2} of {@code errors}, or
 * of {@code offset_errors} where no window predicts; that of a seating is {@code
 * seating_variance_from_db2} of the window, else {@code seat_variance_from_db2}. {@code
 * seating_variance_db2} widens no graph's interval: it says why one is wide.
 */
package org.twinrig.translation;
