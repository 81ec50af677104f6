/**
 * Which captures not to believe, in one sentence each.
 *
 * <p>A {@link org.twinrig.screening.Verdict} names a capture, what was found, the measured value
 * and the limit. Nothing is deleted: whether a verdict leaves a capture out is the study's setting,
 * and every capture left out is listed.
 *
 * <p>A {@link org.twinrig.screening.SessionReview} says what the check unit shows of the sessions:
 * a {@link org.twinrig.screening.DriftChart} of its level and of each octave per fixture, the
 * sessions out of control, and, where the lab asks for it, a {@link
 * org.twinrig.screening.DriftCorrection}.
 */
package org.twinrig.screening;
