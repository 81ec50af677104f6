package org.twinrig.report.html;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.reliability.MarkedBand;

/** How many octaves of a kind carry each mark. */
final class Octaves {
  private final Map<Swatch, Double> byMark = new EnumMap<>(Swatch.class);

  private Octaves() {}

  static Octaves of(KindOutcome kind) {
    Octaves octaves = new Octaves();
    for (MarkedBand band : kind.transfer().bands()) {
      Swatch mark = band.empty() ? Swatch.GAP : Swatch.of(band.mark());
      octaves.byMark.merge(mark, band.band().octaves(), Double::sum);
    }
    return octaves;
  }

  double of(Swatch mark) {
    return byMark.getOrDefault(mark, 0.0);
  }

  double total() {
    return byMark.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** The table of all kinds. */
  static Sheet sheet(List<KindOutcome> kinds) {
    return new Sheet(
        "Octaves of the frequency axis by mark",
        List.of(
            Sheet.names("Kind"),
            Sheet.numbers("Units"),
            Sheet.numbers("Reliable (octaves)"),
            Sheet.numbers("Caution (octaves)"),
            Sheet.numbers("Unreliable (octaves)"),
            Sheet.numbers("No data (octaves)")),
        kinds.stream().map(Octaves::row).toList());
  }

  private static List<Sheet.Cell> row(KindOutcome kind) {
    Octaves octaves = of(kind);
    return List.of(
        Sheet.text(kind.kind()),
        Sheet.count(kind.paired().units().size()),
        Sheet.hundredths(octaves.of(Swatch.RELIABLE)),
        Sheet.hundredths(octaves.of(Swatch.CAUTION)),
        Sheet.hundredths(octaves.of(Swatch.UNRELIABLE)),
        Sheet.hundredths(octaves.of(Swatch.GAP)));
  }
}
