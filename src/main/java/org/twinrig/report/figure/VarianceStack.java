package org.twinrig.report.figure;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.ErrorSource;

/**
 * Variances by source, summed from the bottom, with the names of the layers on the graph itself: in
 * a layer where there is room, otherwise beside the stack with a line that leads into the layer.
 */
@SuppressWarnings("ArrayRecordComponent")
record VarianceStack(double[] hz, List<Stacked> layers) {
  /** A word fits into a layer at least this share of the axis tall. */
  private static final double ROOM = 0.09;

  /** A thinner layer than this share of the axis cannot be pointed at. */
  private static final double THINNEST = 0.01;

  /** Width of a letter on the frequency axis. */
  private static final double DECADES_A_LETTER = 0.027;

  /** Words stand beside the stack where it stays below this share of the axis. */
  private static final double LOW = 0.5;

  private static final double TOP_ROW = 0.9;
  private static final double ROW = 0.1;

  /** How a layer looks, and what it holds. */
  record Layer(String word, Color fill, Color ink, List<ErrorSource> sources) {
    double variance(BandBudget band) {
      return sources.stream().mapToDouble(s -> band.variance(s).orElse(0)).sum();
    }
  }

  /** A layer in its place, NaN where a band has no estimate. */
  record Stacked(Layer layer, double[] low, double[] high) {
    double thickness(int band) {
      return high[band] - low[band];
    }
  }

  /** A stretch of the axis above which there is room for words, Hz. */
  private record Stretch(double fromHz, double toHz) {
    double decades() {
      return Math.log10(toHz / fromHz);
    }
  }

  /** Bottom first; each is a step of lightness from the next. */
  private static List<Layer> kinds() {
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

  /** The word under which a source is drawn. */
  static String word(ErrorSource source) {
    return kinds().stream()
        .filter(layer -> layer.sources.contains(source))
        .map(Layer::word)
        .findFirst()
        .orElseThrow();
  }

  static VarianceStack of(double[] hz, ErrorBudget budget) {
    double[] low = new double[hz.length];
    Arrays.fill(low, Double.NaN);
    for (BandBudget band : budget.bands()) {
      low[Arrays.binarySearch(hz, band.band().midHz())] = 0;
    }
    List<Stacked> stack = new ArrayList<>();
    for (Layer layer : kinds()) {
      double[] high = low.clone();
      for (BandBudget band : budget.bands()) {
        high[Arrays.binarySearch(hz, band.band().midHz())] += layer.variance(band);
      }
      stack.add(new Stacked(layer, low, high));
      low = high;
    }
    return new VarianceStack(hz, List.copyOf(stack));
  }

  private double[] top() {
    return layers.get(layers.size() - 1).high;
  }

  /** The greatest sum in dB²; 0 when there is none. */
  double greatest() {
    return Arrays.stream(top()).filter(v -> !Double.isNaN(v)).max().orElse(0);
  }

  void paint(Panel panel, Panel.Range range) {
    List<Stacked> unnamed = new ArrayList<>();
    for (Stacked s : layers) {
      if (IntStream.range(0, hz.length).anyMatch(b -> s.thickness(b) > 0)) {
        panel
            .withArea(new Panel.Area(hz, s.low, s.high, s.layer.fill), s.layer.word)
            .withCurve(new Panel.Curve(hz, s.high, Ink.TEXT, Ink.HAIR));
        inside(s, range).ifPresentOrElse(panel::withLabel, () -> unnamed.add(0, s));
      }
    }
    beside(panel, unnamed, range);
  }

  /** The word where its layer has most room for it, if anywhere. */
  private Optional<Panel.Label> inside(Stacked s, Panel.Range range) {
    double reach = Math.pow(10, DECADES_A_LETTER * s.layer.word.length() / 2);
    double most = ROOM * range.toDb();
    Optional<Panel.Label> label = Optional.empty();
    for (double at : hz) {
      int[] near =
          IntStream.range(0, hz.length)
              .filter(b -> hz[b] >= at / reach && hz[b] <= at * reach)
              .toArray();
      double floor = Arrays.stream(near).mapToDouble(b -> s.low[b]).max().orElseThrow();
      double ceiling = Arrays.stream(near).mapToDouble(b -> s.high[b]).min().orElseThrow();
      // NaN beside the word, where there is no estimate, fails the comparison.
      if (at / reach > 20 && at * reach < 20_000 && ceiling - floor > most) {
        most = ceiling - floor;
        label = Optional.of(new Panel.Label(at, (floor + ceiling) / 2, s.layer.word, s.layer.ink));
      }
    }
    return label;
  }

  /** A layer whose word stands beside it, and the band at which it is thickest. */
  private record Pointed(Stacked layer, double hz, double db) {}

  /**
   * Words for thin layers, each beside its line: right of it in the left half of the free stretch,
   * left of it in the right half. The farther out, the higher, so that no line runs through a word.
   */
  private void beside(Panel panel, List<Stacked> unnamed, Panel.Range range) {
    Optional<Stretch> free = free(range).filter(s -> s.decades() > 0.6);
    if (free.isEmpty()) {
      return;
    }
    double middleHz = Math.sqrt(free.get().fromHz * free.get().toHz);
    List<Pointed> pointed =
        unnamed.stream()
            .flatMap(s -> pointed(s, range).stream())
            .sorted(
                Comparator.comparing((Pointed p) -> p.hz > middleHz)
                    .thenComparing(p -> p.hz > middleHz ? -p.hz : p.hz))
            .toList();
    double row = TOP_ROW;
    for (Pointed p : pointed) {
      double atHz =
          p.hz > middleHz
              ? Math.min(free.get().toHz, p.hz) / 1.15
              : Math.max(free.get().fromHz, p.hz) * 1.15;
      panel.withLeader(new Panel.Leader(atHz, row * range.toDb(), p.layer.layer.word, p.hz, p.db));
      row -= ROW;
    }
  }

  private Optional<Pointed> pointed(Stacked s, Panel.Range range) {
    return IntStream.range(0, hz.length)
        .filter(b -> s.thickness(b) > THINNEST * range.toDb())
        .boxed()
        .reduce((a, b) -> s.thickness(b) > s.thickness(a) ? b : a)
        .map(b -> new Pointed(s, hz[b], (s.low[b] + s.high[b]) / 2));
  }

  /** The longest stretch above which the upper half of the graph is empty. */
  private Optional<Stretch> free(Panel.Range range) {
    Optional<Stretch> best = Optional.empty();
    int start = 0;
    for (int b = 0; b <= hz.length; b++) {
      if (b == hz.length || top()[b] > LOW * range.toDb()) {
        if (b > start) {
          Stretch stretch = new Stretch(hz[start], hz[b - 1]);
          if (best.isEmpty() || stretch.decades() > best.get().decades()) {
            best = Optional.of(stretch);
          }
        }
        start = b + 1;
      }
    }
    return best;
  }
}
