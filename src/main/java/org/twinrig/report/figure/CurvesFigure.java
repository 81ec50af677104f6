package org.twinrig.report.figure;

import java.awt.Color;
import java.awt.Stroke;
import java.util.List;

/** Curves of any kind over frequency, in the look of the report. */
public final class CurvesFigure {
  /** The height of an ordinate that is no level, or too short for the proportions of levels, px. */
  private static final double HEIGHT = 250;

  private static final double LEAST_LEVELS_DB = 8;

  private CurvesFigure() {}

  /** The colours of the report. They differ in lightness, so that they keep apart in greyscale. */
  public enum Colour {
    /** For what a drawing is about. */
    INK,
    /** For the new fixture, or a second thing. */
    BLUE,
    /** For the old fixture, or a third thing. */
    BROWN,
    /** For many that stand behind. */
    PALE
  }

  /** How a curve is drawn. */
  public enum Line {
    /** For what a drawing is about. */
    SOLID,
    /** For many, and for ends of intervals. */
    THIN,
    /** For what is compared with. */
    DASHED,
    /** For limits. */
    DOTTED
  }

  /**
   * The sheet.
   *
   * @param title what the drawing shows, as a finding
   * @param ordinate what is drawn against frequency, with its unit
   * @param lowest at the foot of the ordinate
   * @param highest at its head
   */
  public record Sheet(String title, String ordinate, double lowest, double highest) {
    /** Checks the range. */
    public Sheet {
      if (!(lowest < highest) || !Double.isFinite(highest - lowest)) {
        throw new IllegalArgumentException(
            "an ordinate rises, but goes from " + lowest + " to " + highest);
      }
    }
  }

  /**
   * One curve.
   *
   * @param name in the key; empty for none
   * @param hz frequencies in ascending order, Hz
   * @param values one per frequency; NaN is a gap
   * @param colour its colour
   * @param line how it is drawn
   */
  @SuppressWarnings("ArrayRecordComponent") // a drawing holds hundreds of points and is drawn once
  public record Curve(String name, double[] hz, double[] values, Colour colour, Line line) {
    /** Copies the points. */
    public Curve {
      if (hz.length != values.length) {
        throw new IllegalArgumentException(
            "curve `"
                + name
                + "` has "
                + hz.length
                + " frequencies and "
                + values.length
                + " values");
      }
      hz = hz.clone();
      values = values.clone();
    }
  }

  /**
   * Draws curves from 20 Hz to 20 kHz. An ordinate of 8 dB or more has the proportions of IEC
   * 60263.
   *
   * @param sheet the sheet
   * @param curves in the order they are drawn; parts beyond the ordinate are cut off
   * @return the drawing
   */
  public static Figure of(Sheet sheet, List<Curve> curves) {
    boolean ofLevels =
        sheet.ordinate.endsWith("dB") && sheet.highest - sheet.lowest >= LEAST_LEVELS_DB;
    Panel panel =
        new Panel(
            new Panel.Texts(sheet.title, sheet.ordinate, "", ""),
            ofLevels ? Panel.Range.ofDifferences(sheet.lowest, sheet.highest) : plain(sheet));
    if (!ofLevels) {
      panel.withoutScale();
    }
    for (Curve c : curves) {
      Panel.Curve drawn = new Panel.Curve(c.hz, c.values, paint(c.colour), stroke(c.line));
      if (c.name.isEmpty()) {
        panel.withCurve(drawn);
      } else {
        panel.withCurve(drawn, c.name);
      }
    }
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("curves", sheet.title),
            sheet.title,
            sheet.ordinate + " against frequency",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  private static Color paint(Colour colour) {
    return switch (colour) {
      case INK -> Ink.TEXT;
      case BLUE -> Ink.NEW_FIXTURE;
      case BROWN -> Ink.OLD_FIXTURE;
      case PALE -> Ink.UNIT;
    };
  }

  private static Stroke stroke(Line line) {
    return switch (line) {
      case SOLID -> Ink.CURVE;
      case THIN -> Ink.THIN;
      case DASHED -> Ink.DASHED;
      case DOTTED -> Ink.DOTTED;
    };
  }

  private static Panel.Range plain(Sheet sheet) {
    double span = sheet.highest - sheet.lowest;
    double step = Math.pow(10, Math.floor(Math.log10(span / 4)));
    step *= span / step >= 20 ? 5 : span / step >= 8 ? 2 : 1;
    return Panel.Range.onHeight(sheet.lowest, sheet.highest, step, HEIGHT);
  }
}
