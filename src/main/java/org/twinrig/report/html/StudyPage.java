package org.twinrig.report.html;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Settings;

/** The report of a study. */
public final class StudyPage {
  private StudyPage() {}

  /**
   * Writes the report.
   *
   * @param outcome what the study found
   * @param fingerprint of its inputs
   * @param problems what was wrong with the lab's files
   * @param figures its drawings
   * @return one self-contained page
   */
  public static String html(
      StudyOutcome outcome,
      InputFingerprint fingerprint,
      List<Problem> problems,
      StudyDrawings figures) {
    return Page.fill("study.jte", view(outcome, figures, closing(outcome, fingerprint, problems)));
  }

  private static StudyView view(
      StudyOutcome outcome, StudyDrawings figures, StudyView.Closing closing) {
    Settings settings = outcome.study().settings();
    return new StudyView(
        outcome.study().title(),
        lead(outcome),
        new StudyView.Entry(
            EntryWords.units(outcome),
            ScreeningWords.lead(outcome),
            EntryWords.problems(closing.problems())),
        outcome.kinds().stream().map(VerdictSentence::of).toList(),
        Octaves.sheet(outcome.kinds()),
        Legend.of(settings.tolerance(), settings.confidence()),
        EdgeWords.lead(),
        EdgeWords.howToRead(outcome.kinds().get(0).stability().resamples(), settings.confidence()),
        outcome.kinds().stream()
            .map(k -> new StudyView.KindZones(k.kind(), ZoneSentence.sheet(k, settings.zones())))
            .toList(),
        ErrorSheet.howToRead(settings.confidence()),
        ErrorSheet.of(outcome),
        BudgetSheet.view(outcome),
        ScreeningWords.view(outcome),
        SessionSheet.view(outcome),
        RepeatabilitySheet.view(outcome),
        outcome.kinds().stream().flatMap(k -> resonances(k).stream()).toList(),
        EvidenceView.of(outcome, figures),
        StudyView.Figures.of(figures),
        closing);
  }

  private static StudyView.Closing closing(
      StudyOutcome outcome, InputFingerprint fingerprint, List<Problem> problems) {
    return new StudyView.Closing(
        Method.lines(),
        Method.sources(),
        SettingSheet.of(outcome.study()),
        SettingSheet.inputs(fingerprint),
        Numbers.count(fingerprint.inputs().size(), "input file", "input files"),
        fingerprint.shortText(),
        ProblemList.of(problems),
        Cautions.all());
  }

  static String lead(StudyOutcome outcome) {
    int units = outcome.kinds().stream().mapToInt(k -> k.paired().units().size()).sum();
    return Numbers.count(units, "unit", "units")
        + " of "
        + Numbers.count(outcome.kinds().size(), "kind", "kinds")
        + (units == 1 ? " was" : " were")
        + " measured on both fixtures: "
        + outcome.study().from().label()
        + " (old) and "
        + outcome.study().to().label()
        + " (new). This report says, band by band, how far a graph made on the old one can be read"
        + " as if it had been made on the new one.";
  }

  private static List<String> resonances(KindOutcome kind) {
    return kind.wanders().stream().map(w -> ResonanceSentence.of(kind.kind(), w)).toList();
  }
}
