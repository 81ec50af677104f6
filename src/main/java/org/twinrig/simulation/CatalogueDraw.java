package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.twinrig.capture.Side;
import org.twinrig.simulation.SimulatedGraph.Form;

/** Makes the back catalogue: graphs of fresh units on the old fixture, as a lab piles them up. */
record CatalogueDraw(SimulationPlan plan, Bench bench, int firstName) {
  static final String REFERENCE = "house-reference";

  /** The demonstration's graphs, from 0, that are not what they are listed as. */
  private static final int WRONG_KIND = 12;

  private static final int WRONG_FORM = 26;

  private static final int MOST_SEATINGS = 5;
  private static final double NARROW_FROM_HZ = 50;
  private static final double NARROW_TO_HZ = 16_000;

  List<SimulatedGraph> graphs() {
    return IntStream.range(0, plan.catalogueGraphs()).parallel().mapToObj(this::graph).toList();
  }

  private SimulatedGraph graph(int index) {
    Specimen specimen = specimen(plan, index);
    int seatings = 1 + Purpose.GRAPH.draws(plan.seed(), index).below(MOST_SEATINGS);
    Form form = index % 11 == 4 ? Form.COMPENSATED : Form.RAW;
    boolean wrongForm = plan.falseClaims() && index == WRONG_FORM;
    boolean wrongKind = plan.falseClaims() && index == WRONG_KIND;
    boolean unknown = index % 13 == 6;
    boolean narrow = index % 9 == 2;
    return new SimulatedGraph(
        String.format(Locale.ROOT, "G-%03d", index + 1),
        Member.unitName(firstName + index),
        unknown
            ? "unknown"
            : wrongKind ? plan.groups().get(0).kind().label() : specimen.kind().label(),
        bench.response(
            levels(specimen, seatings, form),
            narrow ? NARROW_FROM_HZ : 0,
            narrow ? NARROW_TO_HZ : Double.POSITIVE_INFINITY),
        seatings,
        wrongForm ? Form.RAW : form,
        wrongForm ? "compensated" : wrongKind ? specimen.kind().label() : "");
  }

  /** The unit behind a graph: kinds take turns, weighted as in the study. */
  static Specimen specimen(SimulationPlan plan, int index) {
    List<SimulatedKind> kinds = new ArrayList<>();
    int most = plan.groups().stream().mapToInt(SimulationPlan.Group::fit).max().orElseThrow();
    for (int round = 0; round < 3; round++) {
      for (SimulationPlan.Group group : plan.groups()) {
        // A kind with a handful of units has a handful of graphs: a third of the others'.
        if (round == 0 || 2 * group.fit() > most) {
          kinds.add(group.kind());
        }
      }
    }
    SimulatedKind kind = kinds.get(index % kinds.size());
    return new Specimen(
        plan.seed(),
        kind,
        Specimen.CATALOGUE + index,
        List.of(Side.M),
        Specimen.Sampling.INDEPENDENT);
  }

  private double[] levels(Specimen specimen, int seatings, Form form) {
    FittedUnit fitted = specimen.on(bench.fixture(), Side.M, 0);
    Chain chain = new Chain(bench, fitted);
    double[] sum = new double[bench.hz().length];
    Arrays.fill(sum, fitted.unit().sensitivityDb());
    for (int seating = 1; seating <= seatings; seating++) {
      Placement placement = specimen.placement(Side.M, 0, seating);
      double[] levels = chain.levelsDb(fitted.seated(placement, FittedUnit.Seal.GOOD));
      Draws noise =
          Purpose.NOISE.draws(plan.seed(), specimen.kind().key(), specimen.number(), seating);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += (levels[i] + StudyDraw.noiseDb(noise, bench.hz()[i])) / seatings;
      }
    }
    for (int i = 0; i < sum.length; i++) {
      double referenceDb = form == Form.COMPENSATED ? referenceDb(bench.hz()[i]) : 0;
      sum[i] = Math.rint((sum[i] - referenceDb) * 100) / 100;
    }
    return sum;
  }

  /**
   * The curve some old graphs had subtracted, at a frequency in Hz: a smooth rise about 3 kHz and a
   * gentle slope, the lab's own habit; dB, to the 0.01 dB its file holds.
   */
  static double referenceDb(double hz) {
    double octaves = Math.log(hz / 3000) / Math.log(2);
    double rise = 10 * Math.exp(-octaves * octaves / 1.6);
    double slope = -0.6 * Math.log(hz / 500) / Math.log(2);
    return Math.rint((rise + slope) * 100) / 100;
  }
}
