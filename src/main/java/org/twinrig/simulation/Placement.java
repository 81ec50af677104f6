package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * How one good seating falls out, as six independent standard normal numbers: how tight the seal
 * came out, how deep a tip or a canal ended up, up or down and forward or backward against the ear,
 * how hard it is pressed on, and how the cross modes of the cavity were struck.
 */
record Placement(
    double leak, double depth, double height, double tilt, double press, double cavity) {

  private static final int VARIATES = 6;

  static Placement draw(Draws draws) {
    double[] z = new double[VARIATES];
    for (int i = 0; i < VARIATES; i++) {
      z[i] = draws.gaussian();
    }
    return of(z);
  }

  /**
   * Seatings that fill their distribution evenly, so that few of them give a mean: a Kronecker
   * lattice with a random shift, each coordinate {@code frac(shift + i·g^-(k+1))} with {@code g}
   * the root of {@code g^7 = g + 1} (the golden ratio's cousin in six dimensions), turned into
   * normals by their quantiles.
   */
  static List<Placement> even(int count, Draws draws) {
    double[] shift = new double[VARIATES];
    for (int k = 0; k < VARIATES; k++) {
      shift[k] = draws.uniform();
    }
    List<Placement> placements = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      double[] z = new double[VARIATES];
      double step = 1;
      for (int k = 0; k < VARIATES; k++) {
        step /= 1.1127756842787055;
        double place = shift[k] + i * step;
        double u = place - Math.floor(place);
        z[k] = NormalQuantile.of(Math.max(2.4e-4, Math.min(1 - 2.4e-4, u)));
      }
      placements.add(of(z));
    }
    return placements;
  }

  /** The same seating as its other side has it: 0.64 of the variance is the headband's. */
  Placement otherSide(Placement own) {
    return new Placement(
        0.8 * leak + 0.6 * own.leak,
        0.8 * depth + 0.6 * own.depth,
        0.8 * height + 0.6 * own.height,
        0.8 * tilt + 0.6 * own.tilt,
        0.8 * press + 0.6 * own.press,
        0.8 * cavity + 0.6 * own.cavity);
  }

  private static Placement of(double[] z) {
    return new Placement(z[0], z[1], z[2], z[3], z[4], z[5]);
  }
}
