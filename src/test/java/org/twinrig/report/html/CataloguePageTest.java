package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.study.Settings;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;

class CataloguePageTest {
  private static final Translation TRANSLATION =
      new Translation(
          new Translation.Origin("Plate to head", "the plate", "the head", "1 kHz", "0123456789ab"),
          new org.twinrig.response.Anchor.Range(300, 1000),
          BandGrid.covering(31.5, 16_000, 1),
          0.95,
          Settings.defaults().tolerance(),
          5,
          Translation.Handling.plain(),
          List.of(
              HandMade.kind("in-ear", 8, "UCRRRRRRCU").transfer(),
              HandMade.kind("on-ear", 3, "UUUUUUUUUU").transfer()),
          List.of());

  private static String html(int rows, List<CatalogueRun.Line> lines, Problem... problems) {
    CatalogueRun.Outcome outcome =
        new CatalogueRun.Outcome(rows, lines, java.util.Optional.empty(), List.of());
    return CataloguePage.html(
        TRANSLATION,
        new Findings<>(outcome, List.of(problems)),
        CatalogueOverview.of(TRANSLATION, outcome),
        List.of(HandMade.figure("an example")),
        List.of());
  }

  private static List<CatalogueRun.Line> some() {
    return List.of(
        HandMade.line("G-1", "in-ear", Decision.PUBLISH, 0),
        HandMade.line("G-4", "on-ear", Decision.RE_MEASURE, 2),
        HandMade.line("G-3", "on-ear", Decision.RE_MEASURE, 5),
        HandMade.line("G-2", "on-ear", Decision.RE_MEASURE, 2),
        HandMade.line("G-5", "in-ear", Decision.PUBLISH_WITH_MARKS, 0.5));
  }

  @Test
  void theReMeasureListStandsOnTop() {
    String page = html(5, some());
    assertEquals(
        List.of(
            "h1 Plate to head: the back catalogue",
            "h2 Measure these again",
            "h2 Graphs to publish",
            "h2 Is the old fixture still the old fixture?",
            "h2 Overview",
            "h2 How graphs were handled",
            "h2 How to read the marks",
            "h2 Examples",
            "h2 Problems met while reading",
            "h2 Inputs and fingerprint",
            "h2 Cautions"),
        PageChecks.headings(page));
    PageChecks.tagsClose(page);
    PageChecks.standsAlone(page);
    PageChecks.saysNothingVoid(page);
    PageChecks.tablesCanBeRead(page);
    assertEquals(page, html(5, some()));
  }

  /** The re-measure list. */
  private static List<List<String>> again(List<CatalogueRun.Line> lines) {
    List<List<String>> table = PageChecks.table(html(lines.size(), lines), "Re-measure list");
    return table.subList(1, table.size());
  }

  @Test
  void theWorstGraphComesFirstAndNamesBreakTies() {
    assertEquals(List.of("G-3", "G-2", "G-4"), again(some()).stream().map(r -> r.get(0)).toList());
  }

  @Test
  void theRuleStandsAboveTheList() {
    assertTrue(
        html(5, some())
            .contains(
                "<p>3 graphs to measure again, worst first. Listed is every graph with more than"
                    + " 1.0 octaves lost (unreliable or missing) between 100 Hz and 10 kHz. Where"
                    + " the study has too few units of a kind, or none, every band of its graphs"
                    + " is lost.</p>"));
  }

  @Test
  void aReasonThatDecidesAloneStandsAlone() {
    assertEquals(
        List.of(
            "too few units were measured on both fixtures",
            "the study has no units of this kind",
            "the kind is not known, so the interval must cover every kind of the study with enough"
                + " units",
            "single units depart too far from what is predicted for them; the units of the kind do"
                + " not differ alike"),
        again(
                List.of(
                    HandMade.again("G-1", "on-ear", Reason.FEW_UNITS, Reason.DECLARED_ZONE),
                    HandMade.again(
                        "G-2", "headband", Reason.KIND_NOT_IN_THE_STUDY, Reason.SMOOTHED_MORE),
                    HandMade.again("G-3", "unknown", Reason.WIDE_PREDICTION),
                    HandMade.again("G-4", "in-ear", Reason.WIDE_PREDICTION, Reason.UNITS_DISAGREE)))
            .stream()
            .map(r -> r.get(5))
            .toList());
  }

  @Test
  void whatWentInIsWhatCameOut() {
    assertTrue(
        html(7, some())
            .contains(
                ">7 graphs, all made on the plate, read as if made on the head after lining up over 300 Hz to"
                    + " 1 kHz. 5 were"
                    + " re-expressed.</p>"));
    assertTrue(html(5, some()).contains(" 5 were re-expressed, none refused.</p>"));
    String page = html(6, some(), Problem.refused("g.csv", 4, "no level", "write one"));
    assertTrue(page.contains("<li>g.csv:4: no level; write one</li>"));
    assertTrue(
        page.contains(
            "<a href=\"#problems\">1 graph was refused and is not judged here: which, and why</a>"));
  }

  @Test
  void kindsAreCountedByDecision() {
    assertEquals(
        List.of(
            List.of(
                "Kind",
                "Publish (graphs)",
                "Publish with marks (graphs)",
                "Check first (graphs)",
                "Re-measure (graphs)",
                "All (graphs)"),
            List.of("in-ear", "1", "1", "0", "0", "2"),
            List.of("on-ear", "0", "0", "0", "3", "3")),
        decisions(some()));
    assertEquals(List.of(), decisions(List.of()));
  }

  private static List<List<String>> decisions(List<CatalogueRun.Line> lines) {
    return PageChecks.table(html(lines.size(), lines), "Graphs by kind and decision");
  }

  @Test
  void aLargeCatalogueIsCutWithAWordWhereTheRestIs() {
    List<CatalogueRun.Line> lines = new ArrayList<>();
    List<Decision> decisions =
        List.of(Decision.PUBLISH, Decision.PUBLISH_WITH_MARKS, Decision.RE_MEASURE);
    for (int k = 0; k < 10_000; k++) {
      Decision decision = decisions.get(k % 3);
      lines.add(HandMade.line("G-" + k, "in-ear", decision, decision == Decision.PUBLISH ? 0 : 2));
    }
    String page = html(10_000, lines);
    assertTrue(page.contains("<p>The first 500 are listed here; summary.csv has all 3333.</p>"));
    assertTrue(page.contains("<p>The first 200 are listed here; summary.csv has all 3334.</p>"));
    assertTrue(page.length() < 1_000_000, () -> page.length() + " characters");
  }

  @Test
  void anEmptyCatalogueIsTold() {
    String page = html(0, List.of());
    assertTrue(page.contains("<p>No graph needs to be measured again.</p>"));
    assertTrue(page.contains("<p>0 graphs to publish with marks.</p>"));
    PageChecks.tagsClose(page);
  }

  @Test
  void namesFromTheLabAreShownAsText() {
    String hostile = "<script>alert(1)</script>";
    String page = html(1, List.of(HandMade.line(hostile, hostile, Decision.RE_MEASURE, 3)));
    assertEquals(1, PageChecks.count(page, "<script>"));
    assertTrue(
        page.contains("<th scope=\"row\" class=\"s\">&lt;script&gt;alert(1)&lt;/script&gt;"));
    assertFalse(page.contains("</script></th>"));
  }
}
