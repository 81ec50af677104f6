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
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Puts the same strokes on SVG and PNG. */
final class Medium {
  private static final int PNG_SCALE = 2;

  /** Half way between fastest and smallest. */
  private static final float PNG_SPEED = 0.6f;

  private static final Pattern LONG_DECIMAL = Pattern.compile("-?\\d+\\.\\d{3,}(E-?\\d+)?");

  private static final Pattern CLIP_ID = Pattern.compile("id=\"(clip[^\"]*)\"");
  private static final Pattern SEGMENT =
      Pattern.compile(
          "<line style=\"([^\"]*)\" x1=\"([^\"]*)\" x2=\"([^\"]*)\" y1=\"([^\"]*)\" y2=\"([^\"]*)\"/>");

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
      ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
      ImageWriteParam fast = writer.getDefaultWriteParam();
      fast.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      fast.setCompressionQuality(PNG_SPEED);
      try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
        writer.setOutput(out);
        writer.write(null, new IIOImage(image, null, null), fast);
      }
      writer.dispose();
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
        + joined(shortened(named(body, sheet.name)));
  }

  /** Ids that no other drawing on the same page has. */
  private static String named(String body, String name) {
    List<String> ids = new ArrayList<>();
    Matcher matcher = CLIP_ID.matcher(body);
    while (matcher.find()) {
      if (!ids.contains(matcher.group(1))) {
        ids.add(matcher.group(1));
      }
    }
    String text = body;
    for (int k = 0; k < ids.size(); k++) {
      text = text.replace(ids.get(k), name + "-c" + k);
    }
    return text;
  }

  /** Segments that follow on each other as one line: a curve of 120 points is one element. */
  private static String joined(String body) {
    StringBuilder text = new StringBuilder(body.length());
    Matcher m = SEGMENT.matcher(body);
    String style = "";
    String end = "";
    int last = 0;
    while (m.find()) {
      boolean follows =
          body.substring(last, m.start()).isBlank()
              && style.equals(m.group(1))
              && end.equals(m.group(2) + "," + m.group(4));
      if (!follows) {
        text.append(style.isEmpty() ? "" : "\"/>\n");
        text.append(body, last, m.start());
        text.append("<polyline style=\"").append(m.group(1)).append("\" points=\"");
        text.append(m.group(2)).append(',').append(m.group(4));
      }
      style = m.group(1);
      end = m.group(3) + "," + m.group(5);
      text.append(' ').append(end);
      last = m.end();
    }
    text.append(style.isEmpty() ? "" : "\"/>\n");
    return text.append(body, last, body.length()).toString();
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
