/**
 * The whole way of a study, once: read, screen, pair, estimate, mark, check.
 *
 * <p>{@link org.twinrig.analysis.Analysis} walks it and returns a {@link
 * org.twinrig.analysis.StudyOutcome}, which is all that reports, files and commands are made from.
 */
package org.twinrig.analysis;
