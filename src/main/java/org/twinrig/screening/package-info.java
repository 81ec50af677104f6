/**
 * Which captures not to believe, in one sentence each.
 *
 * <p>{@link org.twinrig.screening.Screening} runs every rule over the captures the lab did not
 * leave out. Captures are judged within their kind on their fixture, against the same unit's
 * others: a {@link org.twinrig.screening.Verdict} names a capture, the {@link
 * org.twinrig.screening.Finding}, the measured value and the limit. Which units depart from their
 * kind is asked of the captures that count ({@code org.twinrig.doubt.DepartsFromItsKind}).
 *
 * <p>Nothing is deleted. A study that only suggests uses everything but copies: one curve counts
 * once. A study that excludes leaves out captures with a lost seal, odd seatings and copies; every
 * other finding is only reported. Limits follow the scatter of the kind and are set so that
 * simulated studies without a fault accuse about one capture in a hundred or fewer by each rule.
 *
 * <p>A {@link org.twinrig.screening.SessionReview} says what the check unit shows of the sessions:
 * a {@link org.twinrig.screening.DriftChart} of its level and of each octave per fixture, the
 * sessions out of control, and, where the lab asks for it, a {@link
 * org.twinrig.screening.DriftCorrection}.
 */
package org.twinrig.screening;
