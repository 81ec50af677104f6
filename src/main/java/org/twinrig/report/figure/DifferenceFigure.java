package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.internal.Numbers;

/** How the mean transfers of one kind differ between two studies. */
public final class DifferenceFigure {
  /** An interval wider than this would squeeze everything else. */
  private static final double WIDEST_DB = 9;

  private static final double BAR_RAISED_DB = 0.35;

  private DifferenceFigure() {}

  /**
   * What tells two studies apart from others.
   *
   * @param ending of the figure's name
   * @param fingerprints of both, for the small print
   */
  public record Label(String ending, String fingerprints) {}

  /**
   * Draws one kind of two studies.
   *
   * @param pair the two studies
   * @param label what tells the two apart from others
   * @return the drawing
   */
  public static Figure of(StudyComparison.Pair pair, Label label) {
    List<Optional<MeanDifference.Verdict>> bands = pair.difference().bands();
    double[] hz = values(bands, v -> v.band().midHz());
    double[] low = values(bands, v -> v.differenceDb() - v.halfDb());
    double[] high = values(bands, v -> v.differenceDb() + v.halfDb());
    double[] simLow = values(bands, v -> v.differenceDb() - v.simultaneousHalfDb());
    double[] simHigh = values(bands, v -> v.differenceDb() + v.simultaneousHalfDb());
    Panel.Range range =
        Panel.Range.ofDifferences(
            Math.max(-WIDEST_DB, Math.min(-2, least(simLow) - 2 * BAR_RAISED_DB)),
            Math.min(WIDEST_DB, Math.max(2, -least(negative(simHigh)))));
    String title = title(pair);
    double limit = pair.difference().limitDb();
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    named(pair.first(), pair.units().first())
                        + " minus "
                        + named(pair.second(), pair.units().second())
                        + "; "
                        + Math.round(100 * pair.difference().confidence())
                        + " % intervals; dotted: ± "
                        + Numbers.fixed(limit, 2)
                        + " dB",
                    "Difference of the means, dB",
                    label.fingerprints),
                range)
            .withArea(hz, clamped(low, range), clamped(high, range), "per band")
            .withCurve(
                new Panel.Curve(hz, cut(simLow, range), Ink.OUTLINE, Ink.THIN), "all bands at once")
            .withCurve(new Panel.Curve(hz, cut(simHigh, range), Ink.OUTLINE, Ink.THIN))
            .withCurve(
                new Panel.Curve(
                    hz, cut(values(bands, v -> v.differenceDb()), range), Ink.TEXT, Ink.CURVE))
            .withCurve(bar(hz, bands, range, v -> v.equivalent(), 1, true), "equivalent")
            .withCurve(bar(hz, bands, range, v -> v.different(), 2, false), "different")
            .withCurve(level(hz, limit))
            .withCurve(level(hz, -limit));
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("difference", pair.difference().kind()) + label.ending,
            title,
            "Difference of the mean transfers of two studies against frequency, with its intervals,"
                + " and bars where the studies are shown to be equivalent or different",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  static String title(StudyComparison.Pair pair) {
    double different = octaves(pair, MeanDifference.Verdict::different);
    double equivalent = octaves(pair, MeanDifference.Verdict::equivalent);
    return TransferFigure.capital(pair.difference().kind())
        + (different > 0
            ? ": different over " + Numbers.fixed(different, 1) + " octaves, "
            : ": no difference shown, ")
        + "equivalent over "
        + Numbers.fixed(equivalent, 1)
        + (different > 0 ? "" : " octaves");
  }

  private static String named(String study, int units) {
    return study + " (n = " + units + ")";
  }

  private static Panel.Curve level(double[] hz, double db) {
    double[] levels = new double[hz.length];
    Arrays.fill(levels, db);
    return new Panel.Curve(hz, levels, Ink.TEXT, Ink.DOTTED);
  }

  private static double octaves(
      StudyComparison.Pair pair, Predicate<MeanDifference.Verdict> chosen) {
    return pair.difference().octaves(chosen);
  }

  /** A bar near the lower edge over the bands that are chosen; a lone band is drawn as wide. */
  private static Panel.Curve bar(
      double[] hz,
      List<Optional<MeanDifference.Verdict>> bands,
      Panel.Range range,
      Predicate<MeanDifference.Verdict> chosen,
      int row,
      boolean solid) {
    double db = range.fromDb() + row * BAR_RAISED_DB * range.dbPerDecade() / 10;
    double[] x = new double[3 * hz.length];
    double[] y = new double[3 * hz.length];
    for (int b = 0; b < hz.length; b++) {
      boolean drawn = bands.get(b).filter(chosen).isPresent();
      x[3 * b] = drawn ? bands.get(b).get().band().lowerHz() : 1;
      x[3 * b + 1] = drawn ? bands.get(b).get().band().upperHz() : 1;
      x[3 * b + 2] = 1;
      Arrays.fill(y, 3 * b, 3 * b + 2, drawn ? db : Double.NaN);
      y[3 * b + 2] = Double.NaN;
    }
    return new Panel.Curve(
        x, y, solid ? Ink.NEW_FIXTURE : Ink.OLD_FIXTURE, solid ? Ink.BAR : Ink.BAR_BROKEN);
  }

  private static double[] values(
      List<Optional<MeanDifference.Verdict>> bands,
      ToDoubleFunction<MeanDifference.Verdict> value) {
    return bands.stream()
        .mapToDouble(b -> b.isPresent() ? value.applyAsDouble(b.get()) : Double.NaN)
        .toArray();
  }

  private static double least(double[] values) {
    return Arrays.stream(values).filter(v -> !Double.isNaN(v)).min().orElse(0);
  }

  private static double[] negative(double[] values) {
    return Arrays.stream(values).map(v -> -v).toArray();
  }

  private static double[] cut(double[] values, Panel.Range range) {
    return Arrays.stream(values)
        .map(v -> v < range.fromDb() || v > range.toDb() ? Double.NaN : v)
        .toArray();
  }

  private static double[] clamped(double[] values, Panel.Range range) {
    return Arrays.stream(values)
        .map(v -> Math.max(range.fromDb(), Math.min(range.toDb(), v)))
        .toArray();
  }
}
