package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Standard errors of ratios, their roots, quotients and means over clusters, against the R package
 * survey.
 *
 * <p>R 4.2.2, survey 4.1-1:
 *
 * <pre>
 * d &lt;- data.frame(study=1:6, q0=c(4.1,9.7,2.2,14.9,6.3,5.0), q1=c(2.0,4.4,1.9,6.1,3.2,3.9),
 *                 n=c(10,12,10,16,10,11), k=c(9,11,10,14,10,10), one=1)
 * des &lt;- svydesign(ids=~study, weights=~one, data=d)
 * svyratio(~k, ~n, des)
 * t &lt;- svytotal(~q0+q1+n, des)
 * svycontrast(t, quote(sqrt(q0/n)))
 * svycontrast(t, quote(sqrt(q1/q0)))
 * svycontrast(t, quote((sqrt(q0/n)+sqrt(q1/n))/2))
 * </pre>
 */
class ClusteredTest {
  private static final double[] N = {10, 12, 10, 16, 10, 11};
  private static final double[] INSIDE = {9, 11, 10, 14, 10, 10};
  private static final Clustered RMS_0 =
      Clustered.ratio(new double[] {4.1, 9.7, 2.2, 14.9, 6.3, 5.0}, N).squareRoot();
  private static final Clustered RMS_1 =
      Clustered.ratio(new double[] {2.0, 4.4, 1.9, 6.1, 3.2, 3.9}, N).squareRoot();

  private static void check(double value, double se, Clustered computed) {
    assertEquals(value, computed.value(), 1e-11);
    assertEquals(se, computed.se(), 1e-11);
  }

  @Test
  void aRatioOfSums() {
    check(0.927536231884, 0.021830412690, Clustered.ratio(INSIDE, N));
  }

  @Test
  void aRootMeanSquare() {
    check(0.782044885476, 0.074691910815, RMS_0);
  }

  @Test
  void aQuotientOfTwoThatShareTheirStudies() {
    check(0.713777747612, 0.040505791046, RMS_1.over(RMS_0));
  }

  @Test
  void aMeanOfTwoThatShareTheirStudies() {
    check(0.670125561181, 0.051001523209, Clustered.average(List.of(RMS_0, RMS_1)));
  }

  @Test
  void nothingAtAllHasNoErrorAndNoRatio() {
    Clustered zero = Clustered.ratio(new double[] {0, 0}, new double[] {3, 4}).squareRoot();
    check(0, 0, zero);
    assertThrows(
        IllegalArgumentException.class,
        () -> Clustered.ratio(new double[] {1, 1}, new double[] {0, 0}));
  }
}
