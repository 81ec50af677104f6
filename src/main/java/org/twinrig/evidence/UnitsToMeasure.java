package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.WindowRule;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.Sketch;
import org.twinrig.translation.TransferFunction;

/**
 * Which units of a catalogue, measured on both fixtures and added to the study, would cut the
 * prediction error of the other graphs of their kind most.
 *
 * <p>The part of a graph's prediction variance that more units can cut is that of the fitted mean
 * and coefficients, {@code s²(b)·aᵀPa} with {@code a = (1, x - x̄)} over the band's window, {@code
 * P = diag(1/n, (WᵀW+λI)⁻¹)} and {@code s²(b) = loo_rms²·n/(n+1)} the variance of one unit about
 * the rule. Measuring a unit {@code u} adds its row to the fit; by Sherman and Morrison (1950) this
 * cuts {@code s²·(aᵀP a_u)² / (1 + a_uᵀP a_u)}. The cut is averaged over the other graphs of the
 * kind and over the bands in the range readers compare by. Units are chosen one after the other,
 * each given those before it, so that a second unit much like the first is not recommended for the
 * same reason.
 *
 * <p>What the spread of a kind's own units adds to every prediction is not cut by any unit.
 * Approximate where bands are pooled with their neighbours: the unit's own band is counted once. A
 * graph that lacks a band of a window counts there as the mean graph.
 */
public final class UnitsToMeasure {
  private static final int MOST_CANDIDATES = 200;

  private final TransferFunction kind;
  private final List<Integer> bands;

  private UnitsToMeasure(TransferFunction kind, PublishingRule rule) {
    this.kind = kind;
    this.bands =
        IntStream.range(0, kind.grid().size())
            .filter(b -> rule.compares(kind.grid().band(b).midHz()))
            .filter(b -> kind.bands().get(b).outcome() instanceof BandOutcome.Fitted)
            .boxed()
            .toList();
  }

  /** A graph of the catalogue: the unit it shows and its levels. */
  public record Graph(String unit, Sketch sketch) {}

  /**
   * A unit worth measuring: root of the mean prediction variance of the kind's graphs with the
   * units chosen before it, and with this one as well, dB.
   */
  public record Choice(String unit, String kind, double beforeDb, double afterDb) {}

  /**
   * Chooses at most so many units of one kind, the most useful first, from its graphs in the order
   * of the catalogue; the rule says in which range errors count.
   */
  public static List<Choice> of(
      TransferFunction kind, List<Graph> graphs, PublishingRule rule, int most) {
    UnitsToMeasure chooser = new UnitsToMeasure(kind, rule);
    Set<String> known = new HashSet<>(kind.unitNames());
    Map<String, Sketch> candidates = new LinkedHashMap<>();
    for (Graph g : graphs) {
      if (!known.contains(g.unit())) {
        candidates.putIfAbsent(g.unit(), g.sketch());
      }
    }
    return chooser.bands.isEmpty() || candidates.isEmpty()
        ? List.of()
        : chooser.choose(candidates, graphs, most);
  }

  private List<Choice> choose(Map<String, Sketch> candidates, List<Graph> graphs, int most) {
    List<BandFit> fits = new ArrayList<>();
    bands.forEach(b -> fits.add(BandFit.of(kind, b, graphs)));
    Map<String, Sketch> left = promising(candidates, fits);
    List<Choice> choices = new ArrayList<>();
    double before = mean(fits);
    while (choices.size() < most && !left.isEmpty()) {
      String best =
          left.entrySet().stream()
              .max(Comparator.comparingDouble(e -> cut(fits, e.getValue())))
              .orElseThrow()
              .getKey();
      Sketch sketch = left.remove(best);
      fits.replaceAll(fit -> fit.with(sketch));
      double after = mean(fits);
      choices.add(new Choice(best, kind.kind(), Math.sqrt(before), Math.sqrt(after)));
      before = after;
    }
    return choices;
  }

  /** The candidates that cut most by themselves: the others cannot overtake them by much. */
  private static Map<String, Sketch> promising(Map<String, Sketch> candidates, List<BandFit> fits) {
    record Scored(Map.Entry<String, Sketch> unit, double cut) {}
    Map<String, Sketch> kept = new LinkedHashMap<>();
    candidates.entrySet().stream()
        .map(e -> new Scored(e, cut(fits, e.getValue())))
        .sorted(Comparator.comparingDouble((Scored s) -> -s.cut()))
        .limit(MOST_CANDIDATES)
        .forEach(s -> kept.put(s.unit().getKey(), s.unit().getValue()));
    return kept;
  }

  private static double mean(List<BandFit> fits) {
    return fits.stream().mapToDouble(BandFit::meanVariance).average().orElseThrow();
  }

  private static double cut(List<BandFit> fits, Sketch unit) {
    double sum = 0;
    for (BandFit fit : fits) {
      sum += fit.cut(unit);
    }
    return sum;
  }

  /**
   * The fit of one band, as units are added to it: {@code s²}, the window, {@code P} with the
   * intercept first, and the mean of {@code a·aᵀ} over the graphs.
   */
  private record BandFit(
      double variance,
      List<WindowRule.Predictor> predictors,
      RealMatrix spread,
      RealMatrix moments) {

    static BandFit of(TransferFunction kind, int band, List<Graph> graphs) {
      BandOutcome.Fitted fitted = (BandOutcome.Fitted) kind.bands().get(band).outcome();
      int n = fitted.units();
      double rms = fitted.prediction().errors().looRmsDb();
      List<WindowRule.Predictor> predictors =
          fitted.prediction().window().map(WindowRule::predictors).orElse(List.of());
      int size = predictors.size() + 1;
      RealMatrix spread = new Array2DRowRealMatrix(size, size);
      spread.setEntry(0, 0, 1.0 / n);
      for (int k = 1; k < size; k++) {
        double[] axis = new double[size - 1];
        axis[k - 1] = 1;
        double[] column = fitted.prediction().window().orElseThrow().spread(axis);
        spread.setSubMatrix(new double[][] {column}, k, 1);
      }
      double[][] moments = new double[size][size];
      for (Graph g : graphs) {
        double[] a = row(predictors, g.sketch()).toArray();
        for (int r = 0; r < size; r++) {
          for (int c = 0; c < size; c++) {
            moments[r][c] += a[r] * a[c] / graphs.size();
          }
        }
      }
      return new BandFit(
          rms * rms * n / (n + 1.0), predictors, spread, new Array2DRowRealMatrix(moments, false));
    }

    private static RealVector row(List<WindowRule.Predictor> predictors, Sketch sketch) {
      double[] a = new double[predictors.size() + 1];
      a[0] = 1;
      for (int k = 1; k < a.length; k++) {
        WindowRule.Predictor p = predictors.get(k - 1);
        a[k] = sketch.has(p.band()) ? sketch.db(p.band()) - p.centreDb() : 0;
      }
      return new ArrayRealVector(a, false);
    }

    /** {@code s²·(1 + tr(P·M))}: mean prediction variance of the graphs. */
    double meanVariance() {
      return variance * (1 + spread.multiply(moments).getTrace());
    }

    /** By how much a unit would cut it. */
    double cut(Sketch unit) {
      RealVector a = row(predictors, unit);
      RealVector pa = spread.operate(a);
      return variance * pa.dotProduct(moments.operate(pa)) / (1 + a.dotProduct(pa));
    }

    /** With one more unit: {@code P - P a aᵀ P / (1 + aᵀ P a)}. */
    BandFit with(Sketch unit) {
      RealVector a = row(predictors, unit);
      RealVector pa = spread.operate(a);
      RealMatrix less = pa.outerProduct(pa).scalarMultiply(1 / (1 + a.dotProduct(pa)));
      return new BandFit(variance, predictors, spread.subtract(less), moments);
    }
  }
}
