package org.twinrig.report.table;

import java.util.List;
import java.util.function.Function;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.translation.CatalogueRun;

/** What is doubted of a study and of a catalogue, one line a cause. */
final class DoubtResults {
  private DoubtResults() {}

  static final Result<StudyOutcome> STUDY = doubts(StudyOutcome::doubts);

  static final Result<CatalogueRun.Outcome> CATALOGUE = doubts(CatalogueRun.Outcome::doubts);

  private static <S> Result<S> doubts(Function<S, List<Doubt>> of) {
    return Result.of(
        "doubts.csv",
        Columns.<Doubt>start()
            .word("subject", d -> d.subject().word())
            .text("name", Doubt::name)
            .text("fixture", Doubt::fixture)
            .text("file", Doubt::file)
            .word("doubt", Doubt::doubt)
            .text("size", Doubt::size)
            .text("limit", Doubt::limit)
            .text("likely_cause", Doubt::likelyCause)
            .text("effect", Doubt::effect)
            .text("confirmed", Doubt::confirmed),
        source -> of.apply(source).stream());
  }
}
