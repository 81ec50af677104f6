/**
 * Claims of the lab that its own data contradict, or that nothing supports.
 *
 * <p>In: a study as declared, with its captures. Out: doubts, each one line that names a cause. A
 * doubt changes no number; it says what to look at. Begin with {@link org.twinrig.doubt.UnitDoubts}
 * for units and {@link org.twinrig.doubt.GraphDoubts} for old graphs; what names and tables say of
 * graphs is held against them where they are re-expressed. {@link org.twinrig.doubt.Answers} says
 * how a lab answers.
 */
package org.twinrig.doubt;
