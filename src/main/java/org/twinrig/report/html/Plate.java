package org.twinrig.report.html;

import java.util.List;
import org.twinrig.report.figure.Figure;

/** A figure on a page: what it shows and what can be seen in it, for those who do not see it. */
public record Plate(String title, String alt, TrustedMarkup svg) {
  /** One plate for each figure drawn by this program. */
  public static List<Plate> of(List<Figure> figures) {
    return figures.stream()
        .map(f -> new Plate(f.title(), f.alt(), TrustedMarkup.of(f.svg())))
        .toList();
  }
}
