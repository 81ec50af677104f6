package org.twinrig.report.figure;

import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;

/**
 * The mark strip of {@link MarkStrip} on a {@link FluidAxis}: full bar, half bar, hatching, gap.
 */
public final class FluidStrip {
  private static final int HATCH_WIDTH = 1200;
  private static final int HATCH_STEP = 6;
  private static final int TALL_STEP = 14;

  /** No graph on a page is taller than this, in pixels. */
  private static final int TALL = 700;

  private FluidStrip() {}

  /**
   * The hatching that all strips of a page refer to; stands once on the page, before them.
   *
   * @return an SVG that takes no room
   */
  public static String hatching() {
    return "<svg width=\"0\" height=\"0\" aria-hidden=\"true\" style=\"position:absolute\"><defs>"
        + hatch("hatch", 20, HATCH_STEP, Ink.MARK, 1.3)
        + hatch("veil", TALL, TALL_STEP, Ink.AXIS, 0.7)
        + "</defs></svg>";
  }

  private static String hatch(
      String id, int height, int step, java.awt.Color colour, double width) {
    StringBuilder path = new StringBuilder();
    for (int x = -height; x < HATCH_WIDTH; x += step) {
      path.append('M').append(x).append(' ').append(height);
      path.append('l').append(height).append('-').append(height);
    }
    return "<path id=\"%s\" d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"/>"
        .formatted(id, path, SvgText.hex(colour), Numbers.fixed(width, 1));
  }

  /**
   * A strip.
   *
   * @param stretches rising in frequency
   * @param height in pixels, at most 20
   * @return an inline SVG; the words stand beside it
   */
  public static String svg(List<Stretch> stretches, int height) {
    StringBuilder svg = new StringBuilder();
    svg.append(
        "<svg class=\"strip\" width=\"100%%\" height=\"%d\" aria-hidden=\"true\">"
            .formatted(height));
    for (Stretch stretch : stretches) {
      double left = FluidAxis.percent(stretch.fromHz());
      double width = FluidAxis.percent(stretch.toHz()) - left;
      if (width > 0 && stretch.mark().isPresent()) {
        String place =
            "x=\"%s%%\" width=\"%s%%\"".formatted(Numbers.fixed(left, 2), Numbers.fixed(width, 2));
        svg.append(bar(stretch.mark().get(), place, height));
      }
    }
    return svg.append("</svg>").toString();
  }

  private static String bar(Mark mark, String place, int height) {
    String ink = SvgText.hex(Ink.MARK);
    return switch (mark) {
      case RELIABLE -> "<rect %s height=\"%d\" fill=\"%s\"/>".formatted(place, height, ink);
      case CAUTION ->
          "<rect %s y=\"%d\" height=\"%d\" fill=\"%s\"/>"
              .formatted(place, height - height / 2, height / 2, ink);
      case UNRELIABLE ->
          ("<svg %s height=\"%d\"><use href=\"#hatch\" y=\"%d\"/><rect width=\"100%%\""
                  + " height=\"100%%\" fill=\"none\" stroke=\"%s\" stroke-width=\"2\"/></svg>")
              .formatted(place, height, height - 20, ink);
    };
  }
}
