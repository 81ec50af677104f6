package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Paints a drawing as PNG at twice its size. */
final class PngImage {
  private static final int SCALE = 2;

  /** Half way between fastest and smallest. */
  private static final float SPEED = 0.6f;

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
      cut(g, line.clip());
      g.setColor(line.pen().colour());
      g.setStroke(line.pen().stroke());
      g.draw(line.path());
    } else if (item instanceof Drawing.Fill fill) {
      cut(g, fill.clip());
      g.setColor(fill.colour());
      g.fill(fill.shape());
    } else if (item instanceof Drawing.Text text) {
      cut(g, Optional.empty());
      g.setColor(text.type().colour());
      g.setFont(text.type().font());
      double width = g.getFont().getStringBounds(text.words(), g.getFontRenderContext()).getWidth();
      double before = text.lie().ordinal() / 2.0 * width;
      g.drawString(text.words(), (float) (text.x() - before), (float) text.y());
    }
  }

  private static void cut(Graphics2D g, Optional<Rectangle2D> clip) {
    g.setClip(clip.orElse(null));
  }

  private static byte[] encoded(BufferedImage image) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ImageWriteParam fast = writer.getDefaultWriteParam();
    fast.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    fast.setCompressionQuality(SPEED);
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
