package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.Band;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Zone;
import org.twinrig.translation.TranslatedGraph;

/** A stretch of the frequency axis that carries one mark; none where nothing was measured. */
public record Stretch(double fromHz, double toHz, Optional<Mark> mark) {

  public Stretch {
    if (!(0 < fromHz && fromHz < toHz)) {
      throw new IllegalArgumentException("a stretch must satisfy 0 < from < to");
    }
  }

  /** The zones of a kind, rising without gaps; adjacent ones that look alike become one. */
  public static List<Stretch> ofZones(List<Zone> zones) {
    return joined(zones.stream().map(z -> of(z.fromHz(), z.toHz(), z.mark(), z.empty())).toList());
  }

  /** The marks of one re-expressed graph, rising in frequency. */
  public static List<Stretch> of(TranslatedGraph graph) {
    return joined(graph.bands().stream().map(b -> of(b.band(), b.mark(), b.missing())).toList());
  }

  /** The marks of bands, rising in frequency; adjacent ones that look alike become one. */
  public static List<Stretch> ofBands(List<MarkedBand> bands) {
    return joined(bands.stream().map(b -> of(b.band(), b.mark(), b.empty())).toList());
  }

  static Stretch of(Band band, Mark mark, boolean empty) {
    return of(band.lowerHz(), band.upperHz(), mark, empty);
  }

  private static Stretch of(double fromHz, double toHz, Mark mark, boolean empty) {
    return new Stretch(fromHz, toHz, empty ? Optional.empty() : Optional.of(mark));
  }

  /** Whether it carries a mark; false where nothing was measured. */
  public boolean is(Mark which) {
    return mark.filter(m -> m == which).isPresent();
  }

  /** Width of the part inside a range, in octaves; 0 when it lies outside. */
  public double octavesInside(double lowerHz, double upperHz) {
    double low = Math.max(fromHz, lowerHz);
    double high = Math.min(toHz, upperHz);
    return high > low ? Math.log(high / low) / Math.log(2) : 0;
  }

  static List<Stretch> joined(List<Stretch> pieces) {
    List<Stretch> joined = new ArrayList<>();
    for (Stretch piece : pieces) {
      int last = joined.size() - 1;
      if (last >= 0 && joined.get(last).mark.equals(piece.mark)) {
        joined.set(last, new Stretch(joined.get(last).fromHz, piece.toHz, piece.mark));
      } else {
        joined.add(piece);
      }
    }
    return List.copyOf(joined);
  }
}
