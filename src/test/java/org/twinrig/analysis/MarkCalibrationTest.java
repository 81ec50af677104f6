package org.twinrig.analysis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Independent simulated studies of one plan: what each says of its marks and edges, held against a
 * second study and against the mean of all.
 *
 * <p>The bounds are ours, below what was measured; there is no outside source for them.
 */
class MarkCalibrationTest {
  /** All of them with the profile proof; half as many, the first ones, in every build. */
  private static final int PAIRS =
      Integer.getInteger("twinrig.coverageStudies", 200) < 200 ? 10 : 20;

  private static final int UNITS_PER_KIND = 12;

  /** Pairs one after the other; every study has the same kinds in the same order. */
  private static final Map<PredictionModel, List<List<KindOutcome>>> STUDIES =
      new EnumMap<>(PredictionModel.class);

  @BeforeAll
  static void drawTheStudies() throws UnusableInput {
    for (PredictionModel model : List.of(PredictionModel.OFFSET, PredictionModel.AVERAGE)) {
      STUDIES.put(model, studies(model));
    }
  }

  private static List<List<KindOutcome>> studies(PredictionModel model) throws UnusableInput {
    List<List<KindOutcome>> studies = new ArrayList<>();
    SimulationPlan plan =
        SimulationPlan.standard()
            .withUnitsPerKind(UNITS_PER_KIND)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000));
    for (int k = 0; k < 2 * PAIRS; k++) {
      studies.add(kinds(plan.withSeed(70_001 + k).draw(), model));
    }
    return studies;
  }

  /**
   * The share kept is stated about one study; two studies both err, so that even right shares
   * promise less agreement than they state. Two normal errors of one size turn 0.95 into 0.88 and
   * 0.80 into 0.72 (a mark that may be lost on one side): {@code Φ(z/√2)}. Where a model is chosen,
   * a fresh study may choose another: that spread is not in the shares, and the agreement is less.
   */
  @ParameterizedTest
  @CsvSource({"OFFSET, 0.84, 0.93", "AUTO, 0.78, 0.91"})
  void bandsSaidToKeepTheirMarkMostlyDoInAFreshStudy(
      PredictionModel model, double nearlySure, double allSure) {
    List<List<KindOutcome>> studies = STUDIES.get(model);
    double[] from = {0, 0.6, 0.8, 0.95, 1};
    int[] bands = new int[from.length];
    int[] agree = new int[from.length];
    for (int pair = 0; pair < PAIRS; pair++) {
      for (int kind = 0; kind < studies.get(0).size(); kind++) {
        KindOutcome first = studies.get(2 * pair).get(kind);
        KindOutcome fresh = studies.get(2 * pair + 1).get(kind);
        for (int b = 0; b < first.transfer().bands().size(); b++) {
          Optional<MarkStability.Shares> stated = first.stability().bands().get(b);
          if (stated.isPresent()) {
            int k = from.length - 1;
            while (stated.get().kept() < from[k]) {
              k--;
            }
            bands[k]++;
            agree[k] += stated.get().mark() == fresh.transfer().bands().get(b).mark() ? 1 : 0;
          }
        }
      }
    }
    double[] share = new double[from.length];
    for (int k = 0; k < from.length; k++) {
      share[k] = (double) agree[k] / bands[k];
      System.out.printf(
          Locale.ROOT,
          "%s: stated kept from %.2f: %.3f of %d bands have the mark in a fresh study%n",
          model,
          from[k],
          share[k],
          bands[k]);
    }
    for (int k = 1; k < from.length; k++) {
      assertTrue(share[k] > share[k - 1], "agreement must rise with the share kept: " + from[k]);
    }
    assertTrue(share[3] >= nearlySure, "kept from 0.95 and below 1: " + share[3]);
    double sure = (double) (agree[3] + agree[4]) / (bands[3] + bands[4]);
    assertTrue(sure >= allSure, "kept from 0.95: " + sure);
  }

  /**
   * Where the half-width crosses the caution tolerance in the long run, against the intervals of
   * the edges of unreliable zones: those depend on widths alone. An edge that most, but not nearly
   * all, resamples have is often not there in the long run, and counts as missed. The bounds leave
   * two binomial standard errors of the some 90 edges that the smaller number of pairs has.
   */
  @ParameterizedTest
  @CsvSource({"OFFSET, 0.72", "AUTO, 0.55"})
  void theIntervalOfAnEdgeHoldsTheLongRunEdge(PredictionModel model, double least) {
    List<List<KindOutcome>> studies = STUDIES.get(model);
    int edges = 0;
    int held = 0;
    for (int kind = 0; kind < studies.get(0).size(); kind++) {
      NavigableSet<Double> worsening = longRunEdges(studies, kind, true);
      NavigableSet<Double> improving = longRunEdges(studies, kind, false);
      for (List<KindOutcome> study : studies) {
        for (ZoneEdge edge : study.get(kind).stability().edges()) {
          if (edge.below().worse(edge.above()) == Mark.UNRELIABLE && edge.kept() >= 0.95) {
            edges++;
            held += holds(edge, edge.above() == Mark.UNRELIABLE ? worsening : improving) ? 1 : 0;
          }
        }
      }
    }
    double share = (double) held / edges;
    System.out.printf(
        Locale.ROOT,
        "%s: %.3f of %d intervals of edges hold the long-run edge%n",
        model,
        share,
        edges);
    assertTrue(share >= least, () -> "held " + share);
    assertTrue(share <= 0.99, () -> "intervals too wide to say anything: held " + share);
  }

  private static boolean holds(ZoneEdge edge, NavigableSet<Double> longRun) {
    ResonanceWander.Range interval = edge.interval().orElseThrow();
    Double first = longRun.ceiling(interval.fromHz());
    return first != null && first <= interval.toHz();
  }

  /** Where the root mean square over all studies of the half-width crosses the tolerance, Hz. */
  private static NavigableSet<Double> longRunEdges(
      List<List<KindOutcome>> studies, int kind, boolean worsening) {
    KindOutcome any = studies.get(0).get(kind);
    NavigableSet<Double> edges = new TreeSet<>();
    for (int b = 1; b < any.transfer().bands().size(); b++) {
      boolean below = wideInTheLongRun(studies, kind, b - 1);
      boolean above = wideInTheLongRun(studies, kind, b);
      if (below != above && above == worsening) {
        edges.add(any.transfer().grid().band(b).lowerHz());
      }
    }
    return edges;
  }

  private static boolean wideInTheLongRun(List<List<KindOutcome>> studies, int kind, int b) {
    double squares = 0;
    for (List<KindOutcome> study : studies) {
      BandOutcome outcome = study.get(kind).transfer().bands().get(b).outcome();
      double halfDb = ((BandOutcome.Fitted) outcome).prediction().halfDb();
      squares += halfDb * halfDb / studies.size();
    }
    double midHz = studies.get(0).get(kind).transfer().grid().band(b).midHz();
    return Math.sqrt(squares) > Settings.defaults().tolerance().caution().atHz(midHz);
  }

  private static List<KindOutcome> kinds(SimulatedStudy drawn, PredictionModel model)
      throws UnusableInput {
    Study study = drawn.declared(Settings.defaults().with(Setting.MODEL, model));
    return Analysis.of(study, drawn.captures(), "none", 2).kinds();
  }
}
