package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.ScreeningEffect;
import org.twinrig.band.FrequencyRange;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.report.StudyRun;
import org.twinrig.study.DeclaredZone;

/** Octaves here are powers of two: a base-ten band of one octave is 0.9966 of them. */
class SentencesTest {
  private static DemoStudy demo;

  @BeforeAll
  static void readTheDemonstration() {
    demo = DemoStudy.read();
  }

  private static String page(KindOutcome... kinds) {
    return HandMade.page(
        HandMade.outcome(demo.outcome(), demo.outcome().study().settings(), List.of(kinds)));
  }

  @Test
  void aVerdictSaysWhatTranslatesAndWhatDoesNot() {
    assertEquals(
        List.of(
            "In-ear (8 units): 6.0 of 10.0 octaves translate reliably; do not translate 22.4 Hz to"
                + " 44.7 Hz or 11.2 kHz to 22.4 kHz.",
            "On-ear (6 units): 9.0 of 10.0 octaves translate reliably; no zone is unreliable.",
            "On-ear (6 units): 8.0 of 10.0 octaves translate reliably; no zone is unreliable, but"
                + " 2.0 octaves have no data.",
            "On-ear (1 unit): no band translates reliably; too few units were measured on both"
                + " fixtures.",
            // Exports that begin late lack the lowest band, and that is no reason.
            "On-ear (1 unit): no band translates reliably; too few units were measured on both"
                + " fixtures."),
        PageChecks.items(
            page(
                HandMade.kind("in-ear", 8, "UCRRRRRRCU"),
                HandMade.kind("on-ear", 6, "CRRRRRRRRR"),
                HandMade.kind("on-ear", 6, "--RRRRRRRR"),
                HandMade.kind("on-ear", 1, "UUUUUUUUUU"),
                HandMade.kind("on-ear", 1, "-UUUUUUUUU")),
            "<h1>"));
  }

  /** Counted in demo-data: 45 units listed, 3 of them on-ear, 2 held out, 3 that lack a fixture. */
  @Test
  void unitsThatEnterNothingAreCounted() {
    assertEquals(
        "Of 45 units listed, 37 enter the estimates; 2 are held out, 3 are of kinds with fewer than"
            + " 5, 3 lack a usable capture on a fixture.",
        StudyPage.units(demo.outcome()));
  }

  @Test
  void aZoneNamesWhatTheLabDeclared() {
    Zone zone =
        new Zone(
            7000,
            9000,
            Mark.UNRELIABLE,
            false,
            List.of(Reason.UNITS_DISAGREE, Reason.DECLARED_ZONE));
    List<DeclaredZone> declared =
        List.of(
            new DeclaredZone("canal entrance resonance", "plate", 8000, 10_000),
            new DeclaredZone("cheek leak", "head", 20, 60));
    assertEquals(
        "the units of the kind do not differ alike; the lab declared: canal entrance resonance",
        ZoneSheet.why(zone, declared));
  }

  @Test
  void aReliableZoneSaysWhyItIs() {
    assertEquals(
        "the prediction interval is within the reliable tolerance",
        ZoneSheet.why(new Zone(100, 900, Mark.RELIABLE, false, List.of()), List.of()));
  }

  @Test
  void theStartOfAZoneIsToldWithHowOftenItIsFound() {
    List<ZoneEdge> edges =
        List.of(
            new ZoneEdge(900, Mark.RELIABLE, Mark.CAUTION, 0.99),
            new ZoneEdge(8000, Mark.RELIABLE, Mark.CAUTION, 1));
    assertEquals("20 Hz", place(20, edges));
    assertEquals("900 Hz (in 99 %)", place(900, edges));
    assertEquals("8 kHz (in 100 %)", place(8000, edges));
  }

  /** As a reader sees it: spaces that do not break look like spaces. */
  private static String place(double hz, List<ZoneEdge> edges) {
    return ZoneSheet.place(hz, edges).text().replace('\u00a0', ' ');
  }

  @Test
  void theSharesKeptInAZoneAreToldAsLeastAndMean() {
    KindOutcome plain = HandMade.kind("in-ear", 8, "RRRRRUUUU-");
    KindOutcome kind =
        HandMade.with(
            plain,
            List.of(),
            new MarkStability.Result(
                999,
                List.of(
                    shares(Mark.RELIABLE, 1),
                    shares(Mark.RELIABLE, 1),
                    shares(Mark.RELIABLE, 0.999),
                    shares(Mark.RELIABLE, 0.9),
                    shares(Mark.RELIABLE, 0.6),
                    shares(Mark.UNRELIABLE, 0),
                    shares(Mark.UNRELIABLE, 0),
                    shares(Mark.UNRELIABLE, 0),
                    shares(Mark.UNRELIABLE, 0),
                    Optional.empty()),
                List.of()),
            plain.evidence().equivalence());
    assertEquals(
        List.of("60 (mean 89)", "100 (mean 100)", ""),
        kind.zones().stream()
            .map(z -> ZoneSheet.kept(z, kind).text().replace('\u00a0', ' '))
            .toList());
  }

  private static Optional<MarkStability.Shares> shares(Mark mark, double reliable) {
    return Optional.of(new MarkStability.Shares(mark, reliable, 0, 1 - reliable));
  }

  @Test
  void aNotchIsToldToWanderOrToMoveAlike() {
    KindOutcome plain = HandMade.kind("in-ear", 9, "RRRRRRRRRR");
    assertEquals(
        List.of(
            "In-ear: on 9 units the strongest notch sits 0.31 octaves lower on the new fixture on"
                + " average (± 0.08 octaves); the shift's standard deviation is 0.12 octaves, against"
                + " a limit of 1/12 (0.08): it wanders, and no band from 5.92 kHz to 10.8 kHz is"
                + " better than caution.",
            "In-ear: on 9 units the strongest notch sits 0.05 octaves higher on the new fixture on"
                + " average (± 0.08 octaves); the shift's standard deviation is 0.03 octaves, against"
                + " a limit of 1/12 (0.08): it moves alike on all of them."),
        PageChecks.items(
            page(
                HandMade.with(
                    plain,
                    List.of(
                        notch(-0.31, 0.12, Optional.of(new FrequencyRange(5921, 10_810))),
                        notch(0.05, 0.03, Optional.empty())),
                    plain.stability(),
                    plain.evidence().equivalence())),
            "<h2>Resonance positions</h2>"));
  }

  private static ResonanceWander notch(double mean, double sd, Optional<FrequencyRange> zone) {
    Resonance at = new Resonance(8000, 6, 0.2);
    return new ResonanceWander(
        Resonance.Shape.NOTCH,
        Collections.nCopies(9, new ResonanceWander.Position("Alder 3", at, at)),
        mean,
        0.08,
        sd,
        sd / 2,
        sd * 2,
        zone,
        new FrequencyRange(5000, 12_000));
  }

  @Test
  void theMethodHasFifteenLinesAndNamesOnlySourcesItGives() {
    String page = page(HandMade.kind("in-ear", 8, "RRRRRRRRRR"));
    List<String> method = PageChecks.items(page, "<h2>Method</h2>");
    assertEquals(15, method.size());
    String lines = String.join(" ", method);
    List<String> sources = PageChecks.items(page, "<h3>Sources</h3>");
    for (String name :
        List.of(
            "IEC 60268-7",
            "IEC 60318",
            "IEC 61260-1",
            "ITU-T P.57",
            "JCGM 100:2008",
            "JCGM 101:2008",
            "Bonett",
            "Clopper",
            "Davison",
            "Fieller",
            "Hartung",
            "Hesterberg",
            "Naiman",
            "Rousseeuw",
            "Satterthwaite",
            "Schuirmann",
            "Sidik",
            "Smyth",
            "Stone",
            "Tukey",
            "Viechtbauer",
            "Worsley",
            "Yao")) {
      assertEquals(true, lines.contains(name), name);
      assertEquals(1, sources.stream().filter(s -> s.contains(name)).count(), name);
    }
  }

  @Test
  void refusalsAreAllListedAndNotesCounted() {
    List<Problem> problems =
        new ArrayList<>(
            Collections.nCopies(700, Problem.refused("a.csv", 2, "no level", "write one")));
    problems.addAll(Collections.nCopies(501, Problem.note("b.csv", 0, "read as Latin-1")));
    String page = StudyPage.html(demo.outcome(), demo.fingerprint(), problems, HandMade.FIGURES);
    assertEquals(700, PageChecks.count(page, "<li>a.csv:2: no level; write one</li>"));
    assertEquals(500, PageChecks.count(page, "<li>b.csv: read as Latin-1</li>"));
    assertTrue(page.contains("<summary>501 notes on how files were taken</summary>"));
    assertTrue(
        page.contains("<p>1 note is not listed; twinrig inspect prints how a file is taken.</p>"));
  }

  @Test
  void problemsAreCountedAndSilenceIsLeftOut() {
    Problem refused = Problem.refused("captures.csv", 2, "a", "b");
    Problem note = Problem.note("units.csv", 3, "c");
    assertEquals("", problems());
    assertEquals(
        "Input was refused for 2 reasons; 1 note on how files were taken",
        problems(refused, note, refused));
    assertEquals("Input was refused for 1 reason", problems(refused));
    assertEquals("1 note on how files were taken", problems(note));
  }

  /** What the head of the report says of problems. */
  private static String problems(Problem... problems) {
    Matcher told =
        Pattern.compile("<a href=\"#problems\">(.*?)</a>")
            .matcher(
                StudyPage.html(
                    demo.outcome(), demo.fingerprint(), List.of(problems), HandMade.FIGURES));
    return told.find() ? told.group(1) : "";
  }

  private static String effect(ScreeningEffect effect, boolean used) {
    return Page.fill("study/effect.jte", Map.of("effect", effect, "used", used));
  }

  @Test
  void theEffectIsToldInTheDirectionInWhichTheStudyWent() {
    ScreeningEffect effect =
        new ScreeningEffect(
            "in-ear",
            4,
            Optional.of(new ScreeningEffect.Change(21.8, 0.81)),
            Optional.of(new ScreeningEffect.Bass(-4.851, -4.274)));
    assertEquals(
        "in-ear: leaving out the 4 captures that the rules do not believe moves the mean transfer by"
            + " at most 0.8 dB (up, at 21.8 Hz). From 20 to 200 Hz it is -4.85 dB on average with them"
            + " and -4.27 dB without.",
        effect(effect, false));
    assertEquals(
        "in-ear: using the 4 captures that the rules do not believe moves the mean transfer by at"
            + " most 0.8 dB (down, at 21.8 Hz). From 20 to 200 Hz it is -4.85 dB on average with them"
            + " and -4.27 dB without.",
        effect(effect, true));
  }

  @Test
  void whatLeavingOutLostSealsKeepsIsSaid() {
    assertEquals(
        "Leaving out lost seals would keep the best seals only: of a new fixture that leaks by"
            + " nature, the mean transfer then shows less than a seating like any other.",
        Page.fill("study/seals.jte", Map.of("used", true)));
    List<String> terminal = StudyRun.sentences(demo.outcome());
    int said =
        terminal.indexOf(
            "Leaving out lost seals keeps the best seals only: of a new fixture that leaks by"
                + " nature, the mean transfer then shows less than a seating like any other.");
    assertTrue(said > 0, String.join("\n", terminal));
    assertTrue(
        terminal
            .get(said - 1)
            .matches(
                "[a-z-]+: leaving out the .* From 20 to 200 Hz it is -[0-9.]+ dB on average with them"
                    + " and -[0-9.]+ dB without[.]"),
        terminal.get(said - 1));
    assertTrue(terminal.stream().noneMatch(String::isBlank), String.join("\n", terminal));
  }

  @Test
  void anEffectTooSmallToPrintIsSaidToBeSmall() {
    assertEquals(
        "on-ear: leaving out the 1 capture that the rules do not believe moves the mean transfer"
            + " nowhere by as much as 0.1 dB.",
        effect(
            new ScreeningEffect(
                "on-ear", 1, Optional.of(new ScreeningEffect.Change(40, -0.04)), Optional.empty()),
            false));
    assertEquals(
        "on-ear: leaving out the 2 captures that the rules do not believe decides whether there is"
            + " a mean transfer at all: without them, units are too few.",
        effect(new ScreeningEffect("on-ear", 2, Optional.empty(), Optional.empty()), false));
  }
}
