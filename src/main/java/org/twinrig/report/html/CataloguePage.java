package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.reliability.Reason;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Change;
import org.twinrig.translation.Continuity;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** The report of a re-expressed catalogue, and the rows of its tables. */
public final class CataloguePage {
  /** So many graphs that must be measured again are listed at most. */
  public static final int MOST_AGAIN = 500;

  /** So many graphs that may be published are listed at most, with marks and without. */
  public static final int MOST_PUBLISHED = 200;

  /** So many units of a kind that are worth measuring are listed at most. */
  public static final int MOST_OF_A_KIND = 5;

  private CataloguePage() {}

  /**
   * One self-contained page; the examples are drawings of a few graphs, the others of the old
   * fixture then and now.
   */
  public static String html(
      Translation translation,
      Findings<CatalogueRun.Outcome> outcome,
      CatalogueOverview overview,
      List<Figure> examples,
      List<Figure> continuity) {
    return Page.fill(
        "catalogue.jte",
        Map.of(
            "translation", translation,
            "outcome", outcome.value(),
            "problems", outcome.problems(),
            "overview", overview,
            "examples", examples,
            "continuity", continuity));
  }

  /**
   * The old fixture then and now in a region: root mean squares over its bands but for the mean.
   */
  public record Then(
      String kind,
      int units,
      Region region,
      double biasDb,
      OptionalDouble spreadDb,
      double addedDb) {}

  /** The old fixture then and now, by kind and region; regions without a band are left out. */
  public static List<Then> then(Continuity continuity) {
    List<Then> rows = new ArrayList<>();
    for (Continuity.Kind kind : continuity.kinds()) {
      for (Region region : Region.values()) {
        List<Continuity.At> bands =
            kind.bands().stream()
                .flatMap(Optional::stream)
                .filter(a -> region.holds(a.band()))
                .toList();
        if (!bands.isEmpty()) {
          double bias = bands.stream().mapToDouble(Continuity.At::biasDb).average().orElseThrow();
          double spread = StudyPage.rms(bands, a -> a.spreadDb().orElse(Double.NaN));
          double added = StudyPage.rms(bands, a -> Math.sqrt(a.addedDb2()));
          rows.add(
              new Then(
                  kind.kind(),
                  kind.units().size(),
                  region,
                  bias,
                  Double.isNaN(spread) ? OptionalDouble.empty() : OptionalDouble.of(spread),
                  added));
        }
      }
    }
    return rows;
  }

  public static List<CatalogueRun.Line> with(Decision decision, List<CatalogueRun.Line> lines) {
    return lines.stream().filter(l -> l.decision() == decision).toList();
  }

  public static List<CatalogueRun.Line> worst(List<CatalogueRun.Line> lines) {
    return with(Decision.RE_MEASURE, lines).stream().sorted(CatalogueRun.Line.WORST_FIRST).toList();
  }

  /** Which units would help the other graphs most: the first of each kind. */
  public static List<UnitsToMeasure.Choice> worth(CatalogueOverview overview) {
    Map<String, Integer> shown = new HashMap<>();
    return overview.choices().stream()
        .filter(c -> shown.merge(c.kind(), 1, Integer::sum) <= MOST_OF_A_KIND)
        .toList();
  }

  /** How many graphs of a kind got each decision; those that none got are not in it. */
  public record KindDecisions(String kind, Map<Decision, Integer> graphs) {
    public int all() {
      return graphs.values().stream().mapToInt(Integer::intValue).sum();
    }
  }

  /** Decisions by kind, in the order of their names. */
  public static List<KindDecisions> decisions(CatalogueOverview overview) {
    Map<String, Map<Decision, Integer>> kinds = new TreeMap<>();
    for (CatalogueOverview.Decided d : overview.decisions()) {
      kinds
          .computeIfAbsent(d.kind(), k -> new HashMap<>())
          .merge(d.decision(), d.graphs(), Integer::sum);
    }
    return kinds.entrySet().stream().map(e -> new KindDecisions(e.getKey(), e.getValue())).toList();
  }

  /** Graphs that changed from one reference to another, and how far they moved. */
  public record Compensated(String old, String now, List<CatalogueRun.Line> lines) {
    /** A change over all these graphs, dB; nothing where it is defined for none of them. */
    public OptionalDouble rms(Function<Change, OptionalDouble> of) {
      List<OptionalDouble> known =
          lines.stream().map(l -> of.apply(l.change())).filter(OptionalDouble::isPresent).toList();
      return known.isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(StudyPage.rms(known, OptionalDouble::getAsDouble));
    }
  }

  /** How much of the change of compensated graphs comes from the references alone. */
  public static List<Compensated> compensated(List<CatalogueRun.Line> lines) {
    Map<String, List<CatalogueRun.Line>> byReferences = new TreeMap<>();
    for (CatalogueRun.Line line : lines) {
      if (line.treatment().before().isPresent()) {
        byReferences
            .computeIfAbsent(old(line) + "\n" + now(line, ""), p -> new ArrayList<>())
            .add(line);
      }
    }
    return byReferences.values().stream()
        .map(g -> new Compensated(old(g.get(0)), now(g.get(0), "none: given raw"), g))
        .toList();
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

  /** Why a graph is to be measured again: where one reason decides alone, only that. */
  public static String whyAgain(CatalogueRun.Line line, Translation translation) {
    String kind = line.entry().kind();
    if (line.reasons().contains(Reason.KIND_NOT_IN_THE_STUDY)) {
      return Reason.KIND_NOT_IN_THE_STUDY.plain();
    }
    boolean tooFew =
        translation.kindsWithTooFewUnits().stream().anyMatch(k -> k.kind().equals(kind));
    if (tooFew && line.reasons().contains(Reason.FEW_UNITS)) {
      return Reason.FEW_UNITS.plain();
    }
    boolean unknown = kind.equals(Translation.UNKNOWN_KIND);
    if (unknown && translation.candidatesForUnknown().isEmpty()) {
      return "the kind is not known, and the study has enough units of none";
    }
    if (unknown && coversEnough(line, translation)) {
      return "the kind is not known, so the interval must cover every kind of the study with enough"
          + " units";
    }
    List<Reason> lowering = line.reasons().stream().filter(r -> !r.note()).toList();
    return lowering.isEmpty()
        ? "the old graph has no level over too much of the range"
        : plain(lowering);
  }

  public static String plain(List<Reason> reasons) {
    return reasons.stream().map(Reason::plain).collect(Collectors.joining("; "));
  }

  /** Whether what the graph does not cover would leave it publishable. */
  private static boolean coversEnough(CatalogueRun.Line line, Translation translation) {
    PublishingRule rule = translation.handling().publishing();
    double missingOctaves = 0;
    for (int b = 0; b < translation.grid().size(); b++) {
      boolean missing = line.marks().at(b).isEmpty();
      if (missing && rule.compares(translation.grid().band(b).midHz())) {
        missingOctaves += translation.grid().band(b).octaves();
      }
    }
    return missingOctaves <= rule.lostOctaves();
  }

  /** What was taken for granted of graphs that do not say how far they were smoothed. */
  public static Optional<String> smoothingNotStated(List<CatalogueRun.Line> lines) {
    long notStated = lines.stream().filter(l -> l.entry().smoothing().isEmpty()).count();
    return notStated == 0
        ? Optional.empty()
        : Optional.of(
            Numbers.count(notStated, "graph does", "graphs do")
                + " not state any smoothing and "
                + (notStated == 1 ? "is" : "are")
                + " taken as not smoothed.");
  }

  public static long count(Treatment.SmoothingMatch match, List<CatalogueRun.Line> lines) {
    return lines.stream().filter(l -> l.treatment().smoothing() == match).count();
  }
}
