package org.twinrig.report.html;

import java.util.List;
import org.twinrig.report.figure.Figure;

/**
 * A figure on a page.
 *
 * @param title what it shows, for those who do not see it
 * @param alt what can be seen in it
 * @param svg the drawing
 */
public record Plate(String title, String alt, TrustedMarkup svg) {
  /**
   * Figures on a page.
   *
   * @param figures drawn by this program
   * @return one plate each
   */
  public static List<Plate> of(List<Figure> figures) {
    return figures.stream()
        .map(f -> new Plate(f.title(), f.alt(), TrustedMarkup.of(f.svg())))
        .toList();
  }
}
