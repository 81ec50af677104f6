package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Zone;
import org.twinrig.translation.TranslatedGraph;

/**
 * A stretch of the frequency axis that carries one mark.
 *
 * @param fromHz lower end, Hz
 * @param toHz upper end, Hz
 * @param mark its mark; nothing where nothing was measured
 */
public record Stretch(double fromHz, double toHz, Optional<Mark> mark) {

  /** Refuses an empty stretch. */
  public Stretch {
    if (!(0 < fromHz && fromHz < toHz)) {
      throw new IllegalArgumentException("a stretch must satisfy 0 < from < to");
    }
  }

  /**
   * The zones of a kind; adjacent ones that look alike become one stretch.
   *
   * @param zones rising in frequency, without gaps
   * @return rising in frequency
   */
  public static List<Stretch> ofZones(List<Zone> zones) {
    return joined(
        zones.stream()
            .map(
                z ->
                    new Stretch(
                        z.fromHz(), z.toHz(), z.empty() ? Optional.empty() : Optional.of(z.mark())))
            .toList());
  }

  /**
   * The marks of one re-expressed graph.
   *
   * @param graph the graph
   * @return rising in frequency
   */
  public static List<Stretch> of(TranslatedGraph graph) {
    return joined(
        graph.bands().stream()
            .map(
                b ->
                    new Stretch(
                        b.band().lowerHz(),
                        b.band().upperHz(),
                        b.missing() ? Optional.empty() : Optional.of(b.mark())))
            .toList());
  }

  /**
   * Whether it carries a mark.
   *
   * @param which the mark
   * @return false for another mark, and where nothing was measured
   */
  public boolean is(Mark which) {
    return mark.filter(m -> m == which).isPresent();
  }

  /**
   * Width of the part inside a range.
   *
   * @param lowerHz lower end of the range, Hz
   * @param upperHz upper end of the range, Hz
   * @return octaves; 0 when it lies outside
   */
  public double octavesInside(double lowerHz, double upperHz) {
    double low = Math.max(fromHz, lowerHz);
    double high = Math.min(toHz, upperHz);
    return high > low ? Math.log(high / low) / Math.log(2) : 0;
  }

  private static List<Stretch> joined(List<Stretch> pieces) {
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
