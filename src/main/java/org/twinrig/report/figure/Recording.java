package org.twinrig.report.figure;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.intermediate.commands.AffineTransformCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.Command;
import de.erichseifert.vectorgraphics2d.intermediate.commands.DrawShapeCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.DrawStringCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.FillShapeCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetClipCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetColorCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetFontCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetHintCommand;
import de.erichseifert.vectorgraphics2d.intermediate.commands.SetStrokeCommand;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A drawing as a list of strokes, fills and words in the coordinates of its sheet: drawn once, then
 * written to every medium.
 *
 * <p>The plotting library draws a curve segment by segment. Here segments that follow on each other
 * become one path again, so that a dash pattern runs through and a page stays small.
 */
final class Recording {
  private final List<Item> items = new ArrayList<>();
  private AffineTransform place = new AffineTransform();
  private Optional<Rectangle2D> clip = Optional.empty();
  private Color colour = Color.BLACK;
  private BasicStroke stroke = new BasicStroke();
  private Font font = Ink.NOTE;
  private Words.Lie lie = Words.Lie.START;

  private Recording() {}

  /** One thing on the sheet. */
  sealed interface Item {}

  /** A line of one colour, cut to a rectangle if there is one. */
  record Line(Path2D path, Color colour, BasicStroke stroke, Optional<Rectangle2D> clip)
      implements Item {}

  /** A filled shape, cut to a rectangle if there is one. */
  record Fill(Shape shape, Color colour, Optional<Rectangle2D> clip) implements Item {}

  /** Words at a point on their base line. */
  record Text(String words, Point2D at, Words.Lie lie, Font font, Color colour) implements Item {}

  /**
   * What a painter draws.
   *
   * @param painter draws on the sheet; may move it, but not turn or scale it
   * @return in drawing order
   */
  static List<Item> of(Consumer<Graphics2D> painter) {
    VectorGraphics2D g = new VectorGraphics2D();
    painter.accept(g);
    Recording recording = new Recording();
    for (Command<?> command : g.getCommands()) {
      recording.take(command);
    }
    return recording.items.stream().map(Recording::trimmed).toList();
  }

  private void take(Command<?> command) {
    if (command instanceof DrawShapeCommand draw) {
      line(draw.getValue());
    } else if (command instanceof FillShapeCommand fill) {
      fill(fill.getValue());
    } else if (command instanceof DrawStringCommand words) {
      Point2D at = place.transform(new Point2D.Double(words.getX(), words.getY()), null);
      items.add(new Text(words.getValue(), at, lie, font, colour));
    } else {
      takeState(command);
    }
  }

  private void takeState(Command<?> command) {
    if (command instanceof AffineTransformCommand move) {
      place = new AffineTransform(place);
      place.concatenate(move.getValue());
    } else if (command instanceof SetColorCommand set) {
      colour = set.getValue();
    } else if (command instanceof SetStrokeCommand set) {
      stroke = (BasicStroke) set.getValue();
    } else if (command instanceof SetFontCommand set) {
      font = set.getValue();
    } else if (command instanceof SetClipCommand set) {
      clip = Optional.ofNullable(set.getValue()).map(s -> placed(s).getBounds2D());
    } else if (command instanceof SetHintCommand set && set.getKey() == Words.LIE) {
      lie = (Words.Lie) set.getValue();
    }
  }

  private Shape placed(Shape shape) {
    return place.createTransformedShape(shape);
  }

  private void fill(Shape shape) {
    if (colour.getAlpha() > 0) {
      items.add(new Fill(placed(shape), colour, clip));
    }
  }

  private void line(Shape shape) {
    if (colour.getAlpha() == 0) {
      return;
    }
    int last = items.size() - 1;
    if (last >= 0
        && items.get(last) instanceof Line before
        && before.colour.equals(colour)
        && before.stroke.equals(stroke)
        && before.clip.equals(clip)) {
      append(before.path, shape);
    } else {
      items.add(new Line(new Path2D.Double(placed(shape)), colour, stroke, clip));
    }
  }

  /** Goes on from where the path ends when the new piece starts there. */
  private void append(Path2D path, Shape shape) {
    if (shape instanceof Line2D segment
        && place.transform(segment.getP1(), null).equals(path.getCurrentPoint())) {
      Point2D end = place.transform(segment.getP2(), null);
      path.lineTo(end.getX(), end.getY());
    } else {
      path.append(placed(shape), false);
    }
  }

  /** A clip that cuts nothing is left off. */
  private static Item trimmed(Item item) {
    if (item instanceof Line line) {
      return new Line(line.path, line.colour, line.stroke, needed(line.clip, line.path));
    }
    if (item instanceof Fill fill) {
      return new Fill(fill.shape, fill.colour, needed(fill.clip, fill.shape));
    }
    return item;
  }

  private static Optional<Rectangle2D> needed(Optional<Rectangle2D> clip, Shape shape) {
    Rectangle2D bounds = shape.getBounds2D();
    return clip.filter(
        c ->
            bounds.getMinX() < c.getMinX()
                || bounds.getMaxX() > c.getMaxX()
                || bounds.getMinY() < c.getMinY()
                || bounds.getMaxY() > c.getMaxY());
  }
}
