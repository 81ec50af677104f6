package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.twinrig.PlannedStudy;
import org.twinrig.capture.Capture;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;

/** The program's own simulator: a chain of acoustic impedances ({@code org.twinrig.simulation}). */
final class ChainLab implements Lab {
  /** Enough units for a mean that errs by a tenth of what units differ. */
  private static final int MANY = 100;

  private static final SimulationPlan.Troubles ALL_LOST =
      new SimulationPlan.Troubles(1, 1, 0, 0, 0, 0);

  private final Harness harness;
  private final double[] hz = new double[POINTS];
  private final Map<String, double[]> transfers = new ConcurrentHashMap<>();

  ChainLab(Harness harness) {
    this.harness = harness;
    Response any = drawn(KINDS.get(0), 1, Build.USUAL).captures().get(0).response();
    Arrays.setAll(hz, any::frequencyHz);
  }

  @Override
  public String word() {
    return "impedances";
  }

  @Override
  public double[] hz() {
    return hz.clone();
  }

  @Override
  public List<Measured> measure(String kind, int units, Build build, long... key) {
    SimulatedStudy study = drawn(kind, units, build, key);
    String old = study.from().name();
    Map<String, List<Capture>> bySide = new LinkedHashMap<>();
    for (Capture capture : study.captures()) {
      String side = capture.entry().unit() + "\n" + capture.entry().side();
      bySide.computeIfAbsent(side, s -> new ArrayList<>()).add(capture);
    }
    return bySide.values().stream()
        .map(
            side -> {
              Map<Boolean, List<double[]>> byFixture =
                  side.stream()
                      .collect(
                          Collectors.partitioningBy(
                              c -> c.entry().fixture().equals(old),
                              Collectors.mapping(ChainLab::levels, Collectors.toList())));
              return new Measured(byFixture.get(true), byFixture.get(false));
            })
        .toList();
  }

  private SimulatedStudy drawn(String kind, int units, Build build, long... key) {
    boolean sides = build == Build.BOTH_SIDES;
    SimulationPlan plan =
        harness
            .plan(
                POINTS,
                List.of(SimulatedKind.ofLabel(kind)),
                sides ? units / 2 : units,
                SEATINGS,
                key)
            .withBothSidesShare(sides ? 1 : 0);
    return harness.draw(build == Build.LEAKY ? PlannedStudy.troubled(plan, ALL_LOST) : plan);
  }

  private static double[] levels(Capture capture) {
    double[] levels = new double[capture.response().size()];
    Arrays.setAll(levels, capture.response()::levelDb);
    return levels;
  }

  @Override
  public double[] meanTransferDb(String kind) {
    return transfers
        .computeIfAbsent(
            kind,
            k -> {
              double[] mean = new double[POINTS];
              for (Measured unit : measure(k, MANY, Build.USUAL, MANY)) {
                double[] from = Measured.mean(unit.from(), SEATINGS);
                double[] to = Measured.mean(unit.to(), SEATINGS);
                Arrays.setAll(mean, i -> mean[i] + (to[i] - from[i]) / MANY);
              }
              return mean;
            })
        .clone();
  }
}
