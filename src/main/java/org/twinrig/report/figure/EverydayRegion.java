package org.twinrig.report.figure;

import java.util.Locale;
import org.twinrig.report.figure.Drawing.Lie;

/**
 * The frequency axis in everyday words. Where bass ends and treble begins is common practice, no
 * source; the page shows the borders.
 */
public enum EverydayRegion {
  BASS(20, 250),
  MIDDLE(250, 4000),
  TREBLE(4000, 20_000);

  private final double fromHz;
  private final double toHz;

  EverydayRegion(double fromHz, double toHz) {
    this.fromHz = fromHz;
    this.toHz = toHz;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public double fromHz() {
    return fromHz;
  }

  public double toHz() {
    return toHz;
  }

  /** How many octaves of a stretch lie in the region; the outermost ones have no outer end. */
  public double octavesOf(Stretch stretch) {
    return stretch.octavesInside(
        this == BASS ? Math.min(fromHz, stretch.fromHz()) : fromHz,
        this == TREBLE ? Math.max(toHz, stretch.toHz()) : toHz);
  }

  /** The frequency axis with the words above their part of it, as an inline SVG. */
  public static String axis() {
    return SvgText.wideAndNarrow("axis", MarkStrip.ON_A_PAGE, EverydayRegion::paintAxis);
  }

  private static int paintAxis(Drawing d, int width) {
    Axis axis = Axis.fewFrequencies(20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000);
    for (EverydayRegion region : values()) {
      double left = 1 + (width - 2) * axis.share(region.fromHz);
      double right = 1 + (width - 2) * axis.share(region.toHz);
      d.text(region.word(), (left + right) / 2, 13, Lie.MIDDLE, Ink.NOTE);
      d.line(left + 2, 20, right - 2, 20, Ink.FRAME);
    }
    for (Axis.Tick tick : axis.ticks()) {
      double share = axis.share(tick.value());
      Lie lie = share == 0 ? Lie.START : share == 1 ? Lie.END : Lie.MIDDLE;
      d.text(tick.label(), 1 + (width - 2) * share, 36, lie, Ink.NOTE);
    }
    return 40;
  }
}
