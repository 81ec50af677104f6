package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;

/** Colours, pens and type of all drawings: ink on paper. */
final class Ink {
  static final Color PAPER = new Color(0xFC, 0xFA, 0xF5);
  static final Color TEXT = new Color(0x22, 0x22, 0x26);
  static final Color FAINT_TEXT = new Color(0x63, 0x60, 0x5A);
  static final Color AXIS = new Color(0x8A, 0x85, 0x7A);
  static final Color NEW_FIXTURE = new Color(0x1F, 0x3A, 0x6E);
  static final Color OLD_FIXTURE = new Color(0x8B, 0x77, 0x5F);
  static final Color BAND = new Color(0xC9, 0xD3, 0xE4);
  static final Color UNIT = new Color(0xB9, 0xB2, 0xA5);
  static final Color MARK = new Color(0x3A, 0x3A, 0x3E);

  // Sources of error, each a step of lightness from its neighbours in the stack: they keep apart in
  // greyscale.
  static final Color UNITS = new Color(0x5E, 0x71, 0x99);
  static final Color SEATING_OLD = new Color(0xDA, 0xCF, 0xBB);
  static final Color SEATING_NEW = new Color(0xA4, 0xA9, 0xAE);
  static final Color FIT = new Color(0xE4, 0xE9, 0xF2);
  static final Color CALIBRATOR = new Color(0x54, 0x4C, 0x42);

  static final BasicStroke HAIR = new BasicStroke(0.6f);
  static final BasicStroke THIN = solid(1);
  static final BasicStroke CURVE = solid(1.9f);
  static final BasicStroke DASHED = broken(1.1f, 5, 3);
  static final BasicStroke DOTTED = broken(1, 1.5f, 3);

  static final Pen GRID = new Pen(new Color(0xE6, 0xE1, 0xD6), HAIR);
  static final Pen FRAME = new Pen(AXIS, THIN);
  static final Pen HAIRLINE = new Pen(TEXT, HAIR);
  static final Pen LINE = new Pen(TEXT, THIN);
  static final Pen LIMIT = new Pen(TEXT, DOTTED);
  static final Pen ESTIMATE = new Pen(TEXT, CURVE);

  /** The ends of an interval that holds at all places together. */
  static final Pen OUTLINE = new Pen(new Color(0x6C, 0x82, 0xA8), THIN);

  static final Pen OLD = new Pen(OLD_FIXTURE, DASHED);
  static final Pen NEW = new Pen(NEW_FIXTURE, CURVE);
  static final Pen NEW_THIN = new Pen(NEW_FIXTURE, THIN);

  /** Bars that stand for a finding over a run of bands; told apart without colour. */
  static final Pen BAR =
      new Pen(NEW_FIXTURE, new BasicStroke(5, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));

  static final Pen BAR_BROKEN = new Pen(OLD_FIXTURE, broken(5, 2, 2));

  static final Type TITLE = new Type(new Font(Font.SERIF, Font.BOLD, 16), TEXT);
  static final Type NOTE = new Type(new Font(Font.SANS_SERIF, Font.PLAIN, 11), TEXT);
  static final Type SMALL = new Type(new Font(Font.SANS_SERIF, Font.PLAIN, 9), TEXT);

  private Ink() {}

  record Pen(Color colour, BasicStroke stroke) {}

  record Type(Font font, Color colour) {
    Type in(Color other) {
      return new Type(font, other);
    }

    Type faint() {
      return in(FAINT_TEXT);
    }

    /** The same, smaller where words would be wider than a place in px, but never illegible. */
    Type fitting(String words, double place) {
      double size = Math.floor(font.getSize() * Math.min(1, place / width(words)));
      return new Type(font.deriveFont((float) Math.max(SMALL.font.getSize(), size)), colour);
    }

    /** How wide words are with this machine's fonts, in px; a reader's may differ. */
    double width(String words) {
      return font.getStringBounds(words, new java.awt.font.FontRenderContext(null, true, true))
          .getWidth();
    }
  }

  private static BasicStroke solid(float width) {
    return new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  }

  private static BasicStroke broken(float width, float on, float off) {
    return new BasicStroke(
        width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {on, off}, 0);
  }
}
