package org.twinrig.doubt;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.regression.Neighbourhood;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * One curve {@code d_i(b)} of every unit of a kind, made of its difference between the fixtures,
 * and how far each departs from the others' at every band:
 *
 * <p>{@code t_i = r_i / √(V_i·n/(n-1))}, {@code V_i = N^w · W^(1-w) + 2·max(0, v_i - v̄)}.
 *
 * <p>{@code r_i} is {@code d_i} less the mean of the others, and {@code V_i} comes from the others,
 * so that a departing unit does not hide itself. {@code N} is their variance averaged over ±1/3
 * octave. {@code W} is a wider one: the shape that the kind's seating variance {@code v̄} has over
 * frequency times the mean ratio to it over ±3 octaves, for units differ where seatings do; without
 * two seatings the mean over ±2 octaves. {@code w = (n-2)/(n+4)}: the wider one counts as six
 * units. {@code v_i} is the sampling variance of the curve from the unit's own seatings, {@code v̄}
 * its mean over the kind, both averaged over ±1/2 octave: a unit that never sits alike, mostly
 * since it leaks, differs more from the others without a fault. Units cannot be held to agree
 * better than 0.1 dB, which is added as a standard deviation.
 *
 * <p>Sources: Cook and Weisberg 1982, Residuals and Influence in Regression, 2.2, for the residual
 * against the others; weights and widths are our choice, by simulated studies of other fixtures and
 * kinds than the proof's: they found most at equal false accusations.
 */
final class DepartureCurves {
  private static final double FLOOR_DB2 = 0.01;
  private static final double WIDER_COUNTS = 6;
  private static final double OWN_COUNTS = 2;

  private final int[] judged;

  /** The bands whose levels count, which may be more. */
  private final BitSet counts;

  private final int bands;
  private final int perOctave;
  private final boolean seated;
  private final boolean againstSides;

  /** Of every band the bands below and above that it is held against. */
  private final int[][][] sides;

  private final Neighbourhood third;
  private final Neighbourhood near;
  private final Neighbourhood half;
  private final Neighbourhood wide;

  /** NaN where a level is missing within reach. */
  private final double[][] curves;

  /** Sampling variance of every curve from seatings, and the kind's mean, dB². */
  private final double[][] own;

  private final double[] usual;

  /** Where a unit departs most: in dB, and in standard deviations without sign. */
  record Place(int band, int others, double departureDb, double value) {}

  /**
   * The curves of a kind.
   *
   * @param judged the bands that count
   * @param seated whether the scatter of seatings is known on both fixtures
   * @param againstSides less the mean of what lies half an octave to an octave below and above
   */
  DepartureCurves(PairedUnits paired, int[] judged, boolean seated, boolean againstSides) {
    bands = paired.grid().size();
    perOctave = paired.grid().perOctave();
    counts = new BitSet();
    IntStream.of(judged).forEach(counts::set);
    sides = new int[bands][][];
    Arrays.setAll(sides, b -> new int[][] {side(b, -1), side(b, 1)});
    this.seated = seated;
    this.againstSides = againstSides;
    third = Neighbourhood.of(bands, counts::get, perOctave / 6);
    int units = paired.units().size();
    curves = new double[units][];
    own = new double[units][bands];
    for (int i = 0; i < units; i++) {
      curves[i] = curve(paired.to().means().get(i).minus(paired.from().means().get(i)));
    }
    // Holes, and the ends of short ranges, leave too few curves to hold one against the others.
    this.judged =
        IntStream.of(judged)
            .filter(b -> 2 * known(Arrays.asList(curves), b, -1).length > units)
            .toArray();
    BitSet reached = new BitSet();
    IntStream.of(this.judged).forEach(reached::set);
    near = Neighbourhood.of(bands, reached::get, perOctave / 3);
    half = Neighbourhood.of(bands, reached::get, perOctave / 2);
    wide = Neighbourhood.of(bands, reached::get, (seated ? 3 : 2) * perOctave);
    if (seated) {
      addSeatingVariance(paired.from());
      addSeatingVariance(paired.to());
    }
    usual = new double[bands];
    for (double[] of : own) {
      Arrays.setAll(usual, b -> usual[b] + of[b] / units);
    }
  }

  private double[] curve(Levels levels) {
    double[] raw = new double[bands];
    Arrays.setAll(raw, b -> levels.level(b).orElse(Double.NaN));
    double[] curve = new double[bands];
    counts.stream()
        .forEach(b -> curve[b] = third.mean(b, raw) - (againstSides ? sides(raw, b) : 0));
    return curve;
  }

  /** The bands half an octave to an octave below ({@code sign} -1) or above (1) a band. */
  private int[] side(int band, int sign) {
    return IntStream.rangeClosed(Math.max(1, perOctave / 2), perOctave)
        .map(k -> band + sign * k)
        .filter(b -> b >= 0 && counts.get(b))
        .toArray();
  }

  /** At the ends of the range one side stands for both; NaN where there is none. */
  private double sides(double[] raw, int band) {
    double below = mean(raw, sides[band][0]);
    double above = mean(raw, sides[band][1]);
    return sides[band][0].length == 0
        ? above
        : sides[band][1].length == 0 ? below : (below + above) / 2;
  }

  private static double mean(double[] values, int[] at) {
    double sum = 0;
    for (int b : at) {
      sum += values[b];
    }
    return sum / at.length;
  }

  /** The mean around every judged band. */
  private double[] mean(Neighbourhood around, double[] values) {
    double[] means = new double[bands];
    for (int b : judged) {
      means[b] = around.mean(b, values);
    }
    return means;
  }

  /** Of a unit seated twice its own, of others the kind's, over how often it was seated. */
  private void addSeatingVariance(PairedUnits.OnFixture fixture) {
    List<List<double[]>> seatings =
        fixture.curves().stream().map(u -> u.stream().map(this::curve).toList()).toList();
    for (int b : judged) {
      int band = b;
      List<double[]> at = seatings.stream().map(u -> known(u, band, -1)).toList();
      double squares = at.stream().mapToDouble(DepartureCurves::squares).sum();
      int freedom = at.stream().mapToInt(u -> Math.max(0, u.length - 1)).sum();
      for (int i = 0; i < own.length; i++) {
        int m = at.get(i).length;
        double variance = m > 1 ? squares(at.get(i)) / (m - 1) : squares / Math.max(1, freedom);
        own[i][b] += variance / Math.max(1, m);
      }
    }
  }

  /** What curves have at a band, but for one of them and those without a level. */
  private static double[] known(List<double[]> curves, int band, int butFor) {
    double[] known = new double[curves.size()];
    int count = 0;
    for (int i = 0; i < known.length; i++) {
      double value = curves.get(i)[band];
      if (i != butFor && !Double.isNaN(value)) {
        known[count++] = value;
      }
    }
    return Arrays.copyOf(known, count);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private static double squares(double[] values) {
    double mean = mean(values);
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return squares;
  }

  /** {@code N^w · W^(1-w)} of the variances of all units, or of all but one. */
  private double[] variances(int butFor) {
    double[] shape = new double[bands];
    Arrays.fill(shape, 1);
    if (seated) {
      double[] smooth = mean(third, usual);
      Arrays.setAll(shape, b -> smooth[b] + FLOOR_DB2 / 4);
    }
    double[] variances = new double[bands];
    double[] ratios = new double[bands];
    for (int b : judged) {
      double[] at = known(Arrays.asList(curves), b, butFor);
      variances[b] = squares(at) / (at.length - 1) + FLOOR_DB2;
      ratios[b] = variances[b] / shape[b];
    }
    double[] narrow = mean(near, variances);
    double[] broad = mean(wide, ratios);
    int freedom = curves.length - (butFor < 0 ? 1 : 2);
    double w = freedom / (freedom + WIDER_COUNTS);
    for (int b : judged) {
      variances[b] = StrictMath.pow(narrow[b], w) * StrictMath.pow(shape[b] * broad[b], 1 - w);
    }
    return variances;
  }

  /** The bands at which more than half of the units have a curve, rising. */
  int[] judged() {
    return judged.clone();
  }

  /** Standard deviation of the kind's curves at a band, dB; infinite where they do not reach. */
  double spreadDb(int band) {
    return IntStream.of(judged).anyMatch(b -> b == band)
        ? Math.sqrt(variances(-1)[band])
        : Double.POSITIVE_INFINITY;
  }

  /** Where a unit departs most from the others; nothing where it has no curve. */
  Optional<Place> largest(int unit) {
    double[] variances = variances(unit);
    double[] seating = mean(half, own[unit]);
    double[] kinds = mean(half, usual);
    Place largest = null;
    for (int b : judged) {
      double[] others = known(Arrays.asList(curves), b, unit);
      double departureDb = curves[unit][b] - mean(others);
      double variance = variances[b] + OWN_COUNTS * Math.max(0, seating[b] - kinds[b]);
      double n = others.length + 1.0;
      double t = Math.abs(departureDb) / Math.sqrt(variance * n / (n - 1));
      if (t > (largest == null ? 0 : largest.value)) {
        largest = new Place(b, others.length, departureDb, t);
      }
    }
    return Optional.ofNullable(largest);
  }
}
