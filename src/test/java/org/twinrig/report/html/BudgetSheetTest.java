package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.response.Anchor;
import org.twinrig.study.CalibratorClass;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

class BudgetSheetTest {
  private static StudyOutcome outcome;

  @BeforeAll
  static void readTheDemonstration() {
    outcome = DemoStudy.read().outcome();
  }

  /** The same study with its budgets made for other settings. */
  private static StudyOutcome with(Settings settings) {
    Study s = outcome.study();
    Study study =
        new Study(
            s.folder(),
            s.title(),
            s.from(),
            s.to(),
            s.units(),
            s.captures(),
            s.sessions(),
            s.catalogue(),
            settings,
            s.capturesFolder(),
            s.inputs());
    List<KindOutcome> kinds = new ArrayList<>();
    for (KindOutcome k : outcome.kinds()) {
      kinds.add(
          new KindOutcome(
              k.paired(),
              k.estimate(),
              k.transfer(),
              k.zones(),
              k.wanders(),
              k.errors(),
              k.stability(),
              ErrorBudget.of(k.paired(), k.estimate(), settings),
              k.repeatability(),
              k.seatings(),
              k.evidence()));
    }
    return new StudyOutcome(
        study,
        outcome.fingerprint(),
        List.of(),
        outcome.screening(),
        kinds,
        Optional.empty(),
        List.of());
  }

  private static List<String> heads(StudyView.Budget budget) {
    return budget.sheet().columns().stream().map(c -> c.head().replace("\u00ad", "")).toList();
  }

  @Test
  void theReportSaysWhatIsBudgetedAndHowToReadIt() {
    StudyView.Budget budget = BudgetSheet.view(outcome);
    assertEquals(
        "This is the budget of one quantity: how far the difference that a single new unit of the"
            + " kind shows between the fixtures, averaged over as many seatings on each as in this"
            + " study, lies from the mean transfer. Seating that was never repeated cannot be told"
            + " from the units and is counted with them. The marks do not rest on this budget but on"
            + " the errors above.",
        budget.howToRead().get(0));
    assertEquals(
        "The table gives the share of the variance that each source adds. Where units have the"
            + " greatest share, more seatings do not help; where seating has it, more seatings do;"
            + " where the fit of the mean has it, more units do. The combined standard uncertainty is"
            + " the root of the mean variance over the bands of a region; times the factor it is the"
            + " expanded uncertainty, ± at 95 %. Few degrees of freedom (d.f., the fewest of any"
            + " band) mean that the uncertainty itself is badly known, and raise the factor.",
        budget.howToRead().get(1));
    assertEquals(
        "In-ear: with 20,000 draws a band, one band per octave, a Monte Carlo run after JCGM 101"
            + " agrees in 11 of 11 bands to one significant digit of the combined uncertainty; its"
            + " expanded uncertainty is between 98 % and 101 % of the budget's.",
        budget.checks().get(2));
    assertTrue(
        budget
            .checks()
            .get(3)
            .endsWith(
                " % of the budget's. With so few units or repeats the distribution has no standard"
                    + " deviation; only the intervals are compared."),
        budget.checks().get(3));
  }

  @Test
  void withAnAnchorTheReportSaysThatTheCalibratorsCancel() {
    StudyView.Budget budget = BudgetSheet.view(outcome);
    assertEquals(
        "The calibrators add nothing: every capture is pinned to the anchor, 300 Hz to 1 kHz, and"
            + " the level of either measuring chain cancels.",
        budget.howToRead().get(2));
    assertEquals(
        List.of(
            "Kind",
            "Region",
            "Units (%)",
            "Seating, old (%)",
            "Seating, new (%)",
            "Fit (%)",
            "Combined (dB)",
            "Least d.f.",
            "Factor",
            "Expanded (dB)"),
        heads(budget));
  }

  @Test
  void withoutAnAnchorTheReportAsksForTheClass() {
    StudyOutcome asked = with(outcome.study().settings().withAnchor(new Anchor.None()));
    StudyView.Budget budget = BudgetSheet.view(asked);
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full, and their class is not known:"
            + " nothing is combined. Write `calibrator_class` (`1`, `2` or `LS`, after IEC 60942)"
            + " into study.yaml. The shares are those of the sources that are known.",
        budget.howToRead().get(2));
    assertEquals("Calibrators (%)", heads(budget).get(6));
    for (List<Sheet.Cell> row : budget.sheet().rows()) {
      row.subList(6, 11).forEach(cell -> assertEquals("not known", cell.text()));
    }
    assertEquals(
        "Open over-ear: no band has a combined uncertainty to check.", budget.checks().get(0));
    assertTrue(
        BudgetFigure.of(asked.kinds().get(0), new Caption("open over-ear", 12, 0.95, "f00d"))
            .svg()
            .contains("without the calibrators, which are not known"));
  }

  @Test
  void withoutAnAnchorTheClassCountsOnceForEachFixture() {
    Settings settings =
        outcome
            .study()
            .settings()
            .withAnchor(new Anchor.None())
            .withCalibratorClass(CalibratorClass.CLASS_1);
    StudyView.Budget budget = BudgetSheet.view(with(settings));
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full: class 1 of IEC 60942,"
            + " rectangular within ± 0.25 dB, once for each fixture as if they were independent. If"
            + " one calibrator served both fixtures, its own error cancels and this is on the"
            + " cautious side.",
        budget.howToRead().get(2));
    for (List<Sheet.Cell> row : budget.sheet().rows()) {
      assertTrue(Double.parseDouble(row.get(7).text()) >= 0.2, "0.25·√(2/3) at least");
    }
  }

  @Test
  void aKindWithoutEstimatesIsSaidToHaveNone() {
    KindOutcome empty = HandMade.kind("banded", 2, "----------");
    assertEquals(
        "Banded: no band has a combined uncertainty to check.", BudgetCheckSentence.of(empty));
    assertEquals(
        "Banded: no band has an estimate",
        BudgetFigure.of(empty, new Caption("banded", 2, 0.95, "f00d")).title());
  }

  @Test
  void theFigureSaysWhereTheErrorIsAndWhatItIs() {
    KindOutcome inEar =
        outcome.kinds().stream().filter(k -> k.kind().equals("in-ear")).findFirst().orElseThrow();
    assertEquals(
        "In-ear: most error from 10 kHz to 20 kHz, 91 % between units",
        BudgetFigure.of(inEar, new Caption("in-ear", 13, 0.95, "f00d")).title());
  }
}
