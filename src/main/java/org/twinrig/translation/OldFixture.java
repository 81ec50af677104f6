package org.twinrig.translation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.Pairing;
import org.twinrig.translation.Continuity.Compared;

/**
 * Finds the old graphs of units that the study captured on the old fixture, by their names, and
 * holds them against those captures, both smoothed alike. A graph that is one of the captures says
 * nothing and does not count; nor do graphs that cannot be made alike: of the best seal, of an
 * unknown number of seatings averaged in power, smoothed otherwise.
 */
record OldFixture(Translation translation, Chain.Captures captures) {

  /** What they show; nothing where the catalogue has no such graph. */
  Optional<Continuity> compared(List<CatalogueEntry> entries, GraphFiles files) {
    Map<Smoothing, Map<String, Pairing.OnOldFixture>> known = new HashMap<>();
    Map<String, List<Compared>> byUnit = new LinkedHashMap<>();
    for (CatalogueEntry entry : entries) {
      Map<String, Pairing.OnOldFixture> units =
          known.computeIfAbsent(toMeet(entry.statedSmoothing()), this::units);
      Pairing.OnOldFixture unit = units.get(entry.unit());
      if (alike(entry) && unit != null && unit.unit().kind().equals(entry.kind())) {
        files
            .graph(entry)
            .value()
            .filter(file -> unit.files().stream().noneMatch(file.sha256()::startsWith))
            .flatMap(file -> difference(file, unit))
            .ifPresent(d -> byUnit.computeIfAbsent(entry.unit(), u -> new ArrayList<>()).add(d));
      }
    }
    List<Compared> compared = byUnit.values().stream().map(Compared::mean).toList();
    return compared.isEmpty()
        ? Optional.empty()
        : Optional.of(Continuity.of(compared, translation));
  }

  /** What differs by the way of smoothing or averaging says nothing of the fixture. */
  private boolean alike(CatalogueEntry entry) {
    CatalogueEntry.Averaged averaged = entry.averaged();
    return !entry.statedSmoothing().contradicts(translation.handling().captureSmoothing())
        && switch (averaged.how()) {
          case DB -> true;
          case POWER -> averaged.seatings().isPresent();
          case BEST_SEAL -> false;
        };
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

  private Optional<Compared> difference(GraphFiles.OldGraphFile file, Pairing.OnOldFixture unit) {
    Smoothing ofCaptures = translation.handling().captureSmoothing();
    Response raw =
        ofCaptures.widerThan(file.entry().statedSmoothing())
            ? ofCaptures.apply(file.raw())
            : file.raw();
    double seatings =
        file.entry().averaged().asSeatingsOf(translation.handling().sidesPerSeating());
    return OldGraph.of(raw, translation)
        .meanOfDecibels(file.entry(), translation)
        .pinned()
        .map(graph -> Compared.of(unit, graph, seatings));
  }
}
