package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Problem;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.study.PairedUnits;

class StudyPageTest {
  private static DemoStudy demo;
  private static String page;

  @BeforeAll
  static void readTheDemonstration() {
    demo = DemoStudy.read();
    page = html(demo.outcome(), demo.problems());
  }

  private static String html(StudyOutcome outcome, List<Problem> problems) {
    return StudyPage.html(
        outcome, demo.fingerprint(), problems, StudyDrawings.of(demo.outcome(), 2));
  }

  @Test
  void theReportGoesFromTheVerdictToTheCautions() {
    assertEquals(
        List.of(
            "h1 Plate to head",
            "h2 1 doubt",
            "h2 How to read the marks",
            "h2 Mean transfer",
            "h2 Shape and level",
            "h2 Where old graphs can stand",
            "h2 Zones and their reasons",
            "h3 open over-ear",
            "h3 closed over-ear",
            "h3 in-ear",
            "h3 on-ear",
            "h2 Does it predict?",
            "h3 Do the intervals hold?",
            "h3 Units held out",
            "h2 Error budget",
            "h2 Captures screened out",
            "h3 Units that depart from their kind",
            "h2 Sessions",
            "h2 Repeatability",
            "h2 Resonance positions",
            "h2 Features that units share",
            "h2 Method",
            "h3 Sources",
            "h2 Inputs and fingerprint",
            "h2 Problems met while reading",
            "h2 Cautions"),
        PageChecks.headings(page));
  }

  @Test
  void thePageIsSoundHtmlThatStandsAlone() {
    assertTrue(page.startsWith("<!DOCTYPE html>\n<html lang=\"en\">\n"), page.substring(0, 80));
    PageChecks.tagsClose(page);
    PageChecks.standsAlone(page);
    PageChecks.saysNothingVoid(page);
    PageChecks.tablesCanBeRead(page);
  }

  @Test
  void everyFigureOfTheStudyIsShownWithItsText() {
    assertEquals(35, PageChecks.count(page, "<figure "));
    assertEquals(35, PageChecks.count(page, "<figcaption class=\"spoken\">[^<]+</figcaption>"));
  }

  @Test
  void theSameStudyGivesTheSamePage() {
    assertEquals(page, html(demo.outcome(), demo.problems()));
  }

  @Test
  void namesFromTheLabAreShownAsText() {
    String hostile = "<script>alert(1)</script>";
    StudyOutcome outcome =
        HandMade.outcome(
            demo.outcome(),
            demo.outcome().study().settings(),
            List.of(
                HandMade.kind(hostile, 3, "RRRRRRRRRR"),
                HandMade.kind("=cmd()\" onclick=\"x", 3, "RRRRRRRRRR"),
                demo.outcome().kinds().get(0)));
    String told =
        html(outcome, List.of(Problem.refused("a</p>.csv", 3, hostile, "write <b>a level</b>")));
    assertEquals(1, PageChecks.count(told, "<script>"));
    assertFalse(told.contains("</p>.csv"), "unescaped file name");
    assertFalse(told.contains("<b>"), "unescaped remedy");
    assertTrue(
        told.contains("aria-label=\"Zones of the kind =cmd()&#34; onclick=&#34;x: runs of bands"),
        "a quote ends an attribute and must be escaped in one; in text it is only a character");
    assertTrue(told.contains("<h3>&lt;script&gt;alert(1)&lt;/script&gt;</h3>"));
    assertTrue(
        told.contains(
            "<li>a&lt;/p&gt;.csv:3: &lt;script&gt;alert(1)&lt;/script&gt;;"
                + " write &lt;b&gt;a level&lt;/b&gt;</li>"));
    PageChecks.tagsClose(told);
  }

  @Test
  void figuresGivenApartStandInTheirPlaces() {
    StudyDrawings figures =
        new StudyDrawings(
            List.of(
                HandMade.figure("transfer-one"),
                HandMade.figure("error-two"),
                HandMade.figure("budget-three"),
                HandMade.figure("captures-four"),
                HandMade.figure("drift-five"),
                HandMade.figure("repeatability-six"),
                HandMade.figure("calibration-seven"),
                HandMade.figure("resonance-eight"),
                HandMade.figure("feature-nine")));
    String told = StudyPage.html(demo.outcome(), demo.fingerprint(), List.of(), figures);
    List<Integer> places =
        Stream.of(
                "transfer-one",
                "error-two",
                "calibration-seven",
                "budget-three",
                "captures-four",
                "drift-five",
                "repeatability-six",
                "resonance-eight",
                "feature-nine")
            .map(name -> told.indexOf("alt of " + name))
            .toList();
    assertFalse(places.contains(-1), places.toString());
    assertEquals(places.stream().sorted().toList(), places);
    assertTrue(told.contains("<p>Nothing was refused.</p>"));
  }

  @Test
  void theInputsAreShownByTheStartOfTheirSums() {
    demo.fingerprint()
        .inputs()
        .forEach(i -> assertTrue(page.contains(i.sha256().substring(0, 12)), i.name()));
    assertTrue(page.contains("<code>" + demo.fingerprint().shortText() + "</code>"));
  }

  @Test
  void drawingsOfAHostileKindStayDrawings() {
    KindOutcome first = demo.outcome().kinds().get(0);
    PairedUnits paired = first.paired();
    KindOutcome renamed =
        new KindOutcome(
            new PairedUnits(
                "<script>\"&x", paired.grid(), paired.units(), paired.from(), paired.to()),
            first.estimate(),
            first.transfer(),
            first.zones(),
            first.wanders(),
            first.stability(),
            first.budgeted(),
            first.repeatability(),
            first.seatings(),
            first.evidence());
    StudyOutcome outcome =
        new StudyOutcome(
            demo.outcome().study(),
            demo.outcome().fingerprint(),
            demo.outcome().captures(),
            demo.outcome().screening(),
            List.of(renamed),
            Optional.empty(),
            List.of(),
            List::of);
    String told =
        StudyPage.html(outcome, demo.fingerprint(), List.of(), StudyDrawings.of(outcome, 1));
    assertEquals(1, PageChecks.count(told, "<script>"));
    PageChecks.tagsClose(told);
  }

  @Test
  void aReliableMarkPromisesAToleranceAndTheCautionsStand() {
    for (String told :
        List.of(
            "<dd>the half-width is at most 1.5 dB: a new measurement is expected within that of the"
                + " translated level, 95 times in a hundred, once both are lined up from 500 Hz to 1"
                + " kHz.</dd>",
            "<p>The note <em>not ear-like</em> lowers no mark. It says where a fixture is not made to"
                + " be like a human ear: two fixtures can be compared there, but the level says less"
                + " of what a person hears.</p>",
            "the prediction interval is within the reliable tolerance; a fixture is not made to be"
                + " like a human ear here, which lowers no mark",
            "<li>A calibrator gives 94 or 114 dB and is for the microphone alone. Never play a sweep"
                + " while anyone wears the headphone.</li>")) {
      assertTrue(page.contains(told), told);
    }
  }

  @Test
  void whatWasScreenedOutIsCounted() {
    assertTrue(
        page.contains(
            "<p>The rules doubt 16 captures (lost seal 12, odd seating 3, channel imbalance 1) and left out"
                + " 15; the lab left out 4. Nothing was deleted: every file is still in its place."));
    assertTrue(
        page.contains(
            "<td class=\"t\">lost seal: bass below the unit's best seal is 5.8 dB, but at most 2.0"
                + " dB is allowed</td>"));
    assertTrue(
        page.contains(
            "<li>in-ear: leaving out the 4 captures that the rules do not believe moves the mean"
                + " transfer by at most 0.9 dB (up, at 21.8 Hz). From 20 to 200 Hz it is -3.94 dB on"
                + " average with them and -3.36 dB without.</li>"));
    assertTrue(
        page.contains(
            "<li>on-ear: with 3 units it cannot be judged whether one departs from the others: that"
                + " takes 5.</li>"));
  }
}
