package org.twinrig.report.html;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.report.figure.Figure;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * The report of a re-expressed catalogue, as the template sees it.
 *
 * @param title of the study
 * @param lead the count in words: in = out + refused
 * @param again rows of the re-measure list, worst first: graph, unit, kind, octaves lost between
 *     100 Hz and 10 kHz, octaves unreliable, why
 * @param againMore how many rows are left to summary.csv; empty when none
 * @param others rows: graph, unit, kind, decision, octaves reliable, caution, unreliable, missing
 * @param othersMore how many rows are left to summary.csv; empty when none
 * @param overview the Tablesaw-made table of kinds by decision, its header first
 * @param rules how decisions are taken and graphs are handled
 * @param refused what could not be re-expressed
 * @param notes what the lab should know
 * @param examples drawings
 * @param cautions sentences
 * @param fingerprint of the study
 * @param style the style sheet
 */
public record CataloguePage(
    String title,
    String lead,
    List<List<String>> again,
    String againMore,
    List<List<String>> others,
    String othersMore,
    List<List<String>> overview,
    List<String> rules,
    List<String> refused,
    List<String> notes,
    List<Figure> examples,
    List<String> cautions,
    String fingerprint,
    String style) {

  private static final int MOST_AGAIN = 500;
  private static final int MOST_OTHERS = 200;

  /**
   * The report.
   *
   * @param translation what was applied
   * @param outcome what became of the catalogue
   * @param examples a few drawings
   * @return one self-contained page
   */
  public static String html(
      Translation translation, Findings<CatalogueRun.Outcome> outcome, List<Figure> examples) {
    CatalogueRun.Outcome done = outcome.value();
    List<CatalogueRun.Line> worst =
        done.lines().stream()
            .filter(l -> l.decision() == Decision.RE_MEASURE)
            .sorted(
                Comparator.comparingDouble((CatalogueRun.Line l) -> -l.lostOctaves())
                    .thenComparingDouble(l -> -l.unreliableOctaves())
                    .thenComparing(l -> l.entry().graph()))
            .toList();
    List<CatalogueRun.Line> rest =
        done.lines().stream().filter(l -> l.decision() != Decision.RE_MEASURE).toList();
    CataloguePage page =
        new CataloguePage(
            translation.origin().title(),
            lead(done),
            worst.stream().limit(MOST_AGAIN).map(CataloguePage::againRow).toList(),
            more(worst.size() - MOST_AGAIN),
            rest.stream().limit(MOST_OTHERS).map(CataloguePage::otherRow).toList(),
            more(rest.size() - MOST_OTHERS),
            KindByDecision.of(done.lines()),
            rules(translation),
            texts(outcome, false),
            texts(outcome, true),
            examples,
            Cautions.all(),
            translation.origin().fingerprint(),
            Page.style());
    return Page.fill("catalogue.jte", page);
  }

  static String lead(CatalogueRun.Outcome done) {
    return "The catalogue lists "
        + Numbers.count(done.rows(), "graph", "graphs")
        + ": "
        + done.lines().size()
        + " re-expressed + "
        + done.refused()
        + " refused = "
        + done.rows()
        + ".";
  }

  private static String more(int count) {
    return count <= 0 ? "" : count + " more stand in summary.csv.";
  }

  private static List<String> againRow(CatalogueRun.Line l) {
    return List.of(
        l.entry().graph(),
        l.entry().unit(),
        l.entry().kind(),
        Numbers.fixed(l.lostOctaves(), 2),
        Numbers.fixed(l.unreliableOctaves(), 2),
        l.reasons().stream().map(Reason::plain).collect(Collectors.joining("; ")));
  }

  private static List<String> otherRow(CatalogueRun.Line l) {
    return List.of(
        l.entry().graph(),
        l.entry().unit(),
        l.entry().kind(),
        l.decision().word(),
        Numbers.fixed(l.reliableOctaves(), 2),
        Numbers.fixed(l.cautionOctaves(), 2),
        Numbers.fixed(l.unreliableOctaves(), 2),
        Numbers.fixed(l.missingOctaves(), 2));
  }

  private static List<String> rules(Translation translation) {
    String candidates =
        translation.candidatesForUnknown().stream()
            .map(TransferFunction::kind)
            .collect(Collectors.joining(", "));
    return List.of(
        "Measure again: more than one octave between 100 Hz and 10 kHz is unreliable or missing."
            + " Publish: every band the graph covers is reliable. Publish with marks: all others.",
        "A graph of unknown kind is held to be one of: "
            + (candidates.isEmpty() ? "(no kind has enough units)" : candidates)
            + ". Its interval holds whichever of them it is.",
        "A kind the study does not have is not translated at all.",
        "Where the number of averaged seatings is not given it is taken as one, which widens the"
            + " interval.",
        "A compensated graph has its reference added back first; the result is the raw graph on the"
            + " new fixture.");
  }

  private static List<String> texts(Findings<CatalogueRun.Outcome> outcome, boolean notes) {
    return outcome.problems().stream()
        .filter(p -> (p.kind() == Problem.Kind.NOTE) == notes)
        .map(Problem::text)
        .limit(MOST_AGAIN)
        .toList();
  }
}
