package org.twinrig.report.figure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.ArrayList;
import java.util.List;

/** A chart of a script's own: curves from 20 Hz to 20 kHz, in the look of the report. Immutable. */
public final class CurveChart {
  private static final int MOST_STEPS = 7;

  /** A lower range of levels has no room for the proportions of levels. */
  private static final double LEAST_LEVELS_DB = 8;

  private final String title;
  private final String ordinate;
  private final Axis axis;
  private final List<Curve> curves;

  private CurveChart(String title, String ordinate, Axis axis, List<Curve> curves) {
    this.title = title;
    this.ordinate = ordinate;
    this.axis = axis;
    this.curves = curves;
  }

  private record Curve(String name, Plot.Line line) {}

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

  /**
   * A chart without curves, its title a finding, its ordinate named with its unit and rising from
   * {@code lowest} to {@code highest}; 8 dB and more get the proportions of IEC 60263.
   */
  public static CurveChart of(String title, String ordinate, double lowest, double highest) {
    if (!(lowest < highest) || !Double.isFinite(highest - lowest)) {
      throw new IllegalArgumentException(
          "an ordinate rises, but goes from " + lowest + " to " + highest);
    }
    Axis axis =
        ordinate.endsWith("dB") && highest - lowest >= LEAST_LEVELS_DB
            ? Axis.differences("", lowest, highest)
            : Axis.stepped("", lowest, highest, Axis.roundStep((highest - lowest) / MOST_STEPS), 0);
    return new CurveChart(title, ordinate, axis, List.of());
  }

  /**
   * The chart with one curve more: its name in the key (empty for none), and one value per
   * ascending frequency in Hz, NaN for a gap; what lies beyond the ordinate is cut off.
   */
  public CurveChart curve(String name, double[] hz, double[] values, Colour colour, Line line) {
    if (hz.length != values.length) {
      throw new IllegalArgumentException(
          "curve `%s` has %s frequencies and %s values".formatted(name, hz.length, values.length));
    }
    List<Curve> more = new ArrayList<>(curves);
    Ink.Pen pen = new Ink.Pen(colour.paint, line.stroke);
    more.add(new Curve(name, new Plot.Line(hz.clone(), values.clone(), pen)));
    return new CurveChart(title, ordinate, axis, more);
  }

  /** The drawing, as SVG and PNG. */
  public Figure figure() {
    Plot plot = Plot.overFrequency(axis);
    curves.forEach(curve -> plot.with(curve.line, curve.name));
    return new Sheet(title, ordinate, "")
        .overFrequency(plot, List.of())
        .figure(Figure.nameOf("curves", title), ordinate + " against frequency");
  }
}
