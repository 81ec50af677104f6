/**
 * Which captures not to believe, and which units depart from their kind, in one sentence each.
 *
 * <p>{@link org.twinrig.screening.Screening} runs every rule over the captures the lab did not
 * leave out. Captures are judged within their kind on their fixture, against the same unit's
 * others: a {@link org.twinrig.screening.Verdict} names a capture, the {@link
 * org.twinrig.screening.Finding}, the measured value and the limit. A {@link
 * org.twinrig.screening.UnitOutliers} says which units depart from the kind, or that too few were
 * measured to tell.
 *
 * <p>Nothing is deleted. A study that only suggests uses everything but copies: one curve counts
 * once. A study that excludes leaves out captures with a lost seal, odd seatings and copies; every
 * other finding, and every finding about a unit, is only reported. Limits follow the scatter of the
 * kind and are set so that simulated studies without a fault accuse about one capture in a hundred
 * or fewer by each rule.
 *
 * <p>A {@link org.twinrig.screening.SessionReview} says what the check unit shows of the sessions:
 * a {@link org.twinrig.screening.DriftChart} of its level and of each octave per fixture, the
 * sessions out of control, and, where the lab asks for it, a {@link
 * org.twinrig.screening.DriftCorrection}.
 */
package org.twinrig.screening;
