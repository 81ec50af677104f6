package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.Sweep;
import org.twinrig.study.DbLimit;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Tolerance;

/** Octaves here are powers of two: a base-ten band of one octave is 0.9966 of them. */
class SentencesTest {
  @Test
  void aVerdictSaysWhatNotToTranslate() {
    assertEquals(
        "In-ear (8 units): 6.0 of 10.0 octaves translate reliably; do not translate 22.4 Hz to"
            + " 44.7 Hz or 11.2 kHz to 22.4 kHz.",
        VerdictSentence.of(HandMade.kind("in-ear", 8, "UCRRRRRRCU")));
  }

  @Test
  void aVerdictWithoutUnreliableZonesSaysSo() {
    assertEquals(
        "On-ear (6 units): 9.0 of 10.0 octaves translate reliably; no zone is unreliable.",
        VerdictSentence.of(HandMade.kind("on-ear", 6, "CRRRRRRRRR")));
  }

  @Test
  void aVerdictDoesNotPassOverMissingData() {
    assertEquals(
        "On-ear (6 units): 8.0 of 10.0 octaves translate reliably; no zone is unreliable, but 2.0"
            + " octaves have no data.",
        VerdictSentence.of(HandMade.kind("on-ear", 6, "--RRRRRRRR")));
  }

  @Test
  void aKindWithoutAReliableBandHasItsFirstReason() {
    assertEquals(
        "On-ear (1 unit): no band translates reliably; too few units were measured on both"
            + " fixtures.",
        VerdictSentence.of(HandMade.kind("on-ear", 1, "UUUUUUUUUU")));
    // Exports that begin at 20 Hz lack the lowest band, and that is no reason.
    assertEquals(
        VerdictSentence.of(HandMade.kind("on-ear", 1, "UUUUUUUUUU")),
        VerdictSentence.of(HandMade.kind("on-ear", 1, "-UUUUUUUUU")));
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
        ZoneSentence.of(zone, declared));
  }

  @Test
  void aReliableZoneSaysWhyItIs() {
    assertEquals(
        "the prediction interval is within the reliable tolerance",
        ZoneSentence.of(new Zone(100, 900, Mark.RELIABLE, false, List.of()), List.of()));
  }

  @Test
  void theStartOfAZoneIsToldWithItsRange() {
    List<ZoneEdge> edges =
        List.of(
            edge(900, 0.99, Optional.of(new ResonanceWander.Range(790, 1122))),
            edge(3550, 0.9, Optional.of(new ResonanceWander.Range(3162, 3981))),
            edge(8000, 1, Optional.of(new ResonanceWander.Range(8000, 8000))),
            edge(9000, 0.4, Optional.empty()));
    assertEquals("20 Hz", place(20, edges));
    assertEquals("900 Hz (790 Hz to 1.12 kHz)", place(900, edges));
    assertEquals("3.55 kHz (3.16 to 3.98 kHz)", place(3550, edges));
    assertEquals("8 kHz (steady)", place(8000, edges));
    assertEquals("9 kHz (not a stable edge)", place(9000, edges));
  }

  private static ZoneEdge edge(double hz, double kept, Optional<ResonanceWander.Range> interval) {
    return new ZoneEdge(hz, Mark.RELIABLE, Mark.CAUTION, kept, interval);
  }

  /** As a reader sees it: spaces that do not break look like spaces. */
  private static String place(double hz, List<ZoneEdge> edges) {
    return EdgeWords.place(hz, edges).replace('\u00a0', ' ');
  }

  @Test
  void theSharesKeptInAZoneAreToldAsLeastAndMean() {
    KindOutcome plain = HandMade.kind("in-ear", 8, "RRRRRUUUU-");
    KindOutcome kind =
        new KindOutcome(
            plain.paired(),
            plain.estimate(),
            plain.transfer(),
            plain.zones(),
            List.of(),
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
            plain.budget(),
            plain.repeatability(),
            plain.seatings(),
            plain.evidence());
    assertEquals(
        List.of("60 (mean 89)", "100 (mean 100)", ""),
        kind.zones().stream()
            .map(z -> EdgeWords.kept(z, kind).text().replace('\u00a0', ' '))
            .toList());
  }

  private static Optional<MarkStability.Shares> shares(Mark mark, double reliable) {
    return Optional.of(new MarkStability.Shares(mark, reliable, 0, 1 - reliable));
  }

  @Test
  void theRangesOfEdgesAreExplained() {
    assertEquals(
        "Other units would have given other edges. To see how far, the marks were decided 999 times"
            + " anew from units drawn at random from the study's own, some counting more than once"
            + " and some not at all. The range under the start of a zone holds 95 % of the places"
            + " the edge then took, and reaches to the next edge where too many draws lose the zone;"
            + " a steady edge has a range of no width; an edge that fewer than half of the draws have"
            + " is not a stable one. What no draw can change, such as"
            + " the range of an ear simulator or too few units, is held, and so are the fitted rules."
            + " With few units these ranges come out short, and shorter where the way of predicting was"
            + " chosen among several. Two studies both err, so a new one agrees with this one less often"
            + " than the shares say.",
        EdgeWords.howToRead(999, 0.95));
  }

  @Test
  void aWanderingNotchIsTold() {
    assertEquals(
        "In-ear: on 9 units the strongest notch sits 0.31 octaves lower on the new fixture on"
            + " average (± 0.08 octaves); the shift's standard deviation is 0.12 octaves, against a"
            + " limit of 1/12 (0.08): it wanders, and no band from 5.92 kHz to 10.8 kHz is better"
            + " than caution.",
        ResonanceSentence.of(
            "in-ear", notch(-0.31, 0.12, Optional.of(new ResonanceWander.Range(5921, 10_810)))));
  }

  @Test
  void aSteadyNotchIsTold() {
    assertEquals(
        "In-ear: on 9 units the strongest notch sits 0.05 octaves higher on the new fixture on"
            + " average (± 0.08 octaves); the shift's standard deviation is 0.03 octaves, against a"
            + " limit of 1/12 (0.08): it moves alike on all of them.",
        ResonanceSentence.of("in-ear", notch(0.05, 0.03, Optional.empty())));
  }

  private static ResonanceWander notch(
      double mean, double sd, Optional<ResonanceWander.Range> zone) {
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
        new ResonanceWander.Range(5000, 12_000));
  }

  @Test
  void aLimitInStepsIsToldWhole() {
    DbLimit steps = new DbLimit(List.of(new DbLimit.Step(0, 2), new DbLimit.Step(200, 1.5)));
    assertEquals("2.0 dB at first, 1.5 dB from 200 Hz", SettingSheet.limit(steps));
    assertEquals("3.0 dB", SettingSheet.limit(DbLimit.everywhere(3)));
  }

  @Test
  void soundFilesAreToldWithTheirWindow() {
    SoundContent impulses = new SoundContent(new ImpulseWindow(1, 150, 5), Optional.empty());
    assertEquals(
        "impulse responses, window from 1.0 ms before to 150.0 ms after the onset, ends of 5.0 ms",
        SettingSheet.sound(impulses));
    assertEquals(
        "recordings of a sweep from 20 Hz to 20 kHz in 1.00 s, window from 50.2 ms before to 150.0"
            + " ms after the onset, ends of 5.0 ms",
        SettingSheet.sound(impulses.withSweep(new Sweep(20, 20_000, 1, 0, 0))));
  }

  @Test
  void theLegendExplainsEveryMarkWithItsLimit() {
    Legend legend =
        Legend.of(new Tolerance(DbLimit.everywhere(1.5), DbLimit.everywhere(3), 0.5), 0.95);
    assertEquals(
        "Every band carries a mark. It rests on the prediction interval: made from the old graph"
            + " of one unit, it is the range in which a new measurement of that unit on the new"
            + " fixture is expected to fall 95 times in a hundred. Its half-width is the distance"
            + " from its middle to either end.",
        legend.interval());
    assertEquals(
        List.of(
            "reliable: the half-width is at most 1.5 dB. The translated level can stand as if"
                + " measured.",
            "caution: the half-width is at most 3.0 dB, or something is known that may spoil the"
                + " band. Use the level with its interval shown.",
            "unreliable: the interval is wider than that, or too few units were measured. Do not"
                + " use the level in place of a measurement.",
            "no data: nothing was measured here."),
        legend.entries().stream().map(e -> e.swatch().word() + ": " + e.meaning()).toList());
  }

  @Test
  void theMethodHasFifteenLinesAndNamesOnlySourcesItGives() {
    assertEquals(15, Method.lines().size());
    String lines = String.join(" ", Method.lines());
    for (String name :
        List.of(
            "IEC 61260-1",
            "JCGM 100:2008",
            "JCGM 101:2008",
            "Bonett",
            "Canay",
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
            "Stone",
            "Tukey",
            "Viechtbauer",
            "Worsley")) {
      assertEquals(true, lines.contains(name), name);
      assertEquals(1, Method.sources().stream().filter(s -> s.contains(name)).count(), name);
    }
  }

  @Test
  void theCautionsAreToldInFull() {
    assertEquals(3, Cautions.all().size());
    assertEquals(
        "A calibrator or a test sweep can exceed 94 to 114 dB SPL at the ear simulator. Never run"
            + " one with the transducer on a person.",
        Cautions.all().get(2));
  }

  @Test
  void refusalsAreAllListedAndNotesCounted() {
    List<Problem> problems =
        new java.util.ArrayList<>(
            Collections.nCopies(700, Problem.refused("a.csv", 2, "no level", "write one")));
    problems.addAll(Collections.nCopies(501, Problem.note("b.csv", 0, "read as Latin-1")));
    ProblemList list = ProblemList.of(problems);
    assertEquals(700, list.refused().size());
    assertEquals("a.csv:2: no level; write one", list.refused().get(0));
    assertEquals("501 notes on how files were taken", list.notesTitle());
    assertEquals(
        "1 note is not listed; twinrig inspect prints how a file is taken.", list.notesMore());
  }
}
