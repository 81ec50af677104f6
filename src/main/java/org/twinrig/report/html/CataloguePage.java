package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.reliability.Reason;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.html.Sheet.Cell;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** The report of a re-expressed catalogue, and its tables. */
public final class CataloguePage {
  /** So many graphs that must be measured again are listed at most. */
  public static final int MOST_AGAIN = 500;

  /** So many graphs that may be published are listed at most, with marks and without. */
  public static final int MOST_PUBLISHED = 200;

  /** So many units of a kind that are worth measuring are listed at most. */
  public static final int MOST_OF_A_KIND = 5;

  private CataloguePage() {}

  /** One self-contained page; the examples are drawings of a few graphs. */
  public static String html(
      Translation translation,
      Findings<CatalogueRun.Outcome> outcome,
      CatalogueOverview overview,
      List<Figure> examples) {
    return Page.fill(
        "catalogue.jte",
        Map.of(
            "translation", translation,
            "outcome", outcome.value(),
            "problems", outcome.problems(),
            "overview", overview,
            "examples", examples));
  }

  /** The graphs with a decision, as they were listed. */
  public static List<CatalogueRun.Line> with(Decision decision, List<CatalogueRun.Line> lines) {
    return lines.stream().filter(l -> l.decision() == decision).toList();
  }

  /** The graphs that must be measured again, worst first. */
  public static List<CatalogueRun.Line> worst(List<CatalogueRun.Line> lines) {
    return with(Decision.RE_MEASURE, lines).stream().sorted(CatalogueRun.Line.WORST_FIRST).toList();
  }

  /** The first of the graphs that must be measured again. */
  public static Sheet<?> again(List<CatalogueRun.Line> worst, Translation translation) {
    return graphs("Re-measure list", worst, MOST_AGAIN)
        .hundredths("Lost (octaves)", l -> l.octaves().lost())
        .hundredths("Unreliable (octaves)", l -> l.octaves().unreliable())
        .words("Why", l -> CatalogueSentences.whyAgain(l, translation));
  }

  /** The first of the graphs that may be published. */
  public static Sheet<?> published(Decision decision, List<CatalogueRun.Line> lines) {
    return graphs("Graphs to " + decision.word(), lines, MOST_PUBLISHED)
        .hundredths("Reliable (octaves)", l -> l.octaves().reliable())
        .hundredths("Caution (octaves)", l -> l.octaves().caution())
        .hundredths("Unreliable (octaves)", l -> l.octaves().unreliable())
        .hundredths("Missing (octaves)", l -> l.octaves().missing());
  }

  private static Sheet<CatalogueRun.Line> graphs(
      String caption, List<CatalogueRun.Line> lines, int most) {
    return Sheet.of(caption, lines.stream().limit(most).toList())
        .names("Graph", l -> l.entry().graph())
        .names("Unit", l -> l.entry().unit())
        .names("Kind", l -> l.entry().kind());
  }

  /** Which units would help the other graphs most: the first of each kind. */
  public static Sheet<?> worth(CatalogueOverview overview) {
    Map<String, Integer> shown = new HashMap<>();
    return Sheet.of(
            "Units worth measuring on both fixtures",
            overview.choices().stream()
                .filter(c -> shown.merge(c.kind(), 1, Integer::sum) <= MOST_OF_A_KIND)
                .toList())
        .names("Unit", UnitsToMeasure.Choice::unit)
        .names("Kind", UnitsToMeasure.Choice::kind)
        .numbers("Prediction error before (dB)", c -> thousandths(c.beforeDb()))
        .numbers("Prediction error after (dB)", c -> thousandths(c.afterDb()));
  }

  private static Cell thousandths(double db) {
    return Cell.ordered(Numbers.fixed(db, 3), db);
  }

  /** How many graphs of each kind got each decision; kinds in the order of their names. */
  public static Sheet<?> decisions(CatalogueOverview overview) {
    Map<String, Map<Decision, Integer>> kinds = new TreeMap<>();
    for (CatalogueOverview.Decided d : overview.decisions()) {
      kinds
          .computeIfAbsent(d.kind(), k -> new HashMap<>())
          .merge(d.decision(), d.graphs(), Integer::sum);
    }
    Sheet<Map.Entry<String, Map<Decision, Integer>>> sheet =
        Sheet.of("Graphs by kind and decision", List.copyOf(kinds.entrySet()))
            .names("Kind", Map.Entry::getKey);
    for (Decision decision : Decision.values()) {
      sheet =
          sheet.counts(
              Texts.capital(decision.word()) + " (graphs)",
              k -> k.getValue().getOrDefault(decision, 0));
    }
    return sheet.counts(
        "All (graphs)", k -> k.getValue().values().stream().mapToInt(Integer::intValue).sum());
  }

  /** What became of the study's zones. */
  public static Sheet<?> zones(CatalogueOverview overview) {
    return Sheet.of(
            "The study's zones, and what share of the catalogue's graphs got which mark in them",
            overview.zones())
        .names("Kind", CatalogueOverview.ZoneShare::kind)
        .names("Zone", z -> Texts.range(z.zone().fromHz(), z.zone().toHz()), z -> z.zone().fromHz())
        .marks("Mark in the study", z -> Swatch.of(z.zone()))
        .numbers("Reliable (%)", z -> share(z, 0))
        .numbers("Caution (%)", z -> share(z, 1))
        .numbers("Unreliable (%)", z -> share(z, 2))
        .numbers("Missing (%)", z -> share(z, 3))
        .words(
            "Why",
            z -> z.zone().reasons().stream().map(Reason::plain).collect(Collectors.joining("; ")));
  }

  private static Cell share(CatalogueOverview.ZoneShare zone, int column) {
    double share = zone.shares().get(column);
    return Cell.ordered(Texts.percent(share), share);
  }

  /** How much of the change of compensated graphs comes from the references alone. */
  public static Sheet<?> compensated(List<CatalogueRun.Line> lines) {
    Map<String, List<CatalogueRun.Line>> byReferences = new TreeMap<>();
    for (CatalogueRun.Line line : lines) {
      if (line.treatment().before().isPresent()) {
        byReferences
            .computeIfAbsent(old(line) + "\n" + now(line, ""), p -> new ArrayList<>())
            .add(line);
      }
    }
    return Sheet.of(
            "Compensated graphs: how much of the change comes from the references alone",
            List.copyOf(byReferences.values()))
        .words("Old reference", g -> old(g.get(0)))
        .words("New reference", g -> now(g.get(0), "none: given raw"))
        .counts("Graphs", Collection::size)
        .numbers("Change, RMS (dB)", g -> rms(g, l -> l.change().totalRmsDb()))
        .numbers("By the fixture (dB)", g -> rms(g, l -> l.change().fixtureRmsDb()))
        .numbers("By the references alone (dB)", g -> rms(g, l -> l.change().referenceRmsDb()));
  }

  private static String old(CatalogueRun.Line line) {
    return named(line.treatment().before().orElseThrow());
  }

  private static String now(CatalogueRun.Line line, String otherwise) {
    return line.treatment().now().map(CataloguePage::named).orElse(otherwise);
  }

  private static String named(Treatment.Reference reference) {
    return reference.file() + " (" + reference.smoothingWords() + ")";
  }

  private static Cell rms(
      List<CatalogueRun.Line> lines, Function<CatalogueRun.Line, OptionalDouble> of) {
    List<OptionalDouble> known = lines.stream().map(of).filter(OptionalDouble::isPresent).toList();
    return known.isEmpty()
        ? Cell.without("not defined")
        : Cell.hundredths(StudyPage.rms(known, OptionalDouble::getAsDouble));
  }
}
