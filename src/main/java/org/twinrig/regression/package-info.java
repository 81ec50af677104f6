/**
 * How the fixtures differ, how surely, and how well one unit is predicted.
 *
 * <p>In order of use: {@link org.twinrig.regression.RandomEffects} estimates the mean transfer of a
 * kind at one band, {@link org.twinrig.regression.SignFlipInterval} widens its interval so that it
 * holds over all bands at once, {@link org.twinrig.regression.LeaveOneUnitOut} measures the error
 * made on a unit that did not enter, and {@link org.twinrig.regression.TransferEstimator} runs the
 * three over a kind and returns one {@link org.twinrig.regression.BandOutcome} per band.
 *
 * <p>Every {@code n} counts units. A band with fewer than three units has no estimate: that is an
 * outcome with a reason, not a number.
 */
package org.twinrig.regression;
