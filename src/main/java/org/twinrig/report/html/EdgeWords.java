package org.twinrig.report.html;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
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

  /** What a zone is, and what its table says. */
  static String lead() {
    return "A zone is a run of bands with the same mark. A run narrower than 1/6 octave belongs to the"
        + " worse zone beside it; the strips under the figures show every band by itself and may"
        + " differ by such a run. Under the start of a zone stands the range in which that edge may"
        + " lie. Kept (%) says how often bands keep their mark when the study is redrawn from its"
        + " own units: the least in the zone, and the mean over its bands.";
  }

  /** Where ranges and shares come from, and how far they hold. */
  static String howToRead(int resamples, double confidence) {
    return "Other units would have given other edges. To see how far, the marks were decided "
        + resamples
        + " times"
        + " anew from units drawn at random from the study's own, some counting more than once"
        + " and some not at all. The range under the start of a zone holds "
        + Numbers.fixed(100 * confidence, 0)
        + " % of the places"
        + " the edge then took, and reaches to the next edge where too many draws lose the zone;"
        + " a steady edge has a range of no width; an edge that fewer than half of the draws have"
        + " is not a stable one. What no draw can change, such as"
        + " the range of an ear simulator or too few units, is held, and so are the fitted rules."
        + " With few units these ranges come out short, and shorter where the way of predicting was"
        + " chosen among several. Two studies both err, so a new one agrees with this one less often"
        + " than the shares say.";
  }

  /** The start of a zone, with the range of the edge there; breaks only before the range. */
  static String place(double hz, List<ZoneEdge> edges) {
    String plain = Numbers.hertz(hz);
    Optional<ZoneEdge> edge = edges.stream().filter(e -> e.edgeHz() == hz).findFirst();
    return edge.map(e -> twoLines(plain, where(e))).orElse(twoLines(plain, ""));
  }

  /** Two texts of which each stays on one line. */
  private static String twoLines(String first, String second) {
    String below = second.isEmpty() ? "" : " (" + unbroken(second) + ")";
    return unbroken(first) + below;
  }

  private static String unbroken(String text) {
    return text.replace(' ', '\u00a0');
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

  /** The smallest and the mean share kept by the bands of a zone; empty without data. */
  static Sheet.Cell kept(Zone zone, KindOutcome kind) {
    List<MarkedBand> bands = kind.transfer().bands();
    DoubleSummaryStatistics kept =
        IntStream.range(0, bands.size())
            .filter(b -> inside(bands.get(b), zone))
            .mapToObj(b -> kind.stability().bands().get(b))
            .flatMap(Optional::stream)
            .mapToDouble(MarkStability.Shares::kept)
            .summaryStatistics();
    if (kept.getCount() == 0) {
      return Sheet.ordered("", -1);
    }
    String mean = "mean " + wholePercent(kept.getAverage());
    return Sheet.ordered(twoLines(wholePercent(kept.getMin()), mean), kept.getMin());
  }

  private static boolean inside(MarkedBand band, Zone zone) {
    return band.band().midHz() > zone.fromHz() && band.band().midHz() < zone.toHz();
  }

  /** Rounded down, so that 100 says every draw. */
  private static String wholePercent(double share) {
    return Numbers.fixed(Math.floor(100 * share + 1e-9), 0);
  }
}
