/**
 * How people reach all this from a script or a notebook: a few types that read a study, analyse it
 * and give out its numbers and figures.
 *
 * <p>Nothing is worked out here. What is joined here stays: names, arguments and meanings of this
 * package change only with a note in the change log. Values of other packages that are handed out
 * (bands, marks, reasons, zones, levels, responses, figures) are small, immutable and compared by
 * content. Levels are decibels, frequencies hertz, widths octaves; what is missing is an {@link
 * java.util.Optional}, never NaN. Work goes on as many threads as there are processors, and results
 * do not depend on it.
 *
 * <p>What is wrong with a lab's files is collected under {@code problems()}; only where nothing can
 * be given at all is {@link org.twinrig.problem.UnusableInput} thrown, with file, line and remedy.
 * Mistakes of the caller, such as a kind the study does not have, are an {@link
 * java.lang.IllegalArgumentException} that says what would be right.
 *
 * <p>What the data contradict of what a lab claims is given as {@code doubts()} of a study and of a
 * catalogue. A graph of a catalogue with a doubt that is not answered has the decision {@code check
 * first}; a doubt never changes a number.
 *
 * <p>A whole script:
 *
 * <pre>{@code
 * import java.nio.file.Files;
 * import java.nio.file.Path;
 * import java.util.Locale;
 * import org.twinrig.intake.Reading;
 * import org.twinrig.problem.UnusableInput;
 * import org.twinrig.reliability.Mark;
 * import org.twinrig.reliability.Reason;
 * import org.twinrig.scripting.KindResult;
 * import org.twinrig.scripting.LabStudy;
 * import org.twinrig.scripting.ReexpressedGraph;
 * import org.twinrig.scripting.StudyResult;
 * import org.twinrig.scripting.TransferBand;
 *
 * class Example {
 *   public static void main(String[] arguments) throws UnusableInput, java.io.IOException {
 *     LabStudy study = LabStudy.read(Path.of("studies/plate-to-head"));
 *     study.problems().forEach(p -> System.out.println(p.text()));
 *
 *     StudyResult result = study.analyse();
 *     KindResult inEar = result.kind("in-ear");
 *     TransferBand band = inEar.at(9000);
 *     TransferBand.Estimate transfer = band.estimate().orElseThrow();
 *     System.out.printf(
 *         Locale.ROOT,
 *         "%.0f Hz: the kind %+.1f dB +/- %.1f, a unit +/- %.1f: %s (%s)%n",
 *         band.midHz(),
 *         transfer.meanDb(),
 *         transfer.meanHalfDb(),
 *         transfer.predictionHalfDb(),
 *         band.mark().word(),
 *         Reason.join(band.reasons()));
 *     Files.write(Path.of(arguments[0]), inEar.figure().png());
 *
 *     Reading curve = LabStudy.readCurve(Path.of("demo-data/plate-to-head/catalogue/g-003.csv"));
 *     ReexpressedGraph graph = result.translation().apply(curve.response(), "in-ear");
 *     System.out.printf(
 *         Locale.ROOT,
 *         "%s: %.1f octaves reliable%n",
 *         graph.decision().word(),
 *         graph.graph().octaves(Mark.RELIABLE));
 *   }
 * }
 * }</pre>
 *
 * <p>More stands in the notebooks of {@code notebooks-java}.
 */
package org.twinrig.scripting;
