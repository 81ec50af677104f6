package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;

/** Curves of any kind over frequency, in the look of the report. */
public final class CurvesFigure {
  private static final int MOST_STEPS = 7;

  /** A lower range of levels has no room for the proportions of levels. */
  private static final double LEAST_LEVELS_DB = 8;

  private CurvesFigure() {}

  /**
   * The colours of the report: for what a drawing is about, for the new fixture, for the old one,
   * and for many that stand behind. They differ in lightness, so that they keep apart in greyscale.
   */
  public enum Colour {
    INK(Ink.TEXT),
    BLUE(Ink.NEW_FIXTURE),
    BROWN(Ink.OLD_FIXTURE),
    PALE(Ink.UNIT);

    private final Color paint;

    Colour(Color paint) {
      this.paint = paint;
    }
  }

  /**
   * How a curve is drawn: for what a drawing is about, for many and for ends of intervals, for what
   * is compared with, and for limits.
   */
  public enum Line {
    SOLID(Ink.CURVE),
    THIN(Ink.THIN),
    DASHED(Ink.DASHED),
    DOTTED(Ink.DOTTED);

    @SuppressWarnings("ImmutableEnumChecker") // a stroke does not change
    private final BasicStroke stroke;

    Line(BasicStroke stroke) {
      this.stroke = stroke;
    }
  }

  /** The title (a finding), what is drawn against frequency with its unit, and its range. */
  public record Sheet(String title, String ordinate, double lowest, double highest) {
    public Sheet {
      if (!(lowest < highest) || !Double.isFinite(highest - lowest)) {
        throw new IllegalArgumentException(
            "an ordinate rises, but goes from " + lowest + " to " + highest);
      }
    }

    private Axis axis() {
      return ordinate.endsWith("dB") && highest - lowest >= LEAST_LEVELS_DB
          ? Axis.differences("", lowest, highest)
          : Axis.stepped("", lowest, highest, Axis.roundStep((highest - lowest) / MOST_STEPS), 0);
    }
  }

  /** Values (NaN is a gap) at rising frequencies in Hz; its name in the key, empty for none. */
  @SuppressWarnings("ArrayRecordComponent") // a drawing holds hundreds of points and is drawn once
  public record Curve(String name, double[] hz, double[] values, Colour colour, Line line) {
    public Curve {
      if (hz.length != values.length) {
        throw new IllegalArgumentException(
            "curve `%s` has %s frequencies and %s values"
                .formatted(name, hz.length, values.length));
      }
      hz = hz.clone();
      values = values.clone();
    }
  }

  /**
   * Draws curves from 20 Hz to 20 kHz, in their order; what lies beyond the ordinate is cut off. An
   * ordinate of 8 dB or more has the proportions of IEC 60263.
   */
  public static Figure of(Sheet sheet, List<Curve> curves) {
    Plot plot = Plot.overFrequency(sheet.axis());
    for (Curve c : curves) {
      Ink.Pen pen = new Ink.Pen(c.colour.paint, c.line.stroke);
      if (c.name.isEmpty()) {
        plot.line(c.hz, c.values, pen);
      } else {
        plot.line(c.hz, c.values, pen, c.name);
      }
    }
    return new org.twinrig.report.figure.Sheet(sheet.title, sheet.ordinate, "")
        .overFrequency(plot, List.of())
        .figure(Figure.nameOf("curves", sheet.title), sheet.ordinate + " against frequency");
  }
}
