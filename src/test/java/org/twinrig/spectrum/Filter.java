package org.twinrig.spectrum;

import java.util.ArrayList;
import java.util.List;

/**
 * A chain of peaking sections whose response is known in closed form: R. Bristow-Johnson, audio
 * equaliser cookbook (from memory; scipy's values for such a section stand beside in the reference
 * folder). {@code H(z) = Π (b0 + b1/z + b2/z²)/(a0 + a1/z + a2/z²)}.
 */
public final class Filter {
  private record Section(double b0, double b1, double b2, double a1, double a2) {}

  private final double rateHz;
  private final List<Section> sections = new ArrayList<>();

  public Filter(double rateHz) {
    this.rateHz = rateHz;
  }

  public Filter peak(double hz, double q, double gainDb) {
    double w = 2 * Math.PI * hz / rateHz;
    double a = Math.pow(10, gainDb / 40);
    double alpha = Math.sin(w) / (2 * q);
    double a0 = 1 + alpha / a;
    double cos = -2 * Math.cos(w);
    sections.add(
        new Section(
            (1 + alpha * a) / a0, cos / a0, (1 - alpha * a) / a0, cos / a0, (1 - alpha / a) / a0));
    return this;
  }

  /** What comes out when samples go in. */
  public double[] apply(double[] in) {
    double[] out = in.clone();
    for (Section s : sections) {
      double first = 0;
      double second = 0;
      for (int i = 0; i < out.length; i++) {
        double x = out[i];
        double y = s.b0 * x + first;
        first = s.b1 * x - s.a1 * y + second;
        second = s.b2 * x - s.a2 * y;
        out[i] = y;
      }
    }
    return out;
  }

  public double levelDb(double hz) {
    double w = 2 * Math.PI * hz / rateHz;
    double db = 0;
    for (Section s : sections) {
      db += power(w, s.b0, s.b1, s.b2) - power(w, 1, s.a1, s.a2);
    }
    return db;
  }

  private static double power(double w, double c0, double c1, double c2) {
    double real = c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w);
    double imaginary = c1 * Math.sin(w) + c2 * Math.sin(2 * w);
    return 10 * Math.log10(real * real + imaginary * imaginary);
  }
}
