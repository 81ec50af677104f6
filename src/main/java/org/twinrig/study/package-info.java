/**
 * What the lab declared about a study, and the paired units it yields per kind.
 *
 * <p>A study is a folder a person can write by hand. {@link org.twinrig.study.StudyReader} reads
 * study.yaml and the tables it names into a {@link org.twinrig.study.Study}: two fixtures, units,
 * rows of captures, sessions and {@link org.twinrig.study.Settings}. {@link
 * org.twinrig.study.CaptureReading} then reads the curves, {@link
 * org.twinrig.study.Study#corrected} makes each session's calibrator read true, and {@link
 * org.twinrig.study.InputFingerprint} says what the result was made from.
 *
 * <p>What becomes of input that is wrong:
 *
 * <ul>
 *   <li>A fault of study.yaml (an unknown key, a wrong value, a file that is not there) or of a
 *       table's header stops the study with {@link org.twinrig.problem.UnusableInput}, which names
 *       all such faults at once. A setting that is left out has the value of {@link
 *       org.twinrig.study.Settings#defaults()}; a setting that is wrong never has.
 *   <li>A fault of a row, or of the capture file it names, costs that row; the rest goes on.
 *   <li>What is allowed but may surprise (a unit seen on one fixture only, two kinds that differ by
 *       a space, one curve under two names) is noted.
 *   <li>A capture the lab excluded stays in the study with its reason; whoever computes leaves it
 *       out, whoever draws shows it.
 * </ul>
 *
 * <p>A name in these files is relative to the file it stands in and must lead to a file below the
 * data root: the folder that holds {@code studies} when the study lies directly in a folder of that
 * name, otherwise the study's own folder, or what {@code data_root} says. A data root wider than
 * the folder around the study, or one that is somebody's home, has to be confirmed by whoever runs
 * the study.
 */
package org.twinrig.study;
