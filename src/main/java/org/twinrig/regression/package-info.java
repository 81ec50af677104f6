/**
 * How the fixtures differ, how surely, and how well one unit is predicted.
 *
 * <p>In order of use: {@link org.twinrig.regression.RandomEffects} estimates the mean transfer of a
 * kind at one band, {@link org.twinrig.regression.MeanCurve} gives it an interval that holds over
 * all bands at once, {@link org.twinrig.regression.LeaveOneUnitOut} measures the error made on a
 * unit that did not enter, and {@link org.twinrig.regression.TransferEstimator} runs all of it over
 * a kind and returns one {@link org.twinrig.regression.BandOutcome} per band.
 *
 * <p>How single units are predicted is found by {@link TransferEstimator}, in this order: {@code
 * WindowShape} lists the window ridges of a grid; {@code StackedWindow} makes the rows one is
 * fitted on; {@code WindowDeletion} factors them once for all penalties, and {@code BlockDeletion}
 * gives the errors on units left out, one or two at a time, in closed form; {@code BandErrors}
 * keeps what each candidate does at a band; {@code ModelAverage} weighs them, and again without
 * each unit. {@link org.twinrig.regression.ErrorVariance} makes of the errors what intervals rest
 * on. {@link org.twinrig.regression.WindowRule} is what is applied to a graph.
 *
 * <p>Every {@code n} counts units. A band with fewer than three units has no estimate: that is an
 * outcome with a reason, not a number.
 */
package org.twinrig.regression;
