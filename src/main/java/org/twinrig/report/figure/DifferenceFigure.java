package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.band.Band;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.internal.Numbers;

/** How the mean transfers of one kind differ between two studies. */
public final class DifferenceFigure {
  /** An interval wider than this would squeeze everything else. */
  private static final double WIDEST_DB = 9;

  /** How far apart bars stand above the lower edge, as a share of a decade. */
  private static final double BAR_ROW = 0.035;

  private DifferenceFigure() {}

  /** Draws two studies; their fingerprints go into the small print, the ending to the name. */
  public static Figure of(StudyComparison.Pair pair, String ending, String fingerprints) {
    MeanDifference difference = pair.difference();
    List<Optional<MeanDifference.Verdict>> bands = difference.bands();
    double[] hz = Values.known(bands, v -> v.band().midHz());
    double[] simLow = Values.known(bands, v -> v.differenceDb() - v.simultaneousHalfDb());
    double[] simHigh = Values.known(bands, v -> v.differenceDb() + v.simultaneousHalfDb());
    Axis axis =
        Axis.differences(
            "Difference of the means, dB",
            Math.max(-WIDEST_DB, Values.least(-2, simLow) - 0.7),
            Math.min(WIDEST_DB, Values.greatest(2, simHigh)));
    Plot plot =
        Plot.overFrequency(axis)
            .area(
                hz,
                Values.known(bands, v -> v.differenceDb() - v.halfDb()),
                Values.known(bands, v -> v.differenceDb() + v.halfDb()),
                "per band")
            .line(hz, simLow, Ink.OUTLINE, "all bands at once")
            .line(hz, simHigh, Ink.OUTLINE)
            .line(hz, Values.known(bands, v -> v.differenceDb()), Ink.ESTIMATE)
            .with(bar(bands, axis, MeanDifference.Verdict::equivalent, 1, Ink.BAR), "equivalent")
            .with(
                bar(bands, axis, MeanDifference.Verdict::different, 2, Ink.BAR_BROKEN), "different")
            .rule(difference.limitDb(), Ink.LIMIT)
            .rule(-difference.limitDb(), Ink.LIMIT);
    return new Sheet(title(pair), howToRead(pair), fingerprints)
        .overFrequency(plot, List.of())
        .figure(
            Figure.nameOf("difference", difference.kind()) + ending,
            "Difference of the mean transfers of two studies against frequency, with its"
                + " intervals, and bars where the studies are shown to be equivalent or different");
  }

  private static String howToRead(StudyComparison.Pair pair) {
    return "%s (n = %s) minus %s (n = %s); %s %% intervals; dotted: ± %s dB"
        .formatted(
            pair.first(),
            pair.unitsFirst(),
            pair.second(),
            pair.unitsSecond(),
            Math.round(100 * pair.difference().confidence()),
            Numbers.fixed(pair.difference().limitDb(), 2));
  }

  private static String title(StudyComparison.Pair pair) {
    double different = pair.difference().octaves(MeanDifference.Verdict::different);
    String equivalent =
        Numbers.fixed(pair.difference().octaves(MeanDifference.Verdict::equivalent), 1);
    String finding =
        different > 0
            ? "different over %s octaves, equivalent over %s"
                .formatted(Numbers.fixed(different, 1), equivalent)
            : "no difference shown, equivalent over %s octaves".formatted(equivalent);
    return Figure.capital(pair.difference().kind()) + ": " + finding;
  }

  /** A bar near the lower edge over the bands that are chosen, each drawn as wide as it is. */
  private static Plot.Line bar(
      List<Optional<MeanDifference.Verdict>> bands,
      Axis axis,
      Predicate<MeanDifference.Verdict> chosen,
      int row,
      Ink.Pen pen) {
    double db = axis.from() + row * BAR_ROW * axis.perDecade();
    double[] x = new double[3 * bands.size()];
    double[] y = new double[x.length];
    for (int b = 0; b < bands.size(); b++) {
      Optional<Band> band = bands.get(b).filter(chosen).map(MeanDifference.Verdict::band);
      x[3 * b] = band.map(Band::lowerHz).map(hz -> Math.max(20, hz)).orElse(20.0);
      x[3 * b + 1] = band.map(Band::upperHz).map(hz -> Math.min(20_000, hz)).orElse(20.0);
      x[3 * b + 2] = 20;
      y[3 * b] = y[3 * b + 1] = band.isPresent() ? db : Double.NaN;
      y[3 * b + 2] = Double.NaN;
    }
    return new Plot.Line(x, y, pen);
  }
}
