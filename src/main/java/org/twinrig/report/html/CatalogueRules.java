package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** How a catalogue was handled, in words. */
public final class CatalogueRules {
  private CatalogueRules() {}

  /** How many graphs were listed and what became of them; refused ones are told apart. */
  static String lead(Translation translation, CatalogueRun.Outcome done) {
    return Numbers.count(done.rows(), "graph", "graphs")
        + (done.rows() == 1 ? " made on " : ", all made on ")
        + translation.origin().from()
        + ", read as if made on "
        + translation.origin().to()
        + ". "
        + done.lines().size()
        + (done.lines().size() == 1 ? " was" : " were")
        + " re-expressed"
        + (done.refused() == 0 ? ", none refused." : ".");
  }

  /** Graphs that this report cannot speak of; empty when there are none. */
  static String refused(CatalogueRun.Outcome done) {
    return done.refused() == 0
        ? ""
        : Numbers.count(done.refused(), "graph was", "graphs were")
            + " refused and "
            + (done.refused() == 1 ? "is" : "are")
            + " not judged here: which, and why";
  }

  /** Which graphs are to be measured again, in short: it stands above their list. */
  static String again(PublishingRule rule) {
    return "Listed is every graph with more than "
        + Numbers.fixed(rule.lostOctaves(), 1)
        + " octaves lost (unreliable or missing) between "
        + Numbers.hertz(rule.compared().fromHz())
        + " and "
        + Numbers.hertz(rule.compared().toHz())
        + ". Where the study has too few units of a kind, or none, every band of its graphs is"
        + " lost.";
  }

  static List<String> of(Translation translation, List<CatalogueRun.Line> lines) {
    PublishingRule rule = translation.handling().publishing();
    List<String> rules = new ArrayList<>();
    rules.add(
        "A graph is to be measured again when more than "
            + Numbers.fixed(rule.lostOctaves(), 1)
            + " octaves between "
            + Numbers.hertz(rule.compared().fromHz())
            + " and "
            + Numbers.hertz(rule.compared().toHz())
            + " are unreliable or missing: what it has lost. It is published when every band it"
            + " covers is reliable, and published with marks otherwise. The key publishing of"
            + " study.yaml sets this rule.");
    rules.add(unknown(translation));
    rules.add(
        "A graph of a kind the study does not have is not translated: every band it covers is"
            + " unreliable.");
    rules.add(
        "Where the number of averaged seatings is not given it is taken as one, which widens the"
            + " interval; where the number of sides is not given it is taken to be that of the study ("
            + Numbers.fixed(translation.handling().sidesPerSeating(), 1)
            + " a seating).");
    rules.addAll(compensated(lines));
    rules.addAll(smoothing(translation, lines));
    return rules;
  }

  private static List<String> compensated(List<CatalogueRun.Line> lines) {
    long compensated = lines.stream().filter(l -> l.treatment().before().isPresent()).count();
    if (compensated == 0) {
      return List.of();
    }
    boolean stays = lines.stream().anyMatch(l -> l.treatment().now().isPresent());
    return List.of(
        "A compensated graph has its reference added back, pinned to the study's anchor; the raw"
            + " graph is re-expressed, and "
            + (stays
                ? "the new fixture's reference, pinned alike, is subtracted again."
                : "stays raw, because no reference of the new fixture was given."));
  }

  /**
   * What was taken for granted of graphs that do not say how far they were smoothed.
   *
   * @param lines what became of the graphs
   * @return one sentence; nothing where all of them say it
   */
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

  private static List<String> smoothing(Translation translation, List<CatalogueRun.Line> lines) {
    List<String> rules = new ArrayList<>();
    smoothingNotStated(lines).ifPresent(rules::add);
    for (Treatment.SmoothingMatch match : Treatment.SmoothingMatch.values()) {
      long count = lines.stream().filter(l -> l.treatment().smoothing() == match).count();
      if (count > 0 && match != Treatment.SmoothingMatch.ALIKE) {
        rules.add(Numbers.count(count, "graph", "graphs") + ": " + met(match, translation));
      }
    }
    return rules;
  }

  private static String met(Treatment.SmoothingMatch match, Translation translation) {
    String captures = translation.handling().captureSmoothing().plain();
    return switch (match) {
      case ALIKE -> "smoothed as the study's captures are.";
      case GRAPH_SMOOTHED ->
          "smoothed less than the study's captures ("
              + captures
              + "), so they were smoothed alike first; so is the result.";
      case STUDY_SMOOTHED ->
          "smoothed more than the study's captures ("
              + captures
              + "), so the captures were smoothed alike and the study fitted anew for them.";
      case FINER_THAN_BANDS ->
          "smoothed more than the study's captures ("
              + captures
              + "), but over less than a band, which averages as much.";
      case MARKED ->
          "smoothed more than the study's captures ("
              + captures
              + ") and over a band or more; the captures were not at hand to be smoothed alike, so"
              + " every band is marked. Translate with the study's folder to avoid this.";
    };
  }

  private static String unknown(Translation translation) {
    String candidates =
        translation.candidatesForUnknown().stream()
            .map(TransferFunction::kind)
            .collect(Collectors.joining(", "));
    return candidates.isEmpty()
        ? "No kind of the study has enough units, so graphs of unknown kind are not translated."
        : "A graph of unknown kind is held to be of one of the kinds with enough units ("
            + candidates
            + "); its interval covers it whichever of them it is.";
  }
}
