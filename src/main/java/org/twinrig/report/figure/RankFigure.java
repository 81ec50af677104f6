package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.internal.Numbers;

/** Whether units keep their rank: deviation from the reference curve on both fixtures. */
public final class RankFigure {
  /** So many units are named: those whose rank changes most. */
  private static final int NAMED = 3;

  private RankFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing; nothing without reference curves or units to rank
   */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    return kind.evidence()
        .ranks()
        .filter(ranks -> !ranks.units().isEmpty())
        .map(ranks -> draw(kind, ranks, caption));
  }

  private static Figure draw(KindOutcome kind, RankKeeping.Result ranks, Caption caption) {
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(ranks);
    CrossPlot.Axis axis = axis(ranks.units());
    double[] ends = {axis.from(), axis.to()};
    Set<String> named =
        ranks.mostChanged(NAMED).stream().map(RankKeeping.Ranked::unit).collect(Collectors.toSet());
    CrossPlot plot =
        new CrossPlot(
                new CrossPlot.Texts(
                    title,
                    caption.counted()
                        + "; RMS deviation from the fixture's reference curve, "
                        + Numbers.hertz(ranks.range().fromHz())
                        + " to "
                        + Numbers.hertz(ranks.range().toHz()),
                    "Deviation on the old fixture, dB",
                    "Deviation on the new fixture, dB",
                    caption.fingerprint()),
                axis)
            .withLine(new CrossPlot.Line(ends, ends, Ink.AXIS, Ink.THIN), "as far on both fixtures")
            .withDots(
                ranks.units().stream().map(u -> dot(u, named.contains(u.unit()))).toList(),
                "a unit; named where its rank changes most");
    ranks.spearman().ifPresent(r -> plot.withNote(coefficient(r, caption)));
    ranks.kendall().ifPresent(r -> plot.withNote(coefficient(r, caption)));
    for (RankKeeping.Ranked unit : ranks.mostChanged(NAMED)) {
      plot.withNote(
          unit.unit() + ": from rank " + rank(unit.rankFrom()) + " to rank " + rank(unit.rankTo()));
    }
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("rank", kind.kind()),
            title,
            "Deviation of every unit from the reference curve on the new fixture against that on the"
                + " old one",
            CrossPlot.WIDTH,
            CrossPlot.HEIGHT),
        plot::paint);
  }

  private static CrossPlot.Dot dot(RankKeeping.Ranked unit, boolean named) {
    return CrossPlot.Dot.of(
        unit.fromDb(), unit.toDb(), CrossPlot.Look.FULL, named ? unit.unit() : "");
  }

  private static String coefficient(RankCorrelation r, Caption caption) {
    return r.measure().word()
        + " "
        + Numbers.fixed(r.coefficient(), 2)
        + r.interval()
            .map(
                i ->
                    " ("
                        + Numbers.fixed(i.low(), 2)
                        + " to "
                        + Numbers.fixed(i.high(), 2)
                        + ", "
                        + caption.percent()
                        + ")")
            .orElse("");
  }

  private static String finding(RankKeeping.Result ranks) {
    long kept = ranks.units().stream().filter(u -> u.change() == 0).count();
    return kept
        + " of "
        + Numbers.count(ranks.units().size(), "unit keeps its rank", "units keep their rank")
        + ranks
            .spearman()
            .map(r -> " (Spearman " + Numbers.fixed(r.coefficient(), 2) + ")")
            .orElse("");
  }

  /** A rank; half ranks are those of tied units. */
  private static String rank(double rank) {
    return Numbers.fixed(rank, rank == Math.rint(rank) ? 0 : 1);
  }

  /** Round steps that hold every deviation, at most seven of them. */
  private static CrossPlot.Axis axis(List<RankKeeping.Ranked> units) {
    double lowest = units.stream().mapToDouble(u -> Math.min(u.fromDb(), u.toDb())).min().orElse(0);
    double highest =
        units.stream().mapToDouble(u -> Math.max(u.fromDb(), u.toDb())).max().orElse(1);
    double step = 0.5;
    while (step * 6 < highest - lowest) {
      step *= 2;
    }
    int first = (int) Math.floor(lowest / step);
    int last = Math.max(first + 1, (int) Math.ceil(highest / step));
    List<CrossPlot.Tick> ticks = new ArrayList<>();
    for (int k = first; k <= last; k++) {
      ticks.add(new CrossPlot.Tick(k * step, Numbers.fixed(k * step, step < 1 ? 1 : 0)));
    }
    return new CrossPlot.Axis(first * step, last * step, false, ticks);
  }
}
