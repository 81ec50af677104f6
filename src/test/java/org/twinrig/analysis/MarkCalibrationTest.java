package org.twinrig.analysis;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Pairs of independent simulated studies of one plan: what the first says of its marks, held
 * against the marks of the second.
 *
 * <p>The share kept is stated about one study; two studies both err, so that even right shares
 * promise less agreement than they state. The bounds are ours, below what was measured; there is no
 * outside source for them.
 */
class MarkCalibrationTest {
  private static final int PAIRS = 20;
  private static final int UNITS_PER_KIND = 12;

  /** Bands by the share kept that the first study states. */
  private static final double[] FROM = {0, 0.6, 0.8, 0.95, 1};

  private final int[] bands = new int[FROM.length];
  private final int[] agree = new int[FROM.length];
  private int edges;
  private int edgesMet;

  @Test
  void bandsSaidToKeepTheirMarkMostlyDoInAFreshStudy() throws UnusableInput {
    SimulationPlan plan =
        SimulationPlan.standard()
            .withUnitsPerKind(UNITS_PER_KIND)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000));
    for (int pair = 1; pair <= PAIRS; pair++) {
      List<KindOutcome> first = kinds(plan.withSeed(70_000 + pair).draw());
      List<KindOutcome> second = kinds(plan.withSeed(80_000 + pair).draw());
      for (KindOutcome kind : first) {
        second.stream()
            .filter(k -> k.kind().equals(kind.kind()))
            .forEach(fresh -> compare(kind, fresh));
      }
    }
    for (int k = 0; k < FROM.length; k++) {
      System.out.printf(
          Locale.ROOT,
          "stated kept from %.2f: %.3f of %d bands have the mark in a fresh study%n",
          FROM[k],
          share(k),
          bands[k]);
    }
    System.out.printf(
        Locale.ROOT,
        "%.3f of %d stated edges have the like one of a fresh study in their interval%n",
        (double) edgesMet / edges,
        edges);
    for (int k = 1; k < FROM.length; k++) {
      int at = k;
      assertTrue(share(k) > share(k - 1), () -> "agreement must rise with the share kept: " + at);
    }
    double sure = (double) (agree[3] + agree[4]) / (bands[3] + bands[4]);
    assertTrue(sure >= 0.92, () -> "kept from 0.95: agree in " + sure);
    double met = (double) edgesMet / edges;
    assertTrue(met >= 0.5, () -> "edges met: " + met);
  }

  private double share(int k) {
    return (double) agree[k] / bands[k];
  }

  private void compare(KindOutcome kind, KindOutcome fresh) {
    kind.stability().edges().stream()
        .filter(ZoneEdge::stable)
        .forEach(
            e -> {
              edges++;
              edgesMet += fresh.stability().edges().stream().anyMatch(f -> meets(e, f)) ? 1 : 0;
            });
    for (int b = 0; b < kind.transfer().bands().size(); b++) {
      Optional<MarkStability.Shares> stated = kind.stability().bands().get(b);
      if (stated.isPresent() && !fresh.transfer().bands().get(b).empty()) {
        int k = FROM.length - 1;
        while (stated.get().kept() < FROM[k]) {
          k--;
        }
        bands[k]++;
        agree[k] += stated.get().mark() == fresh.transfer().bands().get(b).mark() ? 1 : 0;
      }
    }
  }

  /**
   * Whether an edge of the fresh study lies in the interval of the first one's and is alike: marks
   * as bad begin there, in the same direction.
   */
  private static boolean meets(ZoneEdge first, ZoneEdge fresh) {
    Mark worse = first.below().worse(first.above());
    return fresh.below().worse(fresh.above()) == worse
        && (fresh.above() == worse) == (first.above() == worse)
        && first.interval().orElseThrow().fromHz() <= fresh.edgeHz()
        && fresh.edgeHz() <= first.interval().orElseThrow().toHz();
  }

  private static List<KindOutcome> kinds(SimulatedStudy drawn) throws UnusableInput {
    Study study =
        new Study(
            Path.of("."),
            "simulated",
            drawn.from(),
            drawn.to(),
            drawn.units(),
            drawn.captures().stream().map(c -> c.entry()).toList(),
            drawn.sessions(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of());
    return Analysis.of(study, drawn.captures(), "none", 2).kinds();
  }
}
