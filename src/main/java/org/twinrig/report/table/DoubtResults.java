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
        "claim that the data contradict or leave open; one cause, one row",
        Columns.<Doubt>start()
            .word("subject", d -> d.subject().word())
            .help("*session*, *study* or *catalogue*")
            .text("name", Doubt::name)
            .help("of the session or kind; empty where it is about all")
            .text("fixture", Doubt::fixture)
            .text("file", Doubt::file)
            .word("doubt", Doubt::doubt)
            .text("size", Doubt::size)
            .text("limit", Doubt::limit)
            .help("what was found, and from where on it is doubted, with their unit")
            .text("likely_cause", Doubt::likelyCause)
            .text("effect", Doubt::effect)
            .help("what it does, and what to do")
            .text("confirmed", Doubt::confirmed)
            .help("the lab's answer; empty while the doubt is open"),
        source -> of.apply(source).stream());
  }
}
