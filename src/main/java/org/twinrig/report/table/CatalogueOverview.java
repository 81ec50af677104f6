package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Zone;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * A catalogue seen from above: by kind and decision, by the zones of the study, and which units are
 * worth measuring on both fixtures.
 *
 * @param decisions one row per kind and decision that occurs
 * @param zones one row per kind and zone of its transfer
 * @param choices units worth measuring: kinds with too few units before the others, and these by
 *     how much their first unit would help; within a kind in the order they were chosen
 */
public record CatalogueOverview(
    List<Decided> decisions, List<ZoneShare> zones, List<UnitsToMeasure.Choice> choices) {
  private static final int MOST_CHOICES = 10;

  public CatalogueOverview {
    decisions = List.copyOf(decisions);
    zones = List.copyOf(zones);
    choices = List.copyOf(choices);
  }

  /**
   * The graphs of one kind with one decision, and their mean octaves by mark: reliable, caution,
   * unreliable, missing.
   */
  public record Decided(String kind, Decision decision, int graphs, List<Double> octaves) {}

  /**
   * What became of a zone of the study's transfer over the graphs of its kind: shares of bands
   * times graphs, reliable, caution, unreliable, missing.
   */
  public record ZoneShare(String kind, Zone zone, int graphs, List<Double> shares) {}

  /** Looks at what became of a catalogue by the translation that was applied. */
  public static CatalogueOverview of(Translation translation, CatalogueRun.Outcome outcome) {
    Map<String, List<CatalogueRun.Line>> byKind = new LinkedHashMap<>();
    outcome
        .lines()
        .forEach(l -> byKind.computeIfAbsent(l.entry().kind(), k -> new ArrayList<>()).add(l));
    List<ZoneShare> zones = new ArrayList<>();
    List<List<UnitsToMeasure.Choice>> choices = new ArrayList<>();
    for (TransferFunction kind : translation.kinds()) {
      List<CatalogueRun.Line> lines = byKind.getOrDefault(kind.kind(), List.of());
      if (!lines.isEmpty()) {
        Zone.of(kind.bands()).forEach(z -> zones.add(share(kind, z, lines)));
        choices.add(choices(kind, lines, translation));
      }
    }
    Set<String> tooFew =
        translation.kindsWithTooFewUnits().stream()
            .map(TransferFunction::kind)
            .collect(Collectors.toSet());
    return new CatalogueOverview(
        decided(outcome),
        zones,
        choices.stream()
            .filter(c -> !c.isEmpty())
            .sorted(
                Comparator.comparing(
                        (List<UnitsToMeasure.Choice> c) -> !tooFew.contains(c.get(0).kind()))
                    .thenComparingDouble(c -> c.get(0).afterDb() - c.get(0).beforeDb()))
            .flatMap(List::stream)
            .toList());
  }

  private static List<UnitsToMeasure.Choice> choices(
      TransferFunction kind, List<CatalogueRun.Line> lines, Translation translation) {
    return UnitsToMeasure.of(
        kind,
        lines.stream().map(l -> new UnitsToMeasure.Graph(l.entry().unit(), l.sketch())).toList(),
        translation.handling().publishing(),
        MOST_CHOICES);
  }

  private static ZoneShare share(TransferFunction kind, Zone zone, List<CatalogueRun.Line> lines) {
    BandGrid grid = kind.grid();
    Map<Optional<Mark>, Long> counts =
        IntStream.range(0, grid.size())
            .filter(b -> zone.fromHz() < grid.band(b).midHz() && grid.band(b).midHz() < zone.toHz())
            .boxed()
            .flatMap(b -> lines.stream().map(l -> l.marks().at(b)))
            .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    double cells = counts.values().stream().mapToLong(n -> n).sum();
    List<Double> shares =
        Stream.concat(Stream.of(Mark.values()).map(Optional::of), Stream.of(Optional.<Mark>empty()))
            .map(mark -> counts.getOrDefault(mark, 0L) / cells)
            .toList();
    return new ZoneShare(kind.kind(), zone, lines.size(), shares);
  }

  private static List<Decided> decided(CatalogueRun.Outcome outcome) {
    Comparator<CatalogueRun.Line> byKind = Comparator.comparing(l -> l.entry().kind());
    return outcome.lines().stream()
        .sorted(byKind.thenComparing(l -> l.decision().word()))
        .collect(
            Collectors.groupingBy(
                l -> List.of(l.entry().kind(), l.decision()),
                LinkedHashMap::new,
                Collectors.toList()))
        .values()
        .stream()
        .map(g -> new Decided(g.get(0).entry().kind(), g.get(0).decision(), g.size(), octaves(g)))
        .toList();
  }

  private static List<Double> octaves(List<CatalogueRun.Line> lines) {
    ToDoubleFunction<ToDoubleFunction<CatalogueRun.Octaves>> mean =
        by ->
            lines.stream().mapToDouble(l -> by.applyAsDouble(l.octaves())).average().orElseThrow();
    return List.of(
        mean.applyAsDouble(CatalogueRun.Octaves::reliable),
        mean.applyAsDouble(CatalogueRun.Octaves::caution),
        mean.applyAsDouble(CatalogueRun.Octaves::unreliable),
        mean.applyAsDouble(CatalogueRun.Octaves::missing));
  }

  /** Writes overview.csv, overview-zones.csv and units-to-measure.csv. */
  public void write(Path folder) throws IOException {
    CatalogueResults.OVERVIEW.write(folder, this);
    CatalogueResults.OVERVIEW_ZONES.write(folder, this);
    CatalogueResults.UNITS_TO_MEASURE.write(folder, this);
  }
}
