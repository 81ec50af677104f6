package org.twinrig.report.figure;

import java.util.List;
import org.twinrig.internal.Numbers;

/**
 * A frequency axis, 20 Hz to 20 kHz, that is as wide as the page: places are shares of the width,
 * type and strokes keep their size. So it can be read on a telephone and on paper alike.
 */
public final class FluidAxis {
  private static final double FROM_HZ = 20;
  private static final double DECADES = 3;
  private static final List<Tick> ALL =
      List.of(
          new Tick(20, "20 Hz"),
          new Tick(50, "50"),
          new Tick(100, "100"),
          new Tick(200, "200"),
          new Tick(500, "500"),
          new Tick(1000, "1k"),
          new Tick(2000, "2k"),
          new Tick(5000, "5k"),
          new Tick(10_000, "10k"),
          new Tick(20_000, "20k"));
  private static final List<Tick> FEW = List.of(ALL.get(0), ALL.get(2), ALL.get(5), ALL.get(8));

  private FluidAxis() {}

  private record Tick(double hz, String label) {}

  /** Where a frequency lies on the axis: 0 to 100; ends of the axis stand for what is beyond. */
  static double percent(double hz) {
    double share = Math.log10(hz / FROM_HZ) / DECADES;
    return 100 * Math.max(0, Math.min(1, share));
  }

  static String place(double hz) {
    return Numbers.fixed(percent(hz), 2) + "%";
  }

  /**
   * The words for the regions above their part of the axis, and the frequencies.
   *
   * @return an inline SVG of fixed height
   */
  public static String withRegions() {
    StringBuilder svg = new StringBuilder(open(40));
    for (EverydayRegion region : EverydayRegion.values()) {
      double middle = Math.sqrt(region.fromHz() * region.toHz());
      svg.append(text(middle, 13, "middle", region.word(), 13));
      svg.append(
          "<line x1=\"%s\" x2=\"%s\" y1=\"20\" y2=\"20\" stroke=\"%s\" stroke-width=\"1.5\"/>"
              .formatted(
                  Numbers.fixed(percent(region.fromHz()) + (region.first() ? 0 : 0.6), 2) + "%",
                  Numbers.fixed(percent(region.toHz()) - (region.last() ? 0 : 0.6), 2) + "%",
                  SvgText.hex(Ink.AXIS)));
    }
    ALL.forEach(t -> svg.append(tick(t, 36)));
    return svg.append("</svg>").toString();
  }

  /**
   * Four frequencies, for a narrow graph.
   *
   * @return an inline SVG of fixed height
   */
  public static String narrow() {
    return small(FEW);
  }

  /**
   * All frequencies.
   *
   * @return an inline SVG of fixed height
   */
  public static String wide() {
    return small(ALL);
  }

  private static String small(List<Tick> ticks) {
    StringBuilder svg = new StringBuilder(open(16));
    ticks.forEach(t -> svg.append(tick(t, 12)));
    return svg.append("</svg>").toString();
  }

  private static String open(int height) {
    return "<svg class=\"axis\" width=\"100%%\" height=\"%d\" aria-hidden=\"true\">"
        .formatted(height);
  }

  private static String tick(Tick tick, int y) {
    double at = percent(tick.hz);
    String anchor = at == 0 ? "start" : at == 100 ? "end" : "middle";
    return text(tick.hz, y, anchor, tick.label, 11);
  }

  private static String text(double hz, int y, String anchor, String words, int size) {
    return ("<text x=\"%s\" y=\"%d\" text-anchor=\"%s\" font-family=\"sans-serif\""
            + " font-size=\"%d\" fill=\"%s\">%s</text>")
        .formatted(place(hz), y, anchor, size, SvgText.hex(Ink.TEXT), words);
  }
}
