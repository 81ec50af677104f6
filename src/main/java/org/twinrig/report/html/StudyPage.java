package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.evidence.RegionErrors;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.screening.Verdict;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Settings;

/**
 * The report of a study, as the template sees it: every cell is finished text.
 *
 * @param title the study's title
 * @param lead what was done, in one sentence
 * @param verdicts one sentence per kind
 * @param octaves rows: kind, units, octaves reliable, caution, unreliable, without data
 * @param transfer drawings
 * @param zones rows: kind, from, to, octaves, mark, why
 * @param errors rows: kind, region, range, units, bias, root mean square, coverage
 * @param errorFigures drawings
 * @param screened rows: unit, fixture, side and seating, file, what was found, left out by
 * @param captureFigures drawings
 * @param resonances sentences
 * @param method sentences
 * @param settings rows: name, value
 * @param inputs rows: name, start of its SHA-256
 * @param refused what could not be used
 * @param notes what the lab should know
 * @param cautions sentences
 * @param fingerprint of the study
 * @param style the style sheet
 */
public record StudyPage(
    String title,
    String lead,
    List<String> verdicts,
    List<List<String>> octaves,
    List<Figure> transfer,
    List<List<String>> zones,
    List<List<String>> errors,
    List<Figure> errorFigures,
    List<List<String>> screened,
    List<Figure> captureFigures,
    List<String> resonances,
    List<String> method,
    List<List<String>> settings,
    List<List<String>> inputs,
    List<String> refused,
    List<String> notes,
    List<String> cautions,
    String fingerprint,
    String style) {

  /**
   * The report.
   *
   * @param outcome what the study found
   * @param fingerprint of its inputs
   * @param problems what was wrong with the lab's files
   * @param drawings its drawings
   * @return one self-contained page
   */
  public static String html(
      StudyOutcome outcome,
      InputFingerprint fingerprint,
      List<Problem> problems,
      StudyDrawings drawings) {
    StudyPage page =
        new StudyPage(
            outcome.study().title(),
            lead(outcome),
            outcome.kinds().stream().map(StudyPage::verdict).toList(),
            outcome.kinds().stream().map(StudyPage::octaveRow).toList(),
            drawings.transfer(),
            zoneRows(outcome),
            errorRows(outcome),
            drawings.errors(),
            screenedRows(outcome),
            drawings.captures(),
            resonanceSentences(outcome),
            Method.lines(),
            settingRows(outcome.study().settings()),
            fingerprint.inputs().stream()
                .map(i -> List.of(i.name(), i.sha256().substring(0, 12)))
                .toList(),
            texts(problems, false),
            texts(problems, true),
            Cautions.all(),
            outcome.fingerprint(),
            Page.style());
    return Page.fill("study.jte", page);
  }

  private static String lead(StudyOutcome outcome) {
    int units = outcome.kinds().stream().mapToInt(k -> k.paired().units().size()).sum();
    return Numbers.count(units, "unit", "units")
        + " of "
        + Numbers.count(outcome.kinds().size(), "kind", "kinds")
        + " were measured on both fixtures: "
        + outcome.study().from().label()
        + " (old) and "
        + outcome.study().to().label()
        + " (new). This report says band by band how far a graph made on the old one can be read as"
        + " if it had been made on the new one.";
  }

  /** One sentence per kind: where it can be trusted, and where not. */
  static String verdict(KindOutcome kind) {
    double total = 0;
    for (MarkedBand band : kind.transfer().bands()) {
      total += band.band().octaves();
    }
    double reliable = octaves(kind, Mark.RELIABLE);
    String name = kind.kind().substring(0, 1).toUpperCase(java.util.Locale.ROOT);
    String who = name + kind.kind().substring(1) + " (" + units(kind) + "): ";
    if (reliable == 0) {
      return who + "no band translates reliably; " + firstReason(kind) + ".";
    }
    List<String> lost = new ArrayList<>();
    for (Zone zone : kind.zones()) {
      if (zone.mark() == Mark.UNRELIABLE && !zone.empty()) {
        lost.add(Numbers.hertz(zone.fromHz()) + " to " + Numbers.hertz(zone.toHz()));
      }
    }
    return who
        + Numbers.fixed(reliable, 1)
        + " of "
        + Numbers.fixed(total, 1)
        + " octaves translate reliably"
        + (lost.isEmpty()
            ? "; no zone is unreliable."
            : "; do not translate " + String.join(" or ", lost) + ".");
  }

  private static String units(KindOutcome kind) {
    return Numbers.count(kind.paired().units().size(), "unit", "units");
  }

  private static String firstReason(KindOutcome kind) {
    return kind.transfer().bands().stream()
        .flatMap(b -> b.reasons().stream())
        .sorted()
        .findFirst()
        .map(Reason::plain)
        .orElse("nothing was measured");
  }

  private static double octaves(KindOutcome kind, Mark mark) {
    double sum = 0;
    for (MarkedBand band : kind.transfer().bands()) {
      sum += band.mark() == mark && !band.empty() ? band.band().octaves() : 0;
    }
    return sum;
  }

  private static List<String> octaveRow(KindOutcome kind) {
    double missing = 0;
    for (MarkedBand band : kind.transfer().bands()) {
      missing += band.empty() ? band.band().octaves() : 0;
    }
    return List.of(
        kind.kind(),
        Integer.toString(kind.paired().units().size()),
        Numbers.fixed(octaves(kind, Mark.RELIABLE), 2),
        Numbers.fixed(octaves(kind, Mark.CAUTION), 2),
        Numbers.fixed(octaves(kind, Mark.UNRELIABLE), 2),
        Numbers.fixed(missing, 2));
  }

  private static List<List<String>> zoneRows(StudyOutcome outcome) {
    List<List<String>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (Zone zone : kind.zones()) {
        rows.add(
            List.of(
                kind.kind(),
                Numbers.hertz(zone.fromHz()),
                Numbers.hertz(zone.toHz()),
                Numbers.fixed(zone.octaves(), 2),
                zone.mark().word(),
                why(zone, outcome.study().settings().zones())));
      }
    }
    return rows;
  }

  private static String why(Zone zone, List<DeclaredZone> declared) {
    if (zone.reasons().isEmpty()) {
      return "the prediction stays within the reliable tolerance";
    }
    List<String> clauses = new ArrayList<>();
    for (Reason reason : zone.reasons()) {
      if (reason == Reason.DECLARED_ZONE) {
        List<String> names =
            declared.stream()
                .filter(d -> d.fromHz() < zone.toHz() && d.toHz() > zone.fromHz())
                .map(DeclaredZone::name)
                .toList();
        clauses.add("the lab declared: " + String.join(", ", names));
      } else {
        clauses.add(reason.plain());
      }
    }
    return String.join("; ", clauses);
  }

  private static List<List<String>> errorRows(StudyOutcome outcome) {
    List<List<String>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (RegionErrors e : kind.errors()) {
        rows.add(
            List.of(
                kind.kind(),
                e.region().word(),
                Numbers.hertz(e.region().fromHz()) + " to " + Numbers.hertz(e.region().toHz()),
                Integer.toString(e.units()),
                Numbers.fixed(e.biasDb(), 2) + " dB",
                Numbers.fixed(e.rmsDb(), 2) + " dB",
                e.coverage().isPresent()
                    ? Numbers.fixed(100 * e.coverage().getAsDouble(), 0) + " %"
                    : "too few units"));
      }
    }
    return rows;
  }

  private static List<List<String>> screenedRows(StudyOutcome outcome) {
    List<List<String>> rows = new ArrayList<>();
    for (CaptureEntry c : outcome.study().captures()) {
      if (c.excludedByLab()) {
        rows.add(screenedRow(c, c.exclude(), "the lab"));
      }
    }
    for (Verdict v : outcome.screening().verdicts()) {
      rows.add(screenedRow(v.capture(), v.sentence(), v.excluded() ? "the rule" : "nobody"));
    }
    return rows;
  }

  private static List<String> screenedRow(CaptureEntry c, String found, String by) {
    return List.of(c.unit(), c.fixture(), c.side().name() + " " + c.seating(), c.file(), found, by);
  }

  private static List<String> resonanceSentences(StudyOutcome outcome) {
    List<String> sentences = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (ResonanceWander w : kind.wanders()) {
        sentences.add(
            kind.kind()
                + ": the strongest "
                + w.shape().name().toLowerCase(java.util.Locale.ROOT)
                + " of "
                + Numbers.count(w.positions().size(), "unit", "units")
                + " shifts by "
                + Numbers.fixed(w.meanShiftOctaves(), 2)
                + " octaves on average (± "
                + Numbers.fixed(w.meanHalfOctaves(), 2)
                + "), with a standard deviation of "
                + Numbers.against(w.sdOctaves(), 1.0 / 12, 2)
                + " octaves against a limit of 1/12 (0.08): "
                + w.zone()
                    .map(
                        z ->
                            "it wanders, and "
                                + Numbers.hertz(z.fromHz())
                                + " to "
                                + Numbers.hertz(z.toHz())
                                + " is marked.")
                    .orElse("it moves alike on all units."));
      }
    }
    return sentences;
  }

  private static List<List<String>> settingRows(Settings s) {
    return List.of(
        List.of("Bands", "1/" + s.grid().perOctave() + " octave, " + s.grid().size() + " bands"),
        List.of("Anchor", s.anchor().words()),
        List.of("Confidence", Numbers.fixed(100 * s.confidence(), 1) + " %"),
        List.of(
            "Reliable within",
            Numbers.fixed(s.tolerance().reliable().atHz(1000), 1) + " dB (1 kHz)"),
        List.of(
            "Caution within", Numbers.fixed(s.tolerance().caution().atHz(1000), 1) + " dB (1 kHz)"),
        List.of("Fewest units", Integer.toString(s.minUnits())),
        List.of("Screening", s.screening().name().toLowerCase(java.util.Locale.ROOT)),
        List.of("Seed", Long.toString(s.seed())));
  }

  private static List<String> texts(List<Problem> problems, boolean notes) {
    return problems.stream()
        .filter(p -> (p.kind() == Problem.Kind.NOTE) == notes)
        .map(Problem::text)
        .toList();
  }
}
