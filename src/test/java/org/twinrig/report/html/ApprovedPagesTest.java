package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.SessionStudy;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.report.ExampleChoice;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Change;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/**
 * Every page as a whole, word for word: what users read lies in src/test/resources/approved,
 * without drawings, style, script and the files of single captures. {@code -Dtwinrig.approve=true}
 * writes the pages anew, to be read and committed.
 */
class ApprovedPagesTest {
  private static final Path APPROVED = Path.of("src", "test", "resources", "approved");
  private static DemoStudy demo;

  @TempDir private Path folder;

  @BeforeAll
  static void readTheDemonstration() {
    demo = DemoStudy.read();
  }

  private static void isApproved(String name, String page) throws IOException {
    String text =
        withoutDrawings(page)
            .replaceAll("(?s)<(style|script)\\b.*?</\\1>", "<$1/>")
            .replaceAll("<tr><th scope=\"row\" class=\"f\">[^<]*captures/.*\n", "")
            .replaceAll("<!-- sha256 [0-9a-f]+ -->\n", "")
            .replaceAll("\n{2,}", "\n");
    Path file = APPROVED.resolve("page-" + name + ".html");
    if (Boolean.getBoolean("twinrig.approve")) {
      Files.writeString(file, text);
    }
    assertEquals(Files.readString(file).replace("\r\n", "\n"), text, name);
    PageChecks.tagsClose(page);
    PageChecks.standsAlone(page);
    PageChecks.saysNothingVoid(page);
  }

  /** The innermost drawing goes first: some hold others. */
  private static String withoutDrawings(String page) {
    String less = page.replaceAll("(?s)<svg\\b[^>]*>((?!<svg\\b).)*?</svg>", "<drawing/>");
    return less.equals(page) ? page : withoutDrawings(less);
  }

  private static void studyIsApproved(String name, DemoStudy study) throws IOException {
    isApproved(
        name,
        StudyPage.html(study.outcome(), study.fingerprint(), study.problems(), HandMade.FIGURES));
  }

  @Test
  void theDemonstration() throws IOException {
    studyIsApproved("study-demo", demo);
  }

  /** Ten sessions with a check unit, corrected for its drift. */
  @Test
  void aStudyWithSessions() throws IOException {
    Path place =
        SessionStudy.write(
            folder, 10, "check_unit: Oak 1\ncalibrator_class: 1\ndrift: correct\nseed: 1");
    studyIsApproved("study-sessions", DemoStudy.read(place));
  }

  /**
   * No anchor, no class of calibrators, no check unit, limits in steps, rules that only suggest.
   */
  @Test
  void aStudyThatDeclaresLittle() throws IOException {
    Path place =
        SessionStudy.write(
            folder,
            4,
            "anchor: none\nscreening: { apply: suggest }\n"
                + "tolerance: { reliable_db: [{ from_hz: 20, db: 2 }, { from_hz: 200, db: 1.5 }] }");
    studyIsApproved("study-plain", DemoStudy.read(place));
  }

  private static StudyOutcome outcome(Settings settings, KindOutcome... kinds) {
    return HandMade.outcome(demo.outcome(), settings, List.of(kinds));
  }

  private static KindOutcome[] kinds() {
    return new KindOutcome[] {
      HandMade.kind("in-ear", 8, "UCRRRRRRCU"),
      HandMade.kind("on-ear", 6, "--RRRRRRRR"),
      HandMade.kind("on-ear, open", 6, "CRRRRRRRRR"),
      HandMade.kind("banded", 1, "-UUUUUUUUU"),
      HandMade.ranked()
    };
  }

  @Test
  void kindsOfEverySort() throws IOException {
    StudyOutcome made = outcome(demo.outcome().study().settings(), kinds());
    List<Problem> problems =
        List.of(
            Problem.refused("captures.csv", 2, "no level", "write one"),
            Problem.note("units.csv", 3, "read as Latin-1"),
            Problem.refused("captures.csv", 4, "no <level>", "write \"one\" & go on"));
    studyIsApproved("study-kinds", new DemoStudy(made, demo.fingerprint(), problems));
    isApproved("explained-kinds", ExplainPage.html(made, Optional.empty(), 0));
  }

  @Test
  void theExplanation() throws IOException {
    isApproved(
        "explained-demo",
        ExplainPage.html(
            demo.outcome(), new ExampleChoice(demo.outcome(), 2).example().value().graph(), 0));
    Settings loose = demo.outcome().study().settings().with(Setting.ANCHOR, new Anchor.None());
    isApproved(
        "explained-unanchored",
        ExplainPage.html(
            outcome(loose, HandMade.kind("in-ear", 8, "UUUUUUUUUU")), Optional.empty(), 0));
  }

  private static Translation translation(Translation.Handling handling, KindOutcome... kinds) {
    return new Translation(
        new Translation.Origin("Plate to head", "the plate", "the head", "1 kHz", "0123456789ab"),
        new Anchor.Range(300, 1000),
        BandGrid.covering(31.5, 16_000, 1),
        0.95,
        new Tolerance(DbLimit.everywhere(1.5), DbLimit.everywhere(3), 0.5),
        5,
        handling,
        java.util.stream.Stream.of(kinds).map(KindOutcome::transfer).toList(),
        List.of());
  }

  private static void catalogueIsApproved(
      String name, Translation translation, List<CatalogueRun.Line> lines, Problem... problems)
      throws IOException {
    CatalogueRun.Outcome outcome =
        new CatalogueRun.Outcome(
            lines.size() + problems.length, lines, Optional.empty(), List.of());
    isApproved(
        name,
        CataloguePage.html(
            translation,
            new Findings<>(outcome, List.of(problems)),
            CatalogueOverview.of(translation, outcome),
            lines.isEmpty() ? List.of() : List.of(HandMade.figure("an example")),
            List.of()));
  }

  /** A raw line with another treatment. */
  private static CatalogueRun.Line treated(
      String graph,
      Treatment treatment,
      Optional<Smoothing> smoothing,
      OptionalDouble byReference) {
    CatalogueRun.Line raw = HandMade.line(graph, "in-ear", Decision.PUBLISH_WITH_MARKS, 0.5);
    CatalogueEntry e = raw.entry();
    return new CatalogueRun.Line(
        new CatalogueEntry(
            graph,
            e.unit(),
            e.kind(),
            e.file(),
            e.averaged(),
            e.subtracted(),
            smoothing,
            e.drive(),
            "",
            "",
            e.line()),
        raw.decision(),
        raw.octaves(),
        raw.reasons(),
        raw.marks(),
        treatment,
        new Change(OptionalDouble.of(1.5), OptionalDouble.of(1), byReference),
        raw.largestStepDb(),
        raw.sketch(),
        raw.doubts(),
        raw.sha256());
  }

  @Test
  void aCatalogue() throws IOException {
    Translation translation = translation(Translation.Handling.plain(), kinds());
    List<CatalogueRun.Line> lines =
        new ArrayList<>(
            List.of(
                HandMade.line("G-1", "in-ear", Decision.PUBLISH, 0),
                HandMade.line("G-4", "banded", Decision.RE_MEASURE, 2),
                HandMade.line("G-3", "banded", Decision.RE_MEASURE, 5),
                HandMade.again("G-2", "headband", Reason.KIND_NOT_IN_THE_STUDY),
                HandMade.again("G-6", "banded", Reason.FEW_UNITS, Reason.DECLARED_ZONE),
                HandMade.again("G-7", "unknown", Reason.WIDE_PREDICTION),
                HandMade.line("G-5", "in-ear", Decision.PUBLISH_WITH_MARKS, 0.5)));
    Treatment.Reference old = new Treatment.Reference("old.csv", Optional.empty());
    Treatment.Reference now = new Treatment.Reference("new.csv", Optional.of(Smoothing.NONE));
    int k = 8;
    for (Treatment.SmoothingMatch match : Treatment.SmoothingMatch.values()) {
      lines.add(
          treated(
              "G-" + k++,
              new Treatment(match, Optional.of(old), Optional.of(now)),
              Smoothing.of("1/6"),
              OptionalDouble.of(0.5)));
    }
    lines.add(
        treated(
            "G-" + k,
            new Treatment(Treatment.SmoothingMatch.ALIKE, Optional.of(old), Optional.empty()),
            Optional.empty(),
            OptionalDouble.empty()));
    catalogueIsApproved(
        "catalogue",
        translation,
        lines,
        Problem.refused("g.csv", 4, "no level", "write one"),
        Problem.refused("h.csv", 4, "no level", "write one"));
  }

  @Test
  void cataloguesOfOneAndOfNone() throws IOException {
    Translation few =
        translation(Translation.Handling.plain(), HandMade.kind("on-ear", 3, "UUUUUUUUUU"));
    Treatment raised =
        new Treatment(
            Treatment.SmoothingMatch.ALIKE,
            Optional.of(new Treatment.Reference("old.csv", Optional.empty())),
            Optional.empty());
    catalogueIsApproved(
        "catalogue-one",
        few,
        List.of(treated("G-1", raised, Optional.of(Smoothing.NONE), OptionalDouble.empty())));
    catalogueIsApproved("catalogue-none", few, List.of());
  }

  @Test
  void studiesAgainstEachOther() throws Exception {
    List<StudyComparison.Named> studies = new ArrayList<>();
    for (String name : List.of("north", "south", "west")) {
      double tilt = 0.7 * studies.size();
      double ownDb = 0.001 * studies.size(); // no lab has another's captures
      Path place =
          SessionStudy.write(
              folder.resolve(name),
              4,
              "check_unit: Oak 1",
              (session, hz) ->
                  ownDb + (session.startsWith("head") ? tilt * Math.log10(hz / 1000) : 0));
      studies.add(new StudyComparison.Named("Lab " + name, name, DemoStudy.read(place).outcome()));
      if (studies.size() > 1) {
        StudyComparison comparison = StudyComparison.of(studies);
        isApproved(
            "comparison-" + studies.size(),
            ComparisonPage.html(comparison, List.of(HandMade.figure("difference"))));
      }
    }
  }
}
