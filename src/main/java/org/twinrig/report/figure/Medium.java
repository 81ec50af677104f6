package org.twinrig.report.figure;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.svg.SVGProcessor;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/** Puts the same strokes on SVG and PNG. */
final class Medium {
  private static final int PNG_SCALE = 2;
  private static final Pattern LONG_DECIMAL = Pattern.compile("-?\\d+\\.\\d{3,}(E-?\\d+)?");

  private Medium() {}

  /** What a drawing is called and how large it is. */
  record Sheet(String name, String title, String alt, int width, int height) {}

  static Figure draw(Sheet sheet, Consumer<Graphics2D> strokes) {
    return new Figure(sheet.name, sheet.title, sheet.alt, svg(sheet, strokes), png(sheet, strokes));
  }

  private static byte[] png(Sheet sheet, Consumer<Graphics2D> strokes) {
    BufferedImage image =
        new BufferedImage(
            PNG_SCALE * sheet.width, PNG_SCALE * sheet.height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    g.scale(PNG_SCALE, PNG_SCALE);
    strokes.accept(g);
    g.dispose();
    try (ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      ImageIO.setUseCache(false);
      ImageIO.write(image, "png", bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String svg(Sheet sheet, Consumer<Graphics2D> strokes) {
    VectorGraphics2D g = new VectorGraphics2D();
    strokes.accept(g);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      new SVGProcessor()
          .getDocument(g.getCommands(), new PageSize(0, 0, sheet.width, sheet.height))
          .writeTo(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String text = bytes.toString(StandardCharsets.UTF_8);
    String body = text.substring(text.indexOf('>', text.indexOf("<svg")) + 1);
    return String.format(
            Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\""
                + " aria-labelledby=\"%s-t\"><title id=\"%s-t\">%s</title>",
            sheet.width,
            sheet.height,
            sheet.name,
            sheet.name,
            escaped(sheet.title + ". " + sheet.alt))
        + shortened(body)
            .replace("clip", sheet.name + "-clip-")
            .replace("-clip--path", "clip-path");
  }

  private static String shortened(String body) {
    Matcher matcher = LONG_DECIMAL.matcher(body);
    StringBuilder text = new StringBuilder(body.length());
    while (matcher.find()) {
      double rounded = Math.rint(Double.parseDouble(matcher.group()) * 100) / 100;
      matcher.appendReplacement(text, Double.toString(rounded));
    }
    return matcher.appendTail(text).toString();
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
