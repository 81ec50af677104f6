package org.twinrig;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.response.Response;

/** Curves of straight lines with points no further apart than 1/12 octave on them. */
public final class Dense {
  private Dense() {}

  /** The curve through corners, frequencies in Hz and levels in dB. */
  public static Response curve(double[] hz, double[] db) {
    List<double[]> points = new ArrayList<>();
    for (int i = 1; i < hz.length; i++) {
      int steps = (int) Math.ceil(12 * Math.log(hz[i] / hz[i - 1]) / Math.log(2));
      for (int k = 0; k < steps; k++) {
        double share = (double) k / steps;
        points.add(
            new double[] {
              k == 0 ? hz[i - 1] : hz[i - 1] * Math.pow(hz[i] / hz[i - 1], share),
              db[i - 1] + share * (db[i] - db[i - 1])
            });
      }
    }
    points.add(new double[] {hz[hz.length - 1], db[hz.length - 1]});
    return Response.copyOf(
        points.stream().mapToDouble(p -> p[0]).toArray(),
        points.stream().mapToDouble(p -> p[1]).toArray());
  }
}
