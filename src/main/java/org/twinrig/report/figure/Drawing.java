package org.twinrig.report.figure;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.intermediate.commands.AffineTransformCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.Command;
import de.erichseifert.vectorgraphics2d.intermediate.commands.DrawShapeCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.FillShapeCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetClipCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetColorCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetStrokeCommand;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Lines, fills and words in the pixels of a sheet, drawn once and then written to every medium. */
final class Drawing {
  private final List<Item> items = new ArrayList<>();

  sealed interface Item {}

  /** A line, cut to a rectangle if there is one. */
  record Line(Path2D path, Ink.Pen pen, Optional<Rectangle2D> clip) implements Item {}

  /** A filled shape, cut to a rectangle if there is one. */
  record Fill(Shape shape, Color colour, Optional<Rectangle2D> clip) implements Item {}

  /** Words at a point on their base line. */
  record Text(String words, double x, double y, Lie lie, Ink.Type type) implements Item {}

  /** How words lie to their point: they start at it, it is their middle, or they end at it. */
  enum Lie {
    START(0),
    MIDDLE(0.5),
    END(1);

    /** How much of the words lies before the point. */
    final double share;

    Lie(double share) {
      this.share = share;
    }
  }

  List<Item> items() {
    return items;
  }

  void paper(int width, int height) {
    items.add(0, new Fill(new Rectangle(width, height), Ink.PAPER, Optional.empty()));
  }

  void fill(Shape shape, Color colour) {
    items.add(new Fill(shape, colour, Optional.empty()));
  }

  void draw(Shape shape, Ink.Pen pen) {
    draw(shape, pen, Optional.empty());
  }

  void line(double fromX, double fromY, double toX, double toY, Ink.Pen pen) {
    draw(new Line2D.Double(fromX, fromY, toX, toY), pen);
  }

  void text(String words, double x, double y, Lie lie, Ink.Type type) {
    if (!words.isEmpty()) {
      items.add(new Text(words, x, y, lie, type));
    }
  }

  /** Lines of one pen that follow on each other become one path: a dash pattern runs through. */
  private void draw(Shape shape, Ink.Pen pen, Optional<Rectangle2D> clip) {
    int last = items.size() - 1;
    if (last >= 0
        && items.get(last) instanceof Line before
        && before.pen.equals(pen)
        && before.clip.equals(clip)) {
      if (shape instanceof Line2D piece && piece.getP1().equals(before.path.getCurrentPoint())) {
        before.path.lineTo(piece.getX2(), piece.getY2());
      } else {
        before.path.append(shape, false);
      }
    } else {
      items.add(new Line(new Path2D.Double(shape), pen, clip));
    }
  }

  /**
   * Takes over what the plotting library paints from its origin, which is lines and fills.
   *
   * @param clipped whether what reaches out of the library's frame is cut
   */
  void painted(Consumer<Graphics2D> painter, int left, int top, boolean clipped) {
    VectorGraphics2D g = new VectorGraphics2D();
    g.translate(left, top);
    painter.accept(g);
    AffineTransform place = new AffineTransform();
    Optional<Rectangle2D> clip = Optional.empty();
    Color colour = Color.BLACK;
    BasicStroke stroke = Ink.THIN;
    for (Command<?> command : g.getCommands()) {
      if (command instanceof DrawShapeCommand draw && colour.getAlpha() > 0) {
        draw(placed(draw.getValue(), place), new Ink.Pen(colour, stroke), clip);
      } else if (command instanceof FillShapeCommand fill && colour.getAlpha() > 0) {
        items.add(new Fill(placed(fill.getValue(), place), colour, clip));
      } else if (command instanceof AffineTransformCommand move) {
        place.concatenate(move.getValue());
      } else if (command instanceof SetColorCommand set) {
        colour = set.getValue();
      } else if (command instanceof SetStrokeCommand set) {
        stroke = (BasicStroke) set.getValue();
      } else if (command instanceof SetClipCommand set && clipped) {
        clip = Optional.ofNullable(set.getValue()).map(s -> placed(s, place).getBounds2D());
      }
    }
  }

  private static Shape placed(Shape shape, AffineTransform place) {
    return shape instanceof Line2D line
        ? new Line2D.Double(
            place.transform(line.getP1(), null), place.transform(line.getP2(), null))
        : place.createTransformedShape(shape);
  }
}
