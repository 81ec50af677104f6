package org.twinrig.scripting;

import java.util.List;
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

  /** A study's result and the name by which it is to be printed. */
  public record Named(String name, StudyResult result) {}

  /**
   * Compares two studies of the same fixtures, by their labels, with the same bands, anchor,
   * confidence and equivalence_db.
   *
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
   * How the mean transfers of a kind differ, first minus second: a verdict per band (different,
   * equivalent, or neither shown). A kind that not both studies have is an {@link
   * IllegalArgumentException}, here and below.
   */
  public MeanDifference difference(String kind) {
    return found(kind).pairs().get(0).difference();
  }

  /** What both studies say together, and where a further lab's mean is expected, per band. */
  public CombinedTransfer combined(String kind) {
    return found(kind).combined();
  }

  /** The difference of a kind, drawn as in the report. */
  public Figure figure(String kind) {
    List<String> fingerprints =
        comparison.studies().stream().map(s -> s.outcome().fingerprint()).toList();
    return DifferenceFigure.of(found(kind).pairs().get(0), "", String.join(" and ", fingerprints));
  }

  private StudyComparison.Kind found(String kind) {
    return comparison.kinds().stream()
        .filter(k -> k.kind().equals(kind))
        .findFirst()
        .orElseThrow(() -> StudyResult.noSuchKind(kind, kinds()));
  }
}
