/**
 * Whether prediction intervals hold units that a study never saw, tried on simulated studies.
 *
 * <p>{@link org.twinrig.proof.ProofPlan} says what to try; {@link org.twinrig.proof.IntervalProof}
 * draws the studies, analyses each like any other, re-expresses the old graphs of the units it kept
 * out and compares them with their re-captures; {@link org.twinrig.proof.ProofOutcome} holds errors
 * and coverage by number of units, kind and part of the axis, and {@link org.twinrig.proof.Promise}
 * says whether the stated level is kept.
 *
 * <p>A judgement is one band of one unit. Judgements of one study are dependent (neighbouring bands
 * share errors, all its units share one estimate), so that the Monte Carlo standard error of every
 * figure is taken between studies.
 */
package org.twinrig.proof;
