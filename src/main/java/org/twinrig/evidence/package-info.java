/**
 * Whether all this holds. In go the paired units of a kind and its {@link
 * org.twinrig.regression.KindEstimate}; out come errors on units a rule never saw ({@link
 * org.twinrig.evidence.Validation}, {@link org.twinrig.evidence.Trial}), where the fixtures agree
 * ({@link org.twinrig.evidence.Equivalence}), whether units keep their rank ({@link
 * org.twinrig.evidence.RankKeeping}), where errors come from ({@link
 * org.twinrig.evidence.ErrorBudget}), what to measure next ({@link org.twinrig.evidence.Plan}), and
 * whether two studies differ ({@link org.twinrig.evidence.MeanDifference}).
 *
 * <p>Begin with {@code analysis.Analysis}, which asks all of these; each class is one procedure
 * with its result, and names its source.
 */
package org.twinrig.evidence;
