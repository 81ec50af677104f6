package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Paints a drawing as PNG at twice its size. */
final class PngImage {
  private static final int SCALE = 2;

  private PngImage() {}

  static byte[] of(int width, int height, Drawing drawing) {
    BufferedImage image =
        new BufferedImage(SCALE * width, SCALE * height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.scale(SCALE, SCALE);
    drawing.items().forEach(item -> paint(g, item));
    g.dispose();
    return encoded(image);
  }

  private static void paint(Graphics2D g, Drawing.Item item) {
    if (item instanceof Drawing.Line line) {
      g.setClip(line.clip().orElse(null));
      g.setColor(line.pen().colour());
      g.setStroke(line.pen().stroke());
      g.draw(line.path());
    } else if (item instanceof Drawing.Fill fill) {
      g.setClip(fill.clip().orElse(null));
      g.setColor(fill.colour());
      g.fill(fill.shape());
    } else if (item instanceof Drawing.Text text) {
      g.setClip(null);
      g.setColor(text.type().colour());
      g.setFont(text.type().font());
      double width = g.getFont().getStringBounds(text.words(), g.getFontRenderContext()).getWidth();
      double before = text.lie().share * width;
      g.drawString(text.words(), (float) (text.x() - before), (float) text.y());
    }
  }

  private static byte[] encoded(BufferedImage image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(image, "png", out)) {
        throw new IllegalStateException("this Java writes no PNG");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
