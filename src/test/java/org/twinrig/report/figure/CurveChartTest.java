package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.twinrig.report.figure.CurveChart.Colour;
import org.twinrig.report.figure.CurveChart.Line;

class CurveChartTest {
  private static final double[] HZ = {20, 200, 2000, 20_000};

  private static double height(Figure figure) {
    Matcher size = Pattern.compile("viewBox=\"0 0 780 ([0-9.]+)\"").matcher(figure.svg());
    assertTrue(size.find(), figure.svg().substring(0, 200));
    return Double.parseDouble(size.group(1));
  }

  @Test
  void aChartIsDrawnWithItsWords() {
    CurveChart empty = CurveChart.of("Units part above 4 kHz", "New minus old, dB", -12, 10);
    Figure figure =
        empty
            .curve("mean", HZ, new double[] {1, 2, Double.NaN, 3}, Colour.INK, Line.SOLID)
            .curve("", HZ, new double[] {0, 0, 0, 0}, Colour.PALE, Line.THIN)
            .figure();
    for (String word :
        new String[] {"Units part above 4 kHz", "New minus old, dB", "mean", "20k"}) {
      assertTrue(figure.svg().contains(">" + word + "<"), word);
    }
    assertFalse(figure.svg().contains("NaN"));
    assertFalse(figure.svg().contains(">study"), "no study stands behind it");
    assertTrue(figure.svg().contains(">1 decade = 25 dB<"));
    assertFalse(empty.figure().svg().contains(">mean<"), "a chart does not change");
  }

  /** IEC 60263: a decade as long as 10 or 25 dB; other ordinates have one height. */
  @Test
  void levelsKeepTheirProportions() {
    double decade = (780 - 62 - 18) / 3.0;
    double around = 62 + 65; // no marks below
    assertEquals(
        Math.round(10 / 10.0 * decade) + around,
        height(CurveChart.of("t", "y, dB", -5, 5).figure()));
    assertEquals(
        Math.round(25 / 25.0 * decade) + around,
        height(CurveChart.of("t", "y, dB", -12, 10).figure()));
    assertEquals(250 + around, height(CurveChart.of("t", "y, %", 0, 100).figure()));
    assertEquals(250 + around, height(CurveChart.of("t", "y, dB", 0, 5).figure()));
    assertTrue(CurveChart.of("t", "y, %", 0, 100).figure().svg().contains(">80<"));
    assertTrue(CurveChart.of("t", "y, dB", 0, 5).figure().svg().contains(">4<"));
  }

  @Test
  void whatCannotBeDrawnIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> CurveChart.of("t", "y", 1, 1));
    assertThrows(IllegalArgumentException.class, () -> CurveChart.of("t", "y", 0, Double.NaN));
    CurveChart chart = CurveChart.of("t", "y", 0, 1);
    assertEquals(
        "curve `c` has 4 frequencies and 1 values",
        assertThrows(
                IllegalArgumentException.class,
                () -> chart.curve("c", HZ, new double[1], Colour.INK, Line.SOLID))
            .getMessage());
  }
}
