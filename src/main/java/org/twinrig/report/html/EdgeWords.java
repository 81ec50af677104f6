package org.twinrig.report.html;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;

/** Where the edges of zones may lie, and how often their bands keep their marks. */
final class EdgeWords {
  private EdgeWords() {}

  /** How to read the tables of zones. */
  static String howToRead(int resamples, double confidence) {
    String percent = Numbers.fixed(100 * confidence, 0) + " %";
    return "Other units would have given other edges. To see how far, the marks were decided "
        + resamples
        + " times anew from units drawn at random from the study's own, some counting twice and"
        + " some not at all. The range after an edge holds "
        + percent
        + " of the places it then took; a steady edge stays where it is in as many; an edge that"
        + " fewer than half of the draws have is not a stable one. Least kept is the share of draws"
        + " in which the zone's least certain band keeps its mark. What no draw can change, such as"
        + " the range of an ear simulator, is held, and so are the fitted rules. Two studies both"
        + " err, so a new one agrees with this one less often than these shares say.";
  }

  /** An end of a zone, with the range of the edge that lies there; breaks only before the range. */
  static String place(double hz, List<ZoneEdge> edges) {
    String plain = Numbers.hertz(hz);
    Optional<ZoneEdge> edge = edges.stream().filter(e -> e.edgeHz() == hz).findFirst();
    String text = edge.map(e -> plain + "|(" + where(e) + ")").orElse(plain);
    return text.replace(' ', '\u00a0').replace('|', ' ');
  }

  private static String where(ZoneEdge edge) {
    if (edge.interval().isEmpty()) {
      return "not a stable edge";
    }
    ResonanceWander.Range range = edge.interval().get();
    return range.fromHz() == range.toHz() ? "steady" : range(range);
  }

  /** A range whose unit is said once when both ends have it. */
  private static String range(ResonanceWander.Range range) {
    String from = Numbers.hertz(range.fromHz());
    String to = Numbers.hertz(range.toHz());
    String unit = to.substring(to.indexOf(' '));
    boolean alike = from.substring(from.indexOf(' ')).equals(unit);
    return (alike ? from.substring(0, from.indexOf(' ')) : from) + " to " + to;
  }

  /** The smallest share kept by a band of a zone; nothing where there are no data. */
  static OptionalDouble leastKept(Zone zone, KindOutcome kind) {
    List<MarkedBand> bands = kind.transfer().bands();
    return IntStream.range(0, bands.size())
        .filter(b -> inside(bands.get(b), zone))
        .mapToObj(b -> kind.stability().bands().get(b))
        .flatMap(Optional::stream)
        .mapToDouble(MarkStability.Shares::kept)
        .min();
  }

  /** Rounded down, so that 100 says every draw. */
  static String wholePercent(double share) {
    return Numbers.fixed(Math.floor(100 * share + 1e-9), 0);
  }

  private static boolean inside(MarkedBand band, Zone zone) {
    return band.band().midHz() > zone.fromHz() && band.band().midHz() < zone.toHz();
  }
}
