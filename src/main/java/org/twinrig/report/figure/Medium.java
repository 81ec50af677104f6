package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Puts the same recorded drawing on SVG and PNG. */
final class Medium {
  private static final int PNG_SCALE = 2;

  /** Half way between fastest and smallest. */
  private static final float PNG_SPEED = 0.6f;

  private Medium() {}

  /** What a drawing is called and how large it is. */
  record Sheet(String name, String title, String alt, int width, int height) {}

  static Figure draw(Sheet sheet, Consumer<Graphics2D> painter) {
    List<Recording.Item> items = Recording.of(painter);
    return new Figure(
        sheet.name, sheet.title, sheet.alt, SvgText.of(sheet, items), () -> png(sheet, items));
  }

  private static byte[] png(Sheet sheet, List<Recording.Item> items) {
    BufferedImage image =
        new BufferedImage(
            PNG_SCALE * sheet.width, PNG_SCALE * sheet.height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.scale(PNG_SCALE, PNG_SCALE);
    items.forEach(item -> paint(g, item));
    g.dispose();
    return encoded(image);
  }

  private static void paint(Graphics2D g, Recording.Item item) {
    if (item instanceof Recording.Line line) {
      cut(g, line.clip());
      g.setColor(line.colour());
      g.setStroke(line.stroke());
      g.draw(line.path());
    } else if (item instanceof Recording.Fill fill) {
      cut(g, fill.clip());
      g.setColor(fill.colour());
      g.fill(fill.shape());
    } else if (item instanceof Recording.Text text) {
      cut(g, Optional.empty());
      g.setColor(text.colour());
      g.setFont(text.font());
      double width = text.font().getStringBounds(text.words(), g.getFontRenderContext()).getWidth();
      double before = text.lie().share() * width;
      g.drawString(text.words(), (float) (text.at().getX() - before), (float) text.at().getY());
    }
  }

  private static void cut(Graphics2D g, Optional<Rectangle2D> clip) {
    g.setClip(clip.orElse(null));
  }

  private static byte[] encoded(BufferedImage image) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ImageWriteParam fast = writer.getDefaultWriteParam();
    fast.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    fast.setCompressionQuality(PNG_SPEED);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), fast);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
