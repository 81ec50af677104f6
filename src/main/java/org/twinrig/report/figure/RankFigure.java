package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.internal.Numbers;

/** Whether units keep their rank: deviation from the reference curve on both fixtures. */
public final class RankFigure {
  /** So many units are named: those whose rank changes most. */
  private static final int NAMED = 3;

  private static final int MOST_STEPS = 6;

  private RankFigure() {}

  /** Draws one kind; nothing without reference curves or units to rank. */
  public static Optional<Figure> of(KindOutcome kind, Caption caption) {
    return kind.evidence()
        .ranks()
        .filter(ranks -> !ranks.units().isEmpty())
        .map(ranks -> draw(ranks, caption));
  }

  private static Figure draw(RankKeeping.Result ranks, Caption caption) {
    List<RankKeeping.Ranked> units = ranks.units();
    List<RankKeeping.Ranked> named = ranks.mostChanged(NAMED);
    double[] from = Values.of(units, RankKeeping.Ranked::fromDb);
    double[] to = Values.of(units, RankKeeping.Ranked::toDb);
    double lowest = Values.least(Double.POSITIVE_INFINITY, from, to);
    double highest = Values.greatest(Double.NEGATIVE_INFINITY, from, to);
    double step = Axis.roundStep(Math.max(0.5, (highest - lowest) / MOST_STEPS));
    Axis old = Axis.stepped("Deviation on the old fixture, dB", lowest, highest, step, 0);
    Plot.Dots dots = new Plot.Dots(from, to, SeriesMarkers.CIRCLE, Ink.NEW_FIXTURE);
    double[] ends = {old.from(), old.to()};
    Plot plot =
        new Plot(
                old,
                Axis.stepped("Deviation on the new fixture, dB", lowest, highest, step, 0),
                false)
            .line(ends, ends, Ink.FRAME, "as far on both fixtures")
            .with(dots, "a unit; named where its rank changes most");
    units.forEach(u -> plot.name(named.contains(u) ? u.unit() : "", u.fromDb(), u.toDb()));
    List<String> notes = new ArrayList<>();
    Stream.of(ranks.spearman(), ranks.kendall())
        .flatMap(Optional::stream)
        .forEach(r -> notes.add(coefficient(r, caption)));
    for (RankKeeping.Ranked u : named) {
      notes.add(
          "%s: from rank %s to rank %s".formatted(u.unit(), rank(u.rankFrom()), rank(u.rankTo())));
    }
    String howToRead =
        "; RMS deviation from the fixture's reference curve, %s to %s"
            .formatted(Numbers.hertz(ranks.range().fromHz()), Numbers.hertz(ranks.range().toHz()));
    return caption
        .sheet(finding(ranks), howToRead)
        .square(plot, notes)
        .figure(
            caption.name("rank"),
            "Deviation of every unit from the reference curve on the new fixture against that on"
                + " the old one");
  }

  private static String coefficient(RankCorrelation r, Caption caption) {
    String interval =
        r.interval()
            .map(
                i ->
                    " (%s to %s, %s)"
                        .formatted(
                            Numbers.fixed(i.low(), 2),
                            Numbers.fixed(i.high(), 2),
                            caption.percent()))
            .orElse("");
    return r.measure().word() + " " + Numbers.fixed(r.coefficient(), 2) + interval;
  }

  private static String finding(RankKeeping.Result ranks) {
    long kept = ranks.units().stream().filter(u -> u.change() == 0).count();
    String units =
        Numbers.count(ranks.units().size(), "unit keeps its rank", "units keep their rank");
    String spearman =
        ranks
            .spearman()
            .map(r -> " (Spearman " + Numbers.fixed(r.coefficient(), 2) + ")")
            .orElse("");
    return kept + " of " + units + spearman;
  }

  /** A rank; half ranks are those of tied units. */
  public static String rank(double rank) {
    return Numbers.fixed(rank, rank == Math.rint(rank) ? 0 : 1);
  }
}
