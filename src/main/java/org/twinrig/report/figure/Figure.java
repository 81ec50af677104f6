package org.twinrig.report.figure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.zip.CRC32;
import org.twinrig.internal.Parallel;

/**
 * One finished drawing, whose title is a finding.
 *
 * @param name a safe file name without its ending
 * @param alt the drawing in words
 * @param picture paints it as PNG; a page that shows the SVG never asks for it
 */
public record Figure(String name, String title, String alt, String svg, Supplier<byte[]> picture) {

  private static final int LONGEST = 100;

  /** The same as a picture at twice the size, painted anew at every call. */
  public byte[] png() {
    return picture.get();
  }

  /** Writes drawings as SVG and PNG into the folder {@code figures} of a result folder. */
  public static void write(Path folder, List<Figure> figures, int threads) throws IOException {
    Path place = Files.createDirectories(folder.resolve("figures"));
    List<byte[]> pictures = Parallel.map(figures, threads, Figure::png);
    for (int k = 0; k < pictures.size(); k++) {
      figures.get(k).write(place.resolve(figures.get(k).name), pictures.get(k));
    }
  }

  /** Writes the drawing as SVG and PNG under a name without ending. */
  public void write(Path file) throws IOException {
    write(file, png());
  }

  private void write(Path file, byte[] png) throws IOException {
    Files.writeString(file.resolveSibling(file.getFileName() + ".svg"), svg);
    Files.write(file.resolveSibling(file.getFileName() + ".png"), png);
  }

  /**
   * A name that is safe for a file and as an id on a page: small letters, digits, hyphens and
   * underscores only. Where that loses something of the subject, a checksum keeps names apart.
   */
  static String nameOf(String prefix, String subject) {
    String safe =
        subject.toLowerCase(Locale.ROOT).replace(' ', '_').replaceAll("[^a-z0-9_-]+", "-");
    if (safe.length() > LONGEST) {
      safe = safe.substring(0, LONGEST); // file systems take 255, with prefix, checksum and ending
    }
    if (safe.replace('_', ' ').equals(subject)) {
      return prefix + "-" + safe;
    }
    CRC32 checksum = new CRC32();
    checksum.update(subject.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%s-%s-%08x", prefix, safe, checksum.getValue());
  }

  static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
