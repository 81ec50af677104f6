package org.twinrig.translation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.regression.BandOutcome;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.Pairing;
import org.twinrig.translation.Continuity.Compared;

/**
 * Finds the old graphs of units that the study captured on the old fixture, by their names, and
 * holds them against those captures, both smoothed alike.
 */
record OldFixture(Translation translation, Chain.Captures captures) {

  /** A graph minus the captures of its unit, and how many seatings it averages. */
  private record Difference(Pairing.OnOldFixture unit, Levels db, double seatings) {}

  /** What they show; nothing where the catalogue has no such graph. */
  Optional<Continuity> compared(List<CatalogueEntry> entries, GraphFiles files) {
    Map<Smoothing, Map<String, Pairing.OnOldFixture>> known = new HashMap<>();
    Map<String, List<Difference>> byUnit = new LinkedHashMap<>();
    for (CatalogueEntry entry : entries) {
      Map<String, Pairing.OnOldFixture> units =
          known.computeIfAbsent(toMeet(entry.statedSmoothing()), this::units);
      Pairing.OnOldFixture unit = units.get(entry.unit());
      if (unit != null && unit.unit().kind().equals(entry.kind())) {
        files
            .graph(entry)
            .value()
            .flatMap(file -> difference(file, unit))
            .ifPresent(d -> byUnit.computeIfAbsent(entry.unit(), u -> new ArrayList<>()).add(d));
      }
    }
    List<Compared> compared = byUnit.values().stream().map(OldFixture::ofUnit).toList();
    return compared.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Continuity.of(
                compared, seatingVariances(), translation.grid(), translation.confidence()));
  }

  private Map<String, Pairing.OnOldFixture> units(Smoothing smoothing) {
    return captures.onOldFixture(smoothing).stream()
        .collect(Collectors.toMap(u -> u.unit().name(), Function.identity()));
  }

  /** What captures are smoothed by to show no more detail than a graph. */
  private Smoothing toMeet(Smoothing graph) {
    boolean finer = graph.fraction() > translation.grid().perOctave();
    return !finer && graph.widerThan(translation.handling().captureSmoothing())
        ? graph
        : Smoothing.NONE;
  }

  private Optional<Difference> difference(GraphFiles.OldGraphFile file, Pairing.OnOldFixture unit) {
    Smoothing ofCaptures = translation.handling().captureSmoothing();
    Response raw =
        ofCaptures.widerThan(file.entry().statedSmoothing())
            ? ofCaptures.apply(file.raw())
            : file.raw();
    double seatings =
        file.entry().averaged().asSeatingsOf(translation.handling().sidesPerSeating());
    return OldGraph.of(raw, translation)
        .pinned()
        .map(graph -> new Difference(unit, minus(graph, unit.mean()), seatings));
  }

  private static Levels minus(Levels graph, Levels captures) {
    double[] db = new double[graph.grid().size()];
    for (int b = 0; b < db.length; b++) {
      db[b] = graph.has(b) && captures.has(b) ? graph.db(b) - captures.db(b) : Double.NaN;
    }
    return Levels.copyOf(graph.grid(), db);
  }

  /** A unit with several graphs counts once, by their mean. */
  private static Compared ofUnit(List<Difference> graphs) {
    Pairing.OnOldFixture unit = graphs.get(0).unit;
    double[] db = new double[graphs.get(0).db.grid().size()];
    double share = 1.0 / unit.seatings();
    for (Difference graph : graphs) {
      share += 1 / graph.seatings / (graphs.size() * graphs.size());
      for (int b = 0; b < db.length; b++) {
        db[b] += (graph.db.has(b) ? graph.db.db(b) : Double.NaN) / graphs.size();
      }
    }
    return new Compared(
        unit.unit().kind(), unit.unit().name(), Levels.copyOf(graphs.get(0).db.grid(), db), share);
  }

  /** Variance between seatings on the old fixture, dB² by band; NaN where it is not known. */
  private Map<String, double[]> seatingVariances() {
    Map<String, double[]> byKind = new HashMap<>();
    for (TransferFunction kind : translation.kinds()) {
      byKind.put(
          kind.kind(),
          kind.bands().stream()
              .mapToDouble(
                  band ->
                      band.outcome() instanceof BandOutcome.Fitted fitted
                          ? fitted.scatter().seatVarianceFrom().orElse(Double.NaN)
                          : Double.NaN)
              .toArray());
    }
    return byKind;
  }
}
