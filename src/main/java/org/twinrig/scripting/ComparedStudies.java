package org.twinrig.scripting;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.figure.DifferenceFigure;
import org.twinrig.report.figure.Figure;

/** Two studies of the same two fixtures held against each other. Immutable. */
public final class ComparedStudies {
  private final StudyComparison comparison;

  private ComparedStudies(StudyComparison comparison) {
    this.comparison = comparison;
  }

  /**
   * A study's result and what to call it.
   *
   * @param name as it is to be printed
   * @param result what it found
   */
  public record Named(String name, StudyResult result) {}

  /**
   * Compares two studies.
   *
   * @param first one study
   * @param second the other; of the same fixtures, by their labels, with the same bands, anchor,
   *     confidence and equivalence_db
   * @return the comparison
   * @throws UnusableInput when the two cannot be compared; says why and what would be right
   * @throws IllegalArgumentException when both have the same name
   */
  public static ComparedStudies of(Named first, Named second) throws UnusableInput {
    if (first.name.equals(second.name)) {
      throw new IllegalArgumentException("both studies are called `" + first.name + "`");
    }
    return new ComparedStudies(StudyComparison.of(List.of(named(first), named(second))));
  }

  private static StudyComparison.Named named(Named study) {
    return new StudyComparison.Named(study.name, study.name, study.result.outcome());
  }

  /** The kinds that both studies have: at least one. */
  public List<String> kinds() {
    return comparison.kinds().stream().map(StudyComparison.Kind::kind).toList();
  }

  /**
   * How the mean transfers of a kind differ, first minus second.
   *
   * @return a verdict per band: different, equivalent, or neither shown
   * @throws IllegalArgumentException when not both studies have the kind
   */
  public MeanDifference difference(String kind) {
    return pair(kind).difference();
  }

  /**
   * What both studies say together, and where the mean of a further lab is expected.
   *
   * @return one entry per band
   * @throws IllegalArgumentException when not both studies have the kind
   */
  public CombinedTransfer combined(String kind) {
    return found(kind).combined();
  }

  /**
   * Draws the difference of a kind, as the report does.
   *
   * @return the drawing
   * @throws IllegalArgumentException when not both studies have the kind
   */
  public Figure figure(String kind) {
    List<StudyComparison.Named> studies = comparison.studies();
    return DifferenceFigure.of(
        pair(kind),
        new DifferenceFigure.Label(
            "",
            studies.get(0).outcome().fingerprint()
                + " and "
                + studies.get(1).outcome().fingerprint()));
  }

  private StudyComparison.Pair pair(String kind) {
    return found(kind).pairs().get(0);
  }

  private StudyComparison.Kind found(String kind) {
    Optional<StudyComparison.Kind> found =
        comparison.kinds().stream().filter(k -> k.kind().equals(kind)).findFirst();
    return found.orElseThrow(() -> StudyResult.noSuchKind(kind, kinds()));
  }
}
