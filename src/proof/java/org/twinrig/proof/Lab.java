package org.twinrig.proof;

import java.util.Arrays;
import java.util.List;

/**
 * A simulated laboratory that measures headphones on an old and on a new fixture, whatever physics
 * it rests on. Curves are levels in dB on the laboratory's own frequency axis.
 */
interface Lab {
  /** Points of every curve: coarse enough to be quick, closer than the bands. */
  int POINTS = 140;

  /** Seatings of every unit on each fixture. */
  int SEATINGS = 5;

  /** The kinds every laboratory has. */
  List<String> KINDS = List.of("open over-ear", "closed over-ear", "in-ear");

  /** What is particular about the units that are drawn. */
  enum Build {
    /** One side each, as they should be. */
    USUAL,
    /** Left and right of half as many headphones, side by side. */
    BOTH_SIDES,
    /** Leaky: a worn pad, a tip too small. Only kinds that seal can be. */
    LEAKY
  }

  /**
   * A unit as measured.
   *
   * @param from one curve per seating on the old fixture
   * @param to one curve per seating on the new one
   */
  record Measured(List<double[]> from, List<double[]> to) {
    public Measured {
      from = List.copyOf(from);
      to = List.copyOf(to);
    }

    /** The same unit with something added to every curve of a fixture, dB. */
    Measured plus(double[] fromDb, double[] toDb) {
      return new Measured(
          from.stream().map(c -> sum(c, fromDb)).toList(),
          to.stream().map(c -> sum(c, toDb)).toList());
    }

    /** The mean of the first curves. */
    static double[] mean(List<double[]> curves, int first) {
      double[] mean = new double[curves.get(0).length];
      for (double[] curve : curves.subList(0, first)) {
        Arrays.setAll(mean, i -> mean[i] + curve[i] / first);
      }
      return mean;
    }

    private static double[] sum(double[] some, double[] more) {
      double[] sum = new double[some.length];
      Arrays.setAll(sum, i -> some[i] + more[i]);
      return sum;
    }
  }

  /** As tables write it. */
  String word();

  /** The frequency axis, Hz. */
  double[] hz();

  /**
   * Draws units and measures them.
   *
   * @param key numbers that tell this draw from all others; the same key gives the same units
   */
  List<Measured> measure(String kind, int units, Build build, long... key);

  /** What a kind's units have in common: the expectation of new minus old, dB. */
  double[] meanTransferDb(String kind);
}
