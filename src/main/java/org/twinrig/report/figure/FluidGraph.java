package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;

/**
 * A graph over a {@link FluidAxis}. It keeps IEC 60263 proportions at any width; type and strokes
 * keep their size, which the plotting library's fixed sheets cannot do: at the width of a telephone
 * their words are too small to read.
 */
final class FluidGraph {
  /** Drawing units; three decades make the width. */
  private static final int UNITS_PER_DECADE = 1000;

  private static final int WIDTH = 3 * UNITS_PER_DECADE;

  private final Panel.Range range;
  private final StringBuilder curves = new StringBuilder();
  private final StringBuilder veils = new StringBuilder();

  FluidGraph(Panel.Range range) {
    this.range = range;
  }

  /** A point of a curve. */
  record Point(double hz, double db) {}

  /** A slice of an area. */
  record Slice(double hz, double lowDb, double highDb) {}

  /** Dims what must not be read. */
  FluidGraph withVeil(List<Stretch> stretches) {
    for (Stretch stretch : stretches) {
      double left = FluidAxis.percent(stretch.fromHz());
      double width = FluidAxis.percent(stretch.toHz()) - left;
      if (stretch.is(Mark.UNRELIABLE) && width > 0) {
        veils.append(
            "<svg x=\"%s%%\" width=\"%s%%\" height=\"100%%\"><use href=\"#veil\"/></svg>"
                .formatted(Numbers.fixed(left, 2), Numbers.fixed(width, 2)));
      }
    }
    return this;
  }

  /** An area; it breaks where a slice is missing. */
  FluidGraph withArea(List<Optional<Slice>> slices) {
    for (List<Slice> piece : pieces(slices)) {
      StringBuilder path = new StringBuilder();
      piece.forEach(s -> to(path, s.hz, s.highDb));
      for (int k = piece.size() - 1; k >= 0; k--) {
        to(path, piece.get(k).hz, piece.get(k).lowDb);
      }
      curves.append("<path d=\"%sz\" fill=\"%s\"/>".formatted(path, SvgText.hex(Ink.BAND)));
    }
    return this;
  }

  /** A curve; it breaks where a point is missing. */
  FluidGraph withCurve(List<Optional<Point>> points, Color colour, Stroke stroke) {
    BasicStroke pen = (BasicStroke) stroke;
    float[] dashes = pen.getDashArray();
    for (List<Point> piece : pieces(points)) {
      StringBuilder path = new StringBuilder();
      piece.forEach(p -> to(path, p.hz, p.db));
      curves.append(
          ("<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s"
                  + " stroke-linejoin=\"round\" vector-effect=\"non-scaling-stroke\"/>")
              .formatted(
                  path,
                  SvgText.hex(colour),
                  Numbers.fixed(pen.getLineWidth(), 1),
                  dashes == null ? "" : " stroke-dasharray=\"5 3\""));
    }
    return this;
  }

  /**
   * The drawing.
   *
   * @param differences whether levels are differences, on an axis as far below 0 as above
   */
  String svg(boolean differences) {
    int height = height();
    return ("<svg class=\"graph\" width=\"100%%\" style=\"aspect-ratio:%1$d/%2$d\""
            + " aria-hidden=\"true\"><svg viewBox=\"0 0 %1$d %2$d\" width=\"100%%\" height=\"100%%\""
            + " preserveAspectRatio=\"none\">%3$s%4$s</svg>%5$s%6$s</svg>")
        .formatted(WIDTH, height, grid(), curves, veils, labels(differences));
  }

  private int height() {
    double decades = (range.toDb() - range.fromDb()) / range.dbPerDecade();
    return (int) Math.round(decades * UNITS_PER_DECADE);
  }

  private String grid() {
    StringBuilder faint = new StringBuilder();
    for (EverydayRegion region : EverydayRegion.values()) {
      if (!region.first()) {
        faint.append("M%d 0V%d".formatted(x(region.fromHz()), height()));
      }
    }
    for (double db = range.fromDb(); db <= range.toDb() + 1e-9; db += range.stepDb()) {
      faint.append("M0 %dH%d".formatted(y(db), WIDTH));
    }
    String lines = line(faint.toString(), Ink.GRID);
    boolean zero = range.fromDb() < 0 && range.toDb() > 0;
    return zero ? lines + line("M0 %dH%d".formatted(y(0), WIDTH), Ink.AXIS) : lines;
  }

  private static String line(String path, Color colour) {
    return ("<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"1\""
            + " vector-effect=\"non-scaling-stroke\"/>")
        .formatted(path, SvgText.hex(colour));
  }

  /** The ends and 0, or every step; the highest stands below its line: it would leave the sheet. */
  private String labels(boolean differences) {
    StringBuilder labels = new StringBuilder();
    double step = differences ? range.toDb() : range.stepDb();
    for (double db = range.fromDb(); db <= range.toDb() + 1e-9; db += step) {
      boolean top = db + step > range.toDb() + 1e-9;
      String number =
          (differences && db > 0 ? "+" : "") + Numbers.fixed(db, 0).replace('-', '\u2212');
      // The halo keeps a curve that begins at the edge from crossing the number.
      labels.append(
          ("<text x=\"2\" y=\"%s%%\" dy=\"%d\" font-family=\"sans-serif\" font-size=\"11\""
                  + " fill=\"%s\" stroke=\"%s\" stroke-width=\"3\" paint-order=\"stroke\">%s</text>")
              .formatted(
                  Numbers.fixed(100.0 * y(db) / height(), 1),
                  top ? 12 : -3,
                  SvgText.hex(Ink.FAINT_TEXT),
                  SvgText.hex(Ink.PAPER),
                  top ? number + " dB" : number));
    }
    return labels.toString();
  }

  private void to(StringBuilder path, double hz, double db) {
    path.append(path.isEmpty() ? 'M' : 'L').append(x(hz)).append(' ').append(y(db));
  }

  private static long x(double hz) {
    return Math.round(FluidAxis.percent(hz) / 100 * WIDTH);
  }

  private long y(double db) {
    return Math.round((range.toDb() - db) / range.dbPerDecade() * UNITS_PER_DECADE);
  }

  private static <T> List<List<T>> pieces(List<Optional<T>> all) {
    List<List<T>> pieces = new ArrayList<>();
    boolean open = false;
    for (Optional<T> one : all) {
      if (one.isPresent() && !open) {
        pieces.add(new ArrayList<>());
      }
      open = one.isPresent();
      one.ifPresent(t -> pieces.get(pieces.size() - 1).add(t));
    }
    return pieces;
  }
}
