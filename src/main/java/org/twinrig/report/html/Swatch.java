package org.twinrig.report.html;

import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Zone;

/** A piece of the mark strip to stand beside a word, as the figures draw it. */
public enum Swatch {
  RELIABLE("reliable", "1", "<rect width=\"28\" height=\"11\" fill=\"currentColor\"/>"),
  CAUTION("caution", "2", "<rect y=\"5.5\" width=\"28\" height=\"5.5\" fill=\"currentColor\"/>"),
  UNRELIABLE(
      "unreliable",
      "3",
      "<path d=\"M.5.5h27v10h-27zM1 10L10 1M5.5 10.5L15 1M11 10.5L20.5 1M16.5 10.5L26 1M22 10.5L27"
          + " 5.5\" fill=\"none\" stroke=\"currentColor\"/>"),
  GAP("no data", "4", "");

  private final String word;
  private final String order;
  private final String shape;

  Swatch(String word, String order, String shape) {
    this.word = word;
    this.order = order;
    this.shape = shape;
  }

  public static Swatch of(Mark mark) {
    return valueOf(mark.name());
  }

  /** The swatch of a zone: a gap where it has no data. */
  public static Swatch of(Zone zone) {
    return zone.empty() ? GAP : of(zone.mark());
  }

  /** What tables sort marks by: best first. */
  String order() {
    return order;
  }

  /** What the swatch stands for, such as {@code caution}. */
  public String word() {
    return word;
  }

  /** The drawing, an inline SVG hidden from screen readers: the word stands beside it. */
  public TrustedMarkup svg() {
    return TrustedMarkup.of(
        "<svg class=\"swatch\" viewBox=\"0 0 28 11\" width=\"28\" height=\"11\""
            + " aria-hidden=\"true\">"
            + shape
            + "</svg>");
  }
}
