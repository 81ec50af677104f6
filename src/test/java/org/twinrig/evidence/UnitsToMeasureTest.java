package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Levels;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.Sketch;
import org.twinrig.translation.TransferFunction;

/** The most useful units, against fits made anew with every candidate. */
class UnitsToMeasureTest {
  private static final BandGrid GRID = BandGrid.covering(250, 4000, 1);
  private static final int UNITS = 9;
  private static final double LAMBDA = 3;
  private static final PublishingRule ALL = new PublishingRule(new FrequencyRange(100, 10_000), 1);

  private final Random random = new Random(4);
  private final double[][] study = new double[UNITS][GRID.size()];
  private final List<UnitsToMeasure.Graph> graphs = new ArrayList<>();

  UnitsToMeasureTest() {
    for (double[] unit : study) {
      for (int b = 0; b < unit.length; b++) {
        unit[b] = random.nextGaussian();
      }
    }
    double[] mean = new double[GRID.size()];
    for (double[] unit : study) {
      for (int b = 0; b < mean.length; b++) {
        mean[b] += unit[b] / UNITS;
      }
    }
    for (double[] unit : study) {
      for (int b = 0; b < mean.length; b++) {
        unit[b] -= mean[b];
      }
    }
    for (int g = 0; g < 12; g++) {
      double[] db = new double[GRID.size()];
      for (int b = 0; b < db.length; b++) {
        db[b] = 2 * random.nextGaussian();
      }
      graphs.add(new UnitsToMeasure.Graph("Unit " + g, Sketch.of(Levels.copyOf(GRID, db))));
    }
  }

  /** {@code XᵀX + λI} over the window of a band, intercept first and not penalised. */
  private RealMatrix normal(int band, List<double[]> rows) {
    int size = window(band).size() + 1;
    RealMatrix normal = new Array2DRowRealMatrix(size, size);
    for (int k = 1; k < size; k++) {
      normal.setEntry(k, k, LAMBDA);
    }
    for (double[] row : rows) {
      double[] a = new double[size];
      a[0] = 1;
      for (int k = 1; k < size; k++) {
        a[k] = row[window(band).get(k - 1)];
      }
      for (int r = 0; r < size; r++) {
        for (int c = 0; c < size; c++) {
          normal.addToEntry(r, c, a[r] * a[c]);
        }
      }
    }
    return normal;
  }

  private static List<Integer> window(int band) {
    List<Integer> window = new ArrayList<>();
    for (int b = Math.max(0, band - 1); b <= Math.min(GRID.size() - 1, band + 1); b++) {
      window.add(b);
    }
    return window;
  }

  private TransferFunction kind() {
    List<MarkedBand> bands = new ArrayList<>();
    for (int b = 0; b < GRID.size(); b++) {
      RealMatrix inverse = new LUDecomposition(normal(b, List.of(study))).getSolver().getInverse();
      List<WindowRule.Predictor> predictors = new ArrayList<>();
      List<Double> spread = new ArrayList<>();
      for (int k = 0; k < window(b).size(); k++) {
        predictors.add(new WindowRule.Predictor(window(b).get(k), 0.1, 0));
        for (int s = 0; s <= k; s++) {
          spread.add(inverse.getEntry(k + 1, s + 1));
        }
      }
      WindowRule rule = new WindowRule(0, 0, predictors, spread, OptionalDouble.empty());
      bands.add(
          new MarkedBand(
              new BandOutcome.Fitted(
                  GRID.band(b),
                  new RandomEffects.Result(0, 0.1, 1, UNITS, 0.95, 0.2),
                  0.3,
                  new BandOutcome.Prediction(
                      Optional.of(rule), 3, errors(1.5), errors(1 + 0.1 * b)),
                  new BandOutcome.Scatter(0.1, OptionalDouble.empty(), OptionalDouble.empty(), 1),
                  new BandOutcome.UnitSpread(0, 1, 0)),
              Mark.RELIABLE,
              List.of()));
    }
    return new TransferFunction("in-ear", List.of("Alder 1", "Alder 2"), GRID, bands);
  }

  private static BandOutcome.Errors errors(double rms) {
    return new BandOutcome.Errors(rms, rms * rms, UNITS - 1, rms * rms);
  }

  /** Root mean prediction variance with rows added to the study, each fit made anew. */
  private double rms(List<double[]> added) {
    double sum = 0;
    for (int b = 0; b < GRID.size(); b++) {
      List<double[]> rows = new ArrayList<>(List.of(study));
      rows.addAll(added);
      RealMatrix inverse = new LUDecomposition(normal(b, rows)).getSolver().getInverse();
      double loo = 1 + 0.1 * b;
      double variance = loo * loo * UNITS / (UNITS + 1.0);
      for (UnitsToMeasure.Graph graph : graphs) {
        double[] a = new double[window(b).size() + 1];
        a[0] = 1;
        for (int k = 1; k < a.length; k++) {
          a[k] = graph.sketch().db(window(b).get(k - 1));
        }
        double spread = 0;
        for (int r = 0; r < a.length; r++) {
          for (int c = 0; c < a.length; c++) {
            spread += a[r] * inverse.getEntry(r, c) * a[c];
          }
        }
        sum += variance * (1 + spread) / graphs.size() / GRID.size();
      }
    }
    return Math.sqrt(sum);
  }

  @Test
  void theChoicesAreThoseOfFitsMadeAnew() {
    List<UnitsToMeasure.Choice> choices = UnitsToMeasure.of(kind(), graphs, ALL, 3);
    assertEquals(3, choices.size());
    List<double[]> added = new ArrayList<>();
    List<UnitsToMeasure.Graph> left = new ArrayList<>(graphs);
    for (UnitsToMeasure.Choice choice : choices) {
      assertEquals(rms(added), choice.beforeDb(), 1e-6);
      UnitsToMeasure.Graph best = null;
      double least = Double.POSITIVE_INFINITY;
      for (UnitsToMeasure.Graph candidate : left) {
        List<double[]> with = new ArrayList<>(added);
        with.add(levels(candidate));
        if (rms(with) < least) {
          least = rms(with);
          best = candidate;
        }
      }
      assertEquals(best.unit(), choice.unit());
      assertEquals(least, choice.afterDb(), 1e-6);
      assertTrue(choice.afterDb() < choice.beforeDb());
      added.add(levels(best));
      left.remove(best);
    }
  }

  private static double[] levels(UnitsToMeasure.Graph graph) {
    double[] db = new double[GRID.size()];
    for (int b = 0; b < db.length; b++) {
      db[b] = graph.sketch().db(b);
    }
    return db;
  }

  @Test
  void unitsOfTheStudyAreNoCandidates() {
    List<UnitsToMeasure.Graph> known =
        List.of(
            new UnitsToMeasure.Graph("Alder 1", graphs.get(0).sketch()),
            new UnitsToMeasure.Graph("Alder 2", graphs.get(1).sketch()));
    assertEquals(List.of(), UnitsToMeasure.of(kind(), known, ALL, 3));
  }
}
