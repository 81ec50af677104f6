package org.twinrig.scripting;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.report.figure.CurvesFigure;
import org.twinrig.report.figure.CurvesFigure.Colour;
import org.twinrig.report.figure.CurvesFigure.Line;
import org.twinrig.report.figure.Figure;

/** A chart of a script's own: curves from 20 Hz to 20 kHz, in the look of the report. Immutable. */
public final class CurveChart {
  private final CurvesFigure.Sheet sheet;
  private final List<CurvesFigure.Curve> curves;

  private CurveChart(CurvesFigure.Sheet sheet, List<CurvesFigure.Curve> curves) {
    this.sheet = sheet;
    this.curves = List.copyOf(curves);
  }

  /**
   * A chart without curves, its title a finding, its ordinate named with its unit and rising from
   * {@code lowest} to {@code highest}; 8 dB and more get the proportions of IEC 60263.
   */
  public static CurveChart of(String title, String ordinate, double lowest, double highest) {
    return new CurveChart(new CurvesFigure.Sheet(title, ordinate, lowest, highest), List.of());
  }

  /**
   * The chart with one curve more: its name in the key (empty for none), and one value per
   * ascending frequency in Hz, NaN for a gap.
   */
  public CurveChart curve(String name, double[] hz, double[] values, Colour colour, Line line) {
    List<CurvesFigure.Curve> more = new ArrayList<>(curves);
    more.add(new CurvesFigure.Curve(name, hz, values, colour, line));
    return new CurveChart(sheet, more);
  }

  /** The drawing, as SVG and PNG. */
  public Figure figure() {
    return CurvesFigure.of(sheet, curves);
  }
}
