package org.twinrig.report.figure;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkedBand;

/** Where the error of a translated level comes from: variances stacked over frequency. */
public final class BudgetFigure {
  /** A label fits into a layer at least this share of the axis tall. */
  private static final double ROOM = 0.09;

  /** Width of a letter on the frequency axis. */
  private static final double DECADES_A_LETTER = 0.027;

  /** A smaller axis, in dB², would blow up what is of no account. */
  private static final double LEAST_TOP = 0.5;

  private BudgetFigure() {}

  /** How a layer of the stack looks, and what it holds; bottom first. */
  private record Layer(String word, Color fill, Color ink, List<ErrorSource> sources) {
    double variance(BandBudget band) {
      return sources.stream().mapToDouble(s -> band.variance(s).orElse(0)).sum();
    }
  }

  private static List<Layer> layers() {
    return List.of(
        new Layer("between units", Ink.UNITS, Ink.PAPER, List.of(ErrorSource.UNITS)),
        new Layer("seating, old", Ink.SEATING_OLD, Ink.TEXT, List.of(ErrorSource.SEATING_FROM)),
        new Layer("seating, new", Ink.SEATING_NEW, Ink.TEXT, List.of(ErrorSource.SEATING_TO)),
        new Layer("fit of the mean", Ink.FIT, Ink.TEXT, List.of(ErrorSource.FIT)),
        new Layer(
            "calibrators",
            Ink.CALIBRATOR,
            Ink.PAPER,
            List.of(ErrorSource.CALIBRATOR_FROM, ErrorSource.CALIBRATOR_TO)));
  }

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(KindOutcome kind, Caption caption) {
    List<MarkedBand> marked = kind.transfer().bands();
    double[] hz = marked.stream().mapToDouble(b -> b.band().midHz()).toArray();
    List<Stacked> stack = stack(hz, kind.budget());
    Panel.Range range = Panel.Range.ofVariances(Math.max(LEAST_TOP, top(stack)));
    String title = title(kind);
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted() + "; variance of one unit's translated level" + note(kind),
                    "Variance, dB²",
                    caption.fingerprint()),
                range)
            .ofVariances();
    for (Stacked layer : stack) {
      if (layer.holdsAnything()) {
        layer.paint(panel, range);
      }
    }
    panel.withStrip(TransferFigure.cells(marked));
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("budget", kind.kind()),
            title,
            "Variances by source, stacked, against frequency, with marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  /** Where the variance is greatest, and what most of it there is. */
  static String title(KindOutcome kind) {
    String who = TransferFigure.capital(kind.kind()) + ": ";
    Optional<RegionBudget> worst =
        RegionBudget.of(kind.budget()).stream()
            .max(Comparator.comparingDouble(RegionBudget::knownVariance));
    if (worst.isEmpty()) {
      return who + "no band has an estimate";
    }
    RegionBudget region = worst.get();
    Optional<ErrorSource> first =
        Arrays.stream(ErrorSource.values())
            .filter(s -> region.share(s).isPresent())
            .max(Comparator.comparingDouble(s -> region.share(s).orElse(0)));
    if (first.isEmpty()) {
      return who + "the fixtures differ by the same for every unit";
    }
    return who
        + "error is greatest from "
        + Numbers.hertz(region.region().fromHz())
        + " to "
        + Numbers.hertz(region.region().toHz())
        + ", "
        + Numbers.fixed(100 * region.share(first.get()).orElseThrow(), 0)
        + " % of it "
        + first.get().word();
  }

  private static String note(KindOutcome kind) {
    String calibrators =
        switch (kind.budget().calibration()) {
          case CANCELS -> "; the calibrators cancel";
          case BY_CLASS -> "";
          case NOT_KNOWN -> "; without the calibrators, which are not known";
        };
    boolean seating =
        kind.budget().bands().stream()
            .anyMatch(
                b ->
                    b.variance(ErrorSource.SEATING_FROM).isEmpty()
                        || b.variance(ErrorSource.SEATING_TO).isEmpty());
    return calibrators + (seating ? "; seating not repeated counts as units" : "");
  }

  /** The layers' variances summed from the bottom, NaN where a band has no estimate. */
  private static List<Stacked> stack(double[] hz, ErrorBudget budget) {
    double[] base = new double[hz.length];
    Arrays.fill(base, Double.NaN);
    budget.bands().forEach(band -> base[position(hz, band)] = 0);
    List<Stacked> stack = new ArrayList<>();
    double[] low = base;
    for (Layer layer : layers()) {
      double[] high = low.clone();
      budget.bands().forEach(band -> high[position(hz, band)] += layer.variance(band));
      stack.add(new Stacked(layer, hz, low, high));
      low = high;
    }
    return stack;
  }

  private static int position(double[] hz, BandBudget band) {
    return Arrays.binarySearch(hz, band.band().midHz());
  }

  /** The greatest sum; 0 when there is none. */
  private static double top(List<Stacked> stack) {
    return Arrays.stream(stack.get(stack.size() - 1).high)
        .filter(v -> !Double.isNaN(v))
        .max()
        .orElse(0);
  }

  /** A layer in its place. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Stacked(Layer layer, double[] hz, double[] low, double[] high) {
    boolean holdsAnything() {
      return IntStream.range(0, hz.length).anyMatch(b -> high[b] > low[b]);
    }

    void paint(Panel panel, Panel.Range range) {
      panel
          .withArea(new Panel.Area(hz, low, high, layer.fill), layer.word)
          .withCurve(new Panel.Curve(hz, high, Ink.TEXT, Ink.HAIR));
      label(range).ifPresent(panel::withLabel);
    }

    /** The word where its layer has most room for it, if anywhere. */
    private Optional<Panel.Label> label(Panel.Range range) {
      double reach = Math.pow(10, DECADES_A_LETTER * layer.word.length() / 2);
      double most = ROOM * range.toDb();
      Optional<Panel.Label> label = Optional.empty();
      for (double at : hz) {
        int[] beside =
            IntStream.range(0, hz.length)
                .filter(b -> hz[b] >= at / reach && hz[b] <= at * reach)
                .toArray();
        double floor = Arrays.stream(beside).mapToDouble(b -> low[b]).max().orElseThrow();
        double ceiling = Arrays.stream(beside).mapToDouble(b -> high[b]).min().orElseThrow();
        // NaN beside the word, where there is no estimate, fails the comparison.
        if (at / reach > 20 && at * reach < 20_000 && ceiling - floor > most) {
          most = ceiling - floor;
          label = Optional.of(new Panel.Label(at, (floor + ceiling) / 2, layer.word, layer.ink));
        }
      }
      return label;
    }
  }
}
