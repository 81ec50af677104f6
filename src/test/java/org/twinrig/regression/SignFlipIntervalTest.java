package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;

/**
 * Against full enumeration computed with numpy, and written down again here from the definition.
 */
class SignFlipIntervalTest {

  @Test
  void theExactQuantileIsThatOfFullEnumeration() {
    List<Map<String, String>> rows = ReferenceTable.rows("simultaneous_sign_flip.csv");
    double[][] d = new double[rows.size()][4];
    for (int i = 0; i < d.length; i++) {
      for (int b = 0; b < 4; b++) {
        d[i][b] = Double.parseDouble(rows.get(i).get("band" + (b + 1) + "_d_db"));
      }
    }
    SignFlipInterval.Result at95 = new SignFlipInterval(0.95, 1).fit(d);
    assertEquals(3.14270834571, at95.multiplier(), 1e-10);
    assertEquals(32, at95.patterns());
    assertTrue(at95.exact());
    assertEquals(2.87677980891, new SignFlipInterval(0.9, 1).fit(d).multiplier(), 1e-10);
  }

  @Property(tries = 40)
  void agreesWithTheDefinitionWrittenDownAgain(
      @ForAll @IntRange(min = 3, max = 9) int units,
      @ForAll @IntRange(min = 1, max = 6) int bands,
      @ForAll Random random) {
    double[][] d = new double[units][bands];
    for (double[] row : d) {
      for (int b = 0; b < bands; b++) {
        row[b] = random.nextGaussian();
      }
    }
    if (units > 4) {
      d[1][0] = Double.NaN;
    }
    assertEquals(byDefinition(d, 0.95), new SignFlipInterval(0.95, 1).fit(d).multiplier(), 1e-9);
  }

  @Test
  void drawsComeCloseToFullEnumeration() {
    Random random = new Random(5);
    double[][] d = new double[14][5];
    for (double[] row : d) {
      for (int b = 0; b < row.length; b++) {
        row[b] = random.nextGaussian();
      }
    }
    SignFlipInterval.Result drawn = new SignFlipInterval(0.95, 3).fit(d);
    assertFalse(drawn.exact());
    assertEquals(4999, drawn.patterns());
    assertEquals(byDefinition(d, 0.95), drawn.multiplier(), 0.12);
    assertEquals(drawn, new SignFlipInterval(0.95, 3).fit(d));
  }

  @Test
  void aBandWithoutScatterDoesNotCount() {
    double[][] d = {{1, 0}, {2, 0}, {4, 0}, {3, 0}};
    double[][] alone = {{1}, {2}, {4}, {3}};
    assertEquals(
        new SignFlipInterval(0.95, 1).fit(alone).multiplier(),
        new SignFlipInterval(0.95, 1).fit(d).multiplier());
    assertEquals(0, new SignFlipInterval(0.95, 1).fit(new double[][] {{0}, {0}, {0}}).multiplier());
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new SignFlipInterval(0.95, 1).fit(new double[][] {{1}}));
    assertThrows(IllegalArgumentException.class, () -> new SignFlipInterval(1, 1));
  }

  private static double byDefinition(double[][] d, double confidence) {
    int units = d.length;
    int bands = d[0].length;
    double[] greatest = new double[1 << (units - 1)];
    for (int pattern = 0; pattern < greatest.length; pattern++) {
      for (int b = 0; b < bands; b++) {
        int band = b;
        double[] present =
            Arrays.stream(d).mapToDouble(r -> r[band]).filter(x -> !Double.isNaN(x)).toArray();
        double mean = Arrays.stream(present).average().orElseThrow();
        int n = present.length;
        double m = 0;
        double square = 0;
        for (int i = 0; i < units; i++) {
          if (!Double.isNaN(d[i][b])) {
            int sign = i == 0 || (pattern >> (i - 1) & 1) == 0 ? 1 : -1;
            m += sign * (d[i][b] - mean) / n;
            square += Math.pow(d[i][b] - mean, 2) / n;
          }
        }
        double s = Math.sqrt((square - m * m) / (n - 1));
        greatest[pattern] = Math.max(greatest[pattern], Math.abs(m) / s);
      }
    }
    Arrays.sort(greatest);
    return greatest[(int) Math.ceil(confidence * greatest.length - 1e-9) - 1];
  }
}
