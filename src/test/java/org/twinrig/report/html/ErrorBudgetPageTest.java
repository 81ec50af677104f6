package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Setup;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.Repeatability;
import org.twinrig.internal.Later;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.StudentT;
import org.twinrig.report.figure.BudgetFigure;
import org.twinrig.report.figure.Caption;
import org.twinrig.response.Anchor;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

class ErrorBudgetPageTest {
  private static StudyOutcome outcome;

  @BeforeAll
  static void readTheDemonstration() {
    outcome = DemoStudy.read().outcome();
  }

  /** The same study with its budgets made for other settings. */
  private static StudyOutcome with(Settings settings) {
    List<KindOutcome> kinds = new ArrayList<>();
    for (KindOutcome k : outcome.kinds()) {
      kinds.add(
          new KindOutcome(
              k.paired(),
              k.estimate(),
              k.transfer(),
              k.zones(),
              k.wanders(),
              k.stability(),
              new Later<>(
                  () ->
                      ErrorBudget.of(
                          k.paired(),
                          k.estimate(),
                          outcome.study().withSettings(settings),
                          Optional.empty())),
              k.repeatability(),
              k.seatings(),
              k.evidence()));
    }
    return HandMade.outcome(outcome, settings, kinds);
  }

  /** The table of the report, its heads first. */
  private static List<List<String>> table(StudyOutcome outcome) {
    List<List<String>> table =
        PageChecks.table(
            HandMade.page(outcome),
            "Shares of the variance of one unit's translated level, and the whole");
    assertTrue(table.size() > 1, "a row at least");
    return table;
  }

  /** What the report says of the budget, one paragraph or list item a line. */
  private static List<String> told(StudyOutcome outcome) {
    String page = HandMade.page(outcome);
    return Pattern.compile("<(p|li)>(.*?)</\\1>")
        .matcher(
            page.substring(
                page.indexOf("<h2>Error budget</h2>"), page.indexOf("<h2 id=\"screened\">")))
        .results()
        .map(m -> m.group(2))
        .toList();
  }

  @Test
  void theMonteCarloRunIsTold() {
    List<String> told = told(outcome);
    assertEquals(
        "In-ear: with 20,000 draws a band, one band per octave, a Monte Carlo run after JCGM 101"
            + " agrees in 11 of 11 bands to one significant digit of the combined uncertainty; its"
            + " expanded uncertainty is between 98 % and 101 % of the budget's.",
        told.get(5));
    assertTrue(
        told.get(6)
            .endsWith(
                " % of the budget's. With so few units or repeats the distribution has no standard"
                    + " deviation; only the intervals are compared."),
        told.get(6));
  }

  @Test
  void withAnAnchorTheReportSaysThatTheCalibratorsCancel() {
    assertEquals(
        "The calibrators add nothing: every capture is pinned to the anchor, 500 Hz to 1 kHz, and"
            + " the level of either measuring chain cancels.",
        told(outcome).get(2));
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
        table(outcome).get(0));
  }

  @Test
  void withoutAnAnchorTheReportAsksForTheClass() {
    StudyOutcome asked = with(outcome.study().settings().with(Setting.ANCHOR, new Anchor.None()));
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full, and their class is not known:"
            + " nothing is combined. Write `calibrator_class` (`1`, `2` or `LS`, after IEC 60942)"
            + " into study.yaml. The shares are those of the sources that are known.",
        told(asked).get(2));
    assertEquals("Calibrators (%)", table(asked).get(0).get(6));
    for (List<String> row : table(asked).subList(1, table(asked).size())) {
      row.subList(6, 11).forEach(cell -> assertEquals("not known", cell));
    }
    assertEquals(
        "The tolerances of the ear simulators are not in the budget: the transfer belongs to the two"
            + " specimens it was measured on. Another specimen of the same type differs by what its"
            + " standard allows it.",
        told(asked).get(3));
    assertEquals("Open over-ear: no band has a combined uncertainty to check.", told(asked).get(4));
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
            .with(Setting.ANCHOR, new Anchor.None())
            .with(Setting.CALIBRATOR_CLASS, Optional.of(CalibratorClass.CLASS_1));
    StudyOutcome asked = with(settings);
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full: class 1 of IEC 60942,"
            + " rectangular within ± 0.25 dB, once for each fixture as if they were independent. If"
            + " one calibrator served both fixtures, its own error cancels and this is on the"
            + " cautious side.",
        told(asked).get(2));
    for (List<String> row : table(asked).subList(1, table(asked).size())) {
      assertTrue(Double.parseDouble(row.get(7)) >= 0.2, "0.25·√(2/3) at least");
    }
  }

  private static Fixture of(Fixture fixture, CalibratorClass limits, OptionalDouble certified) {
    return new Fixture(
        fixture.name(),
        fixture.label(),
        fixture.earSimulator(),
        fixture.simulates(),
        fixture.usable(),
        fixture.specimen(),
        Optional.of(limits),
        certified);
  }

  /** The same study with calibrators of its fixtures' own, and sessions that note more. */
  private static Study ownCalibrators() {
    Study s = outcome.study();
    List<Session> sessions = new ArrayList<>(s.sessions());
    Session first = sessions.get(0);
    sessions.set(
        0,
        new Session(
            first.name(),
            first.date(),
            first.fixture(),
            94,
            94.1,
            first.calibrator(),
            first.pressureKpa(),
            first.temperatureC(),
            "",
            "",
            "",
            first.line(),
            new Setup(
                "",
                "",
                "",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(93.9),
                Map.of("x_room", "B <2>"))));
    return new Study(
        s.folder(),
        s.title(),
        of(s.from(), CalibratorClass.LS_M, OptionalDouble.of(0.12)),
        of(s.to(), CalibratorClass.CLASS_2, OptionalDouble.empty()),
        s.units(),
        s.captures(),
        sessions,
        s.catalogue(),
        s.settings().with(Setting.ANCHOR, new Anchor.None()),
        s.capturesFolder(),
        s.inputs(),
        s.references());
  }

  @Test
  void classesOfTheFixturesOwnAndACertificateAreTold() {
    StudyOutcome own = HandMade.outcome(outcome, ownCalibrators(), outcome.kinds());
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full: class LS/M of IEC 60942 on"
            + " Flat-plate ear simulator, rectangular within ± 0.10 dB, and class 2 on Head with"
            + " soft cheeks, within ± 0.40 dB, once for each fixture as if they were independent. To"
            + " the limits on Flat-plate ear simulator the uncertainty of its calibrator is added,"
            + " ± 0.12 dB (k = 2). If one calibrator served both fixtures, its own error cancels and"
            + " this is on the cautious side.",
        told(own).get(2));
  }

  @Test
  void aClassThatIsNotKnownForOneFixtureIsTold() {
    Study own = ownCalibrators();
    Fixture unknown = new Fixture(own.to().name(), own.to().label(), "", 20, 20_000);
    Study half =
        new Study(
            own.folder(),
            own.title(),
            own.from(),
            unknown,
            own.units(),
            own.captures(),
            own.sessions(),
            own.catalogue(),
            own.settings(),
            own.capturesFolder(),
            own.inputs(),
            own.references());
    StudyOutcome asked = HandMade.outcome(outcome, half, outcome.kinds());
    assertEquals(
        "There is no anchor, so the calibrators' errors count in full, and the class of one is not"
            + " known: nothing is combined. Write `calibrator_class` (`1`, `2` or `LS`, after IEC"
            + " 60942) into study.yaml. The shares are those of the sources that are known.",
        told(asked).get(2));
    assertTrue(
        HandMade.page(asked)
            .contains(
                "on Flat-plate ear simulator ± 0.10 dB (class LS/M), on Head with soft cheeks no"
                    + " reading was judged, because no class is stated."));
  }

  @Test
  void sessionsShowTheirLastReadingAndTheLabsOwnColumns() {
    StudyOutcome own = HandMade.outcome(outcome, ownCalibrators(), outcome.kinds());
    String page = HandMade.page(own);
    assertTrue(
        page.contains(
            "A reading is in order within the limit of its calibrator's class after IEC 60942: on"
                + " Flat-plate ear simulator ± 0.10 dB (class LS/M), on Head with soft cheeks ± 0.40"
                + " dB (class 2). Where the calibrator was read at the end too, both readings are"
                + " judged, and the captures between them are corrected by the mean of both."),
        page.substring(page.indexOf("A session is a run")).substring(0, 900));
    List<List<String>> sessions =
        PageChecks.table(
            page, "Sessions: what the calibrator gave, what was read, what was added to captures");
    List<String> heads = sessions.get(0);
    assertEquals(
        List.of("Read at the end (dB)", "Moved (dB)"),
        heads.subList(heads.indexOf("Reading") + 1, heads.indexOf("Reading") + 3));
    assertEquals("x_room", heads.get(heads.size() - 1));
    List<String> first = sessions.get(1);
    assertEquals("0.00", first.get(heads.indexOf("Added (dB)")));
    assertEquals("in order", first.get(heads.indexOf("Reading")));
    assertEquals("93.90", first.get(heads.indexOf("Read at the end (dB)")));
    assertEquals("-0.20", first.get(heads.indexOf("Moved (dB)")));
    assertEquals("B &lt;2&gt;", first.get(heads.size() - 1));
    assertEquals("not read", sessions.get(2).get(heads.indexOf("Moved (dB)")));
    assertEquals("", sessions.get(2).get(heads.size() - 1));
  }

  @Test
  void whereResonancesAreLookedForIsTold() {
    String page = HandMade.page(outcome);
    assertTrue(
        page.contains(
            " They are looked for from 5 kHz to 12 kHz on open over-ear, closed over-ear and on-ear;"
                + " from 4 kHz to 15 kHz on in-ear.</p>"),
        page.substring(page.indexOf("Resonance positions")).substring(0, 600));
  }

  /** Every row is the root mean square of the bands' half-widths. */
  @Test
  void tolerancesAboveFourKilohertzStandBesideWhatAMeasurementRepeats() {
    String page = HandMade.page(outcome);
    assertTrue(
        page.contains(
            "<p>A tolerance is not to be read as stricter than a measurement made anew. Above 4 kHz"
                + " one seating of a unit on the new fixture lies, 95 times in 100, within the"
                + " half-widths below of another seating there, and of the mean of as many as in"
                + " this study. Where they are wider than the tolerance, a band marked reliable"
                + " promises a mean over seatings that a single seating does not repeat.</p>"));
    List<List<String>> table =
        PageChecks.table(
            page,
            "Above 4 kHz: what is asked of a translated level, and how far a direct measurement"
                + " repeats");
    assertEquals(2 * outcome.kinds().size(), table.size() - 1);
    for (int k = 0; k < outcome.kinds().size(); k++) {
      KindOutcome kind = outcome.kinds().get(k);
      List<Repeatability.Scatter> bands =
          kind.repeatability().to().stream()
              .flatMap(Optional::stream)
              .filter(s -> s.band().midHz() >= 4000 && s.band().midHz() < 10_000)
              .toList();
      double one = 0;
      for (Repeatability.Scatter s : bands) {
        double half = StudentT.twoSided(0.95, s.degreesOfFreedom()) * s.sdDb() * Math.sqrt(2);
        one += half * half / bands.size();
      }
      List<String> row = table.get(1 + 2 * k);
      assertEquals(
          List.of("4 kHz to 10 kHz", "1.50", "3.00", Numbers.fixed(Math.sqrt(one), 2)),
          row.subList(1, 5));
      assertTrue(Double.parseDouble(row.get(5)) < Math.sqrt(one));
    }
  }

  @Test
  void aKindWithoutEstimatesIsSaidToHaveNone() {
    KindOutcome empty = HandMade.kind("banded", 2, "----------");
    assertEquals(
        "no band has a combined uncertainty to check.",
        Page.fill("study/check.jte", Map.of("kind", empty)));
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
