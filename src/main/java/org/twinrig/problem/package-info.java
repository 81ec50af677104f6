/**
 * What was wrong with the lab's files, with place and remedy.
 *
 * <p>Bad input among good input is collected, not thrown: a reader returns {@link
 * org.twinrig.problem.Findings} with what it could read and a {@link org.twinrig.problem.Problem}
 * for everything it could not. Only when nothing can be given at all does it throw {@link
 * org.twinrig.problem.UnusableInput}, which carries the same problems.
 */
package org.twinrig.problem;
