package org.twinrig.workbench.view;

import java.util.List;

/**
 * A mark strip: full bar reliable, half bar caution, hatching unreliable, gap no data.
 *
 * @param words what it shows, for those who do not see it
 * @param bars from low to high frequencies
 * @param ticks of the frequency axis
 */
public record Strip(String words, List<Bar> bars, List<Tick> ticks) {
  /** Width of the drawing. */
  public static final int WIDTH = 720;

  public Strip {
    bars = List.copyOf(bars);
    ticks = List.copyOf(ticks);
  }

  /**
   * A run of bands, or one band.
   *
   * @param shape SVG path data
   * @param style the class of the style sheet: full, half, hatched, gap or chosen
   * @param path where it leads; empty when nowhere
   */
  public record Bar(String shape, String style, String title, String path) {}

  /**
   * A tick.
   *
   * @param x its place
   * @param text its frequency
   */
  public record Tick(String x, String text) {}
}
