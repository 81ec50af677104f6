package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Stroke;

/** Colours, strokes and type of all drawings: ink on paper. */
final class Ink {
  static final Color PAPER = new Color(0xFC, 0xFA, 0xF5);
  static final Color TEXT = new Color(0x22, 0x22, 0x26);
  static final Color FAINT_TEXT = new Color(0x63, 0x60, 0x5A);
  static final Color GRID = new Color(0xE6, 0xE1, 0xD6);
  static final Color AXIS = new Color(0x8A, 0x85, 0x7A);
  static final Color NEW_FIXTURE = new Color(0x1F, 0x3A, 0x6E);
  static final Color OLD_FIXTURE = new Color(0x8B, 0x77, 0x5F);
  static final Color BAND = new Color(0xC9, 0xD3, 0xE4);
  static final Color OUTLINE = new Color(0x6C, 0x82, 0xA8);
  static final Color UNIT = new Color(0xB9, 0xB2, 0xA5);
  static final Color MARK = new Color(0x3A, 0x3A, 0x3E);

  // Sources of error, each a step of lightness from its neighbours in the stack: they keep apart in
  // greyscale.
  static final Color UNITS = new Color(0x5E, 0x71, 0x99);
  static final Color SEATING_OLD = new Color(0xDA, 0xCF, 0xBB);
  static final Color SEATING_NEW = new Color(0xA4, 0xA9, 0xAE);
  static final Color FIT = new Color(0xE4, 0xE9, 0xF2);
  static final Color CALIBRATOR = new Color(0x54, 0x4C, 0x42);

  static final Stroke HAIR = new BasicStroke(0.6f);
  static final Stroke THIN = new BasicStroke(1f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  static final Stroke CURVE = new BasicStroke(1.9f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
  static final Stroke DASHED =
      new BasicStroke(
          1.1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {5, 3}, 0);
  static final Stroke DOTTED =
      new BasicStroke(
          1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {1.5f, 3}, 0);

  /** Bars that stand for a finding over a run of bands; told apart without colour. */
  static final Stroke BAR = new BasicStroke(5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);

  static final Stroke BAR_BROKEN =
      new BasicStroke(5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {2, 2}, 0);

  static final Font TITLE = new Font(Font.SERIF, Font.BOLD, 16);
  static final Font NOTE = new Font(Font.SANS_SERIF, Font.PLAIN, 11);
  static final Font TICK = new Font(Font.SANS_SERIF, Font.PLAIN, 11);
  static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 9);

  private Ink() {}
}
