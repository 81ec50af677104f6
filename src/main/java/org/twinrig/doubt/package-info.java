/**
 * Claims of the lab that its own data contradict, or that nothing supports.
 *
 * <p>In: a study as declared, with its captures. Out: doubts, each one line that names a cause. A
 * doubt changes no number; it says what to look at. Begin with {@link
 * org.twinrig.doubt.FixtureAndTime}; what is doubted of old graphs is found where they are
 * re-expressed.
 */
package org.twinrig.doubt;
