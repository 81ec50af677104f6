package org.twinrig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

  /** The same curve as a file of a lab. */
  public static String text(double[] hz, double[] db) {
    Response curve = curve(hz, db);
    StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
    for (int i = 0; i < curve.size(); i++) {
      text.append(
          String.format(Locale.ROOT, "%.9f,%.6f%n", curve.frequencyHz(i), curve.levelDb(i)));
    }
    return text.toString();
  }
}
