package org.twinrig.report.html;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.report.figure.DifferenceGraphs;
import org.twinrig.response.Anchor;
import org.twinrig.study.Settings;

/**
 * How the fixtures differ on average, kind by kind.
 *
 * @param settings of the study
 */
record DifferenceWords(Settings settings) {
  /** Below this a mean rounds to nothing. */
  private static final double NOTHING_DB = 0.05;

  ExplainView.Difference of(List<KindOutcome> kinds) {
    List<KindOutcome> drawn = kinds.stream().filter(this::drawn).toList();
    DifferenceGraphs graphs =
        new DifferenceGraphs(drawn.stream().map(KindOutcome::transfer).toList());
    List<String> others = kinds.stream().filter(k -> !drawn(k)).map(KindOutcome::kind).toList();
    return new ExplainView.Difference(
        title(drawn),
        drawn.stream().map(k -> panel(k, graphs)).toList(),
        others.isEmpty()
            ? ""
            : "Not drawn, because too few headphones were measured: "
                + PlainRange.joined(others)
                + ".",
        linedUp(settings.anchor()));
  }

  private boolean drawn(KindOutcome kind) {
    return kind.paired().units().size() >= settings.minUnits()
        && DifferenceGraphs.largest(kind.transfer()).isPresent();
  }

  private static String title(List<KindOutcome> drawn) {
    Comparator<KindOutcome> byReach = Comparator.comparingDouble(k -> Math.abs(largest(k).db()));
    // Of several alike the first of the study is named.
    Optional<KindOutcome> farthest =
        drawn.stream().reduce((a, b) -> byReach.compare(b, a) > 0 ? b : a);
    if (farthest.isEmpty()) {
      return "How far the fixtures differ is not known yet";
    }
    DifferenceGraphs.Mean mean = largest(farthest.get());
    return Math.abs(mean.db()) < NOTHING_DB
        ? "On average, the fixtures agree"
        : "On average, the fixtures differ by up to "
            + Numbers.fixed(Math.abs(mean.db()), 1)
            + " dB, near "
            + PlainRange.hertz(mean.band().midHz(), 2);
  }

  private static DifferenceGraphs.Mean largest(KindOutcome kind) {
    return DifferenceGraphs.largest(kind.transfer()).orElseThrow();
  }

  private static ExplainView.Panel panel(KindOutcome kind, DifferenceGraphs graphs) {
    DifferenceGraphs.Mean mean = largest(kind);
    String finding =
        Math.abs(mean.db()) < NOTHING_DB
            ? "No difference on average."
            : "At most "
                + Numbers.fixed(Math.abs(mean.db()), 1)
                + " dB "
                + (mean.db() > 0 ? "more" : "less")
                + ", near "
                + PlainRange.hertz(mean.band().midHz(), 2)
                + ".";
    return new ExplainView.Panel(
        VerdictSentence.capital(kind.kind()),
        TrustedMarkup.of(graphs.svg(kind.transfer(), kind.zones())),
        finding);
  }

  static String linedUp(Anchor anchor) {
    if (anchor instanceof Anchor.None) {
      return "Graphs are not lined up first. So the line also holds changes in how loud the whole"
          + " headphone is.";
    }
    String where = anchor instanceof Anchor.Range ? "from " : "at ";
    return "Graphs are first lined up with each other "
        + where
        + anchor.words()
        + ". So the line shows a change of shape. It does not show how loud the whole headphone is.";
  }
}
