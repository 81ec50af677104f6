package org.twinrig.scripting;

import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.problem.Problem;
import org.twinrig.report.table.Result;
import org.twinrig.report.table.StudyResults;
import tech.tablesaw.api.Table;

/** What a study found. Immutable. */
public final class StudyResult {
  private final StudyOutcome outcome;
  private final List<Problem> problems;
  private final int threads;

  StudyResult(StudyOutcome outcome, List<Problem> problems, int threads) {
    this.outcome = outcome;
    this.problems = List.copyOf(problems);
    this.threads = threads;
  }

  /** The kinds that have units on both fixtures: their names, in the order of the units table. */
  public List<String> kinds() {
    return outcome.kinds().stream().map(KindOutcome::kind).toList();
  }

  /**
   * What was found about one kind, named as the lab writes it.
   *
   * @throws IllegalArgumentException when the study has no such kind; says which it has
   */
  public KindResult kind(String kind) {
    return outcome.kinds().stream()
        .filter(k -> k.kind().equals(kind))
        .findFirst()
        .map(k -> new KindResult(outcome, k))
        .orElseThrow(() -> noSuchKind(kind, kinds()));
  }

  /**
   * A table of results to reckon with, in typed columns with the names and units of the file.
   *
   * @param file its name in a result folder, such as {@code transfer.csv}
   * @throws IllegalArgumentException when there is no such table; says which it has
   */
  public Table table(String file) {
    return StudyResults.ALL.stream()
        .filter(r -> r.file().equals(file))
        .findFirst()
        .orElseThrow(
            () -> none("table", file, StudyResults.ALL.stream().map(Result::file).toList()))
        .table(outcome);
  }

  /** What re-expresses graphs: the transfers of all kinds with their marks. */
  public GraphTranslation translation() {
    return new GraphTranslation(outcome.translation(), Optional.of(outcome), threads);
  }

  /**
   * What is claimed of the study and contradicted by its data, one doubt for each cause; those that
   * the lab's tables answer are among them, with the answer.
   */
  public List<Doubt> doubts() {
    return outcome.doubts();
  }

  /** Everything that was wrong or worth knowing, from reading to marking, in that order. */
  public List<Problem> problems() {
    return problems;
  }

  /** What the study's inputs are known by: as reports print it. */
  public String fingerprint() {
    return outcome.fingerprint();
  }

  /** All that reports are made from, whose parts may change between versions. */
  public StudyOutcome outcome() {
    return outcome;
  }

  static IllegalArgumentException noSuchKind(String kind, List<String> kinds) {
    return none("kind", kind, kinds);
  }

  private static IllegalArgumentException none(String what, String name, List<String> known) {
    return new IllegalArgumentException(
        "there is no %s `%s`; it must be one of %s"
            .formatted(what, name, String.join(", ", known)));
  }
}
