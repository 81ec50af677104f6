package org.twinrig.report.figure;

import java.awt.Graphics2D;
import java.awt.RenderingHints;

/**
 * Writes words beside a point. Where the words lie is handed on as a hint, so that each medium can
 * align them with the type it has: a page shown on another machine has other fonts than this one.
 */
final class Words {
  /** The hint under which {@link Recording} finds how words lie. */
  static final RenderingHints.Key LIE = new LieKey();

  private Words() {}

  /** How words lie to their point. */
  enum Lie {
    /** They start at it. */
    START("start", 0),
    /** It is their middle. */
    MIDDLE("middle", 0.5),
    /** They end at it. */
    END("end", 1);

    private final String svg;
    private final double share;

    Lie(String svg, double share) {
      this.svg = svg;
      this.share = share;
    }

    /** How much of the words lies before the point, 0 to 1. */
    double share() {
      return share;
    }

    /** The value of {@code text-anchor}, SVG 1.1, 10.9.1. */
    String svg() {
      return svg;
    }
  }

  static void after(Graphics2D g, String words, double x, double y) {
    write(g, words, x, y, Lie.START);
  }

  static void around(Graphics2D g, String words, double x, double y) {
    write(g, words, x, y, Lie.MIDDLE);
  }

  static void before(Graphics2D g, String words, double x, double y) {
    write(g, words, x, y, Lie.END);
  }

  private static void write(Graphics2D g, String words, double x, double y, Lie lie) {
    g.setRenderingHint(LIE, lie);
    g.drawString(words, (float) x, (float) y);
  }

  private static final class LieKey extends RenderingHints.Key {
    LieKey() {
      super(1);
    }

    @Override
    public boolean isCompatibleValue(Object value) {
      return value instanceof Lie;
    }
  }
}
