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
  /** A smaller axis, in dB², would blow up what is of no account. */
  private static final double LEAST_TOP = 0.5;

  private static final int MOST_STEPS = 7;

  /** A word fits into a layer at least this share of the axis tall. */
  private static final double ROOM = 0.09;

  /** Width of a letter on the frequency axis. */
  private static final double DECADES_A_LETTER = 0.027;

  private BudgetFigure() {}

  private record Layer(String word, Color fill, Color ink, List<ErrorSource> sources) {
    double variance(BandBudget band) {
      return sources.stream().mapToDouble(s -> band.variance(s).orElse(0)).sum();
    }
  }

  /** From the bottom up; each is a step of lightness from the next. */
  private static List<Layer> layers() {
    return List.of(
        new Layer("between units", Ink.UNITS, Ink.PAPER, List.of(ErrorSource.UNITS)),
        new Layer("seating (old)", Ink.SEATING_OLD, Ink.TEXT, List.of(ErrorSource.SEATING_FROM)),
        new Layer("seating (new)", Ink.SEATING_NEW, Ink.TEXT, List.of(ErrorSource.SEATING_TO)),
        new Layer("fit of the mean", Ink.FIT, Ink.TEXT, List.of(ErrorSource.FIT)),
        new Layer(
            "calibrators",
            Ink.CALIBRATOR,
            Ink.PAPER,
            List.of(ErrorSource.CALIBRATOR_FROM, ErrorSource.CALIBRATOR_TO)),
        new Layer("drift", Ink.UNIT, Ink.TEXT, List.of(ErrorSource.DRIFT)));
  }

  public static Figure of(KindOutcome kind, Caption caption) {
    List<MarkedBand> bands = kind.transfer().bands();
    double[] hz = Values.hz(bands);
    List<double[]> ends = ends(hz, kind.budget());
    double top = Values.greatest(LEAST_TOP, ends.get(ends.size() - 1));
    Axis axis = Axis.stepped("Variance, dB²", 0, top, Axis.roundStep(top / MOST_STEPS), 0);
    Plot plot = Plot.overFrequency(axis);
    for (int k = 0; k < layers().size(); k++) {
      Layer layer = layers().get(k);
      double[] low = ends.get(k);
      double[] high = ends.get(k + 1);
      if (IntStream.range(0, hz.length).anyMatch(b -> high[b] > low[b])) {
        plot.with(new Plot.Area(hz, low, high, layer.fill), layer.word)
            .line(hz, high, Ink.HAIRLINE);
        name(plot, layer, hz, low, high);
      }
    }
    return caption
        .sheet(finding(kind), "; variance of one unit's translated level" + note(kind.budget()))
        .overFrequency(plot, Stretch.ofBands(bands))
        .figure(
            caption.name("budget"), "Variances by source, stacked, against frequency, with marks");
  }

  /** Where the layers begin and end, one more than layers; NaN where a band has no estimate. */
  private static List<double[]> ends(double[] hz, ErrorBudget budget) {
    List<double[]> ends = new ArrayList<>();
    double[] end = new double[hz.length];
    Arrays.fill(end, Double.NaN);
    budget.bands().forEach(b -> end[Arrays.binarySearch(hz, b.band().midHz())] = 0);
    ends.add(end.clone());
    for (Layer layer : layers()) {
      for (BandBudget band : budget.bands()) {
        end[Arrays.binarySearch(hz, band.band().midHz())] += layer.variance(band);
      }
      ends.add(end.clone());
    }
    return ends;
  }

  /** Writes a layer's word where it has most room for it, if anywhere; the key has all. */
  private static void name(Plot plot, Layer layer, double[] hz, double[] low, double[] high) {
    double reach = Math.pow(10, DECADES_A_LETTER * layer.word.length() / 2);
    double most = ROOM * plot.up().to();
    double atHz = 0;
    double atDb2 = 0;
    for (double at : hz) {
      int[] near =
          IntStream.range(0, hz.length)
              .filter(b -> hz[b] >= at / reach && hz[b] <= at * reach)
              .toArray();
      double floor = Arrays.stream(near).mapToDouble(b -> low[b]).max().orElseThrow();
      double ceiling = Arrays.stream(near).mapToDouble(b -> high[b]).min().orElseThrow();
      // NaN beside the word, where there is no estimate, fails the comparison.
      if (at / reach > 20 && at * reach < 20_000 && ceiling - floor > most) {
        most = ceiling - floor;
        atHz = at;
        atDb2 = (floor + ceiling) / 2;
      }
    }
    if (atHz > 0) {
      plot.note(layer.word, atHz, atDb2, Drawing.Lie.MIDDLE, Ink.NOTE.in(layer.ink));
    }
  }

  /** Where the variance is greatest, and what most of it there is. */
  private static String finding(KindOutcome kind) {
    Optional<RegionBudget> worst =
        RegionBudget.of(kind.budget()).stream()
            .max(Comparator.comparingDouble(RegionBudget::knownVariance));
    if (worst.isEmpty()) {
      return "no band has an estimate";
    }
    RegionBudget region = worst.get();
    Optional<ErrorSource> first =
        Arrays.stream(ErrorSource.values())
            .filter(s -> region.share(s).isPresent())
            .max(Comparator.comparingDouble(s -> region.share(s).orElse(0)));
    if (first.isEmpty()) {
      return "the fixtures differ by the same for every unit";
    }
    Layer layer =
        layers().stream().filter(l -> l.sources.contains(first.get())).findFirst().orElseThrow();
    return "most error from %s to %s, %s %% %s"
        .formatted(
            Numbers.hertz(region.region().fromHz()),
            Numbers.hertz(region.region().toHz()),
            Numbers.fixed(100 * region.share(first.get()).orElseThrow(), 0),
            layer.word);
  }

  private static String note(ErrorBudget budget) {
    String calibrators =
        switch (budget.calibration()) {
          case CANCELS -> "; the calibrators cancel";
          case BY_CLASS -> "";
          case NOT_KNOWN -> "; without the calibrators, which are not known";
        };
    boolean onceSeated =
        budget.bands().stream()
            .anyMatch(
                b ->
                    b.variance(ErrorSource.SEATING_FROM).isEmpty()
                        || b.variance(ErrorSource.SEATING_TO).isEmpty());
    return calibrators + (onceSeated ? "; seating not repeated counts as units" : "");
  }
}
