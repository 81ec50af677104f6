package org.twinrig.report.figure;

/**
 * One finished drawing.
 *
 * @param name a safe file name without its ending
 * @param title what the drawing shows, as a finding
 * @param alt the drawing in words
 * @param svg to be put inline into a page
 * @param png the same as a picture at twice the size
 */
@SuppressWarnings("ArrayRecordComponent")
public record Figure(String name, String title, String alt, String svg, byte[] png) {
  /** Copies the picture. */
  public Figure {
    png = png.clone();
  }

  @Override
  public byte[] png() {
    return png.clone();
  }

  /**
   * A name that is safe for a file.
   *
   * @param prefix what is drawn
   * @param subject a kind, unit or graph
   * @return letters, digits and hyphens only
   */
  static String nameOf(String prefix, String subject) {
    String safe = subject.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    return prefix + "-" + safe.replaceAll("^-|-$", "");
  }
}
