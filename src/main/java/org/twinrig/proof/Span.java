package org.twinrig.proof;

import java.util.List;
import org.twinrig.evidence.Region;

/**
 * What part of the axis a row is about.
 *
 * @param word as tables write it
 * @param fromHz lower end, Hz
 * @param toHz upper end, Hz
 */
public record Span(String word, double fromHz, double toHz) {
  private static final double LOWEST_HZ = Region.BASS.fromHz();
  private static final double HIGHEST_HZ = Region.TOP.toHz();

  /** All bands, each counting once: what the stated level is averaged over. */
  public static final Span ALL_BANDS = new Span("all bands", LOWEST_HZ, HIGHEST_HZ);

  /** The plain mean of the regions' figures, however many bands they have. */
  public static final Span MEAN_OF_REGIONS = new Span("mean of regions", LOWEST_HZ, HIGHEST_HZ);

  /**
   * One region.
   *
   * @param region the region
   * @return its span
   */
  public static Span of(Region region) {
    return new Span(region.word(), region.fromHz(), region.toHz());
  }

  /**
   * Whether this is one region rather than a summary.
   *
   * @return true for a region
   */
  public boolean isRegion() {
    return List.of(Region.values()).stream().anyMatch(r -> r.word().equals(word));
  }
}
