package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;
import org.twinrig.study.DeclaredZone;

/** Why a zone has its mark, in plain words. */
final class ZoneSentence {
  private ZoneSentence() {}

  /**
   * The reasons of a zone.
   *
   * @param zone a run of bands with the same mark
   * @param declared what the lab declared; those that reach into the zone are named
   * @return clauses joined by semicolons
   */
  static String of(Zone zone, List<DeclaredZone> declared) {
    if (zone.reasons().isEmpty()) {
      return "the prediction interval is within the reliable tolerance";
    }
    List<String> clauses = new ArrayList<>();
    for (Reason reason : zone.reasons()) {
      clauses.add(
          reason == Reason.DECLARED_ZONE
              ? "the lab declared: " + names(zone, declared)
              : reason.plain());
    }
    return String.join("; ", clauses);
  }

  private static String names(Zone zone, List<DeclaredZone> declared) {
    List<String> names =
        declared.stream()
            .filter(d -> d.fromHz() < zone.toHz() && d.toHz() > zone.fromHz())
            .map(DeclaredZone::name)
            .toList();
    return String.join(", ", names);
  }

  /** The zones of one kind. */
  static Sheet sheet(KindOutcome kind, List<DeclaredZone> declared) {
    return new Sheet(
        "Zones of the kind " + kind.kind() + ": runs of bands with the same mark",
        List.of(
            Sheet.ranges("From (range)"),
            Sheet.numbers("To"),
            Sheet.numbers("Octaves"),
            Sheet.names("Mark"),
            Sheet.ranges("Kept (%)"),
            Sheet.words("Why")),
        kind.zones().stream().map(z -> row(z, kind, declared)).toList());
  }

  private static List<Sheet.Cell> row(Zone zone, KindOutcome kind, List<DeclaredZone> declared) {
    List<ZoneEdge> edges = kind.stability().edges();
    return List.of(
        Sheet.ordered(EdgeWords.place(zone.fromHz(), edges), zone.fromHz()),
        Sheet.hertz(zone.toHz()),
        Sheet.hundredths(zone.octaves()),
        Sheet.marked(Swatch.of(zone)),
        EdgeWords.kept(zone, kind),
        Sheet.text(of(zone, declared)));
  }
}
