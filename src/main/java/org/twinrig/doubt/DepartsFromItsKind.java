package org.twinrig.doubt;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.Neighbourhood;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * Whether a unit's difference between the fixtures departs from that of the other units of its
 * kind: other pads or tips on one of the fixtures, a fault, another kind.
 *
 * <p>Differences are averaged over a third of an octave: {@code d_i(b)} of unit {@code i}, of
 * {@code n} at the band. The departure is {@code r_i = d_i} minus the mean of the others; it is
 * held against the spread of the others, so that a departing unit does not hide itself:
 *
 * <p>{@code t_i(b) = r_i(b) / √(V_i(b)·n/(n-1))}, {@code V_i = N^w · W^(1-w) + 2·max(0, v_i - v̄)}.
 *
 * <p>{@code N} is the variance of the others, averaged over ±1/3 octave. {@code W} is a wider one:
 * the shape of the kind's seating scatter {@code v̄} over frequency times the mean ratio to it over
 * ±3 octaves; units differ where seatings do. Without two seatings it is the mean over ±2 octaves.
 * {@code w = (n-2)/(n+4)}: the wider one counts as six units. {@code v_i} is the sampling variance
 * of the unit's own seatings, averaged over ±1/2 octave, {@code v̄} the kind's: one that never sits
 * alike, mostly since it leaks, differs more from the others without a fault. 0.1 dB are added to
 * all as a standard deviation: units cannot be held to agree better.
 *
 * <p>A unit is doubted where its largest {@code |t_i|} exceeds {@link #limit}, one number for the
 * whole curve and all units of a kind. It was set so that 1 % of kinds without a fault have a unit
 * doubted, by 600 studies each of the impedance simulator on pairs of heads and of the curve
 * simulator with other kinds (three kinds; 5 to 20 units; 1, 2, 3 and 5 seatings). It is set by
 * simulation and not by theory because differences are not normal: leaks skew the bass, and
 * resonances that move have long tails. Statistic, weights and limit are our choice; for the
 * leave-one-out residual see Cook and Weisberg 1982, Residuals and Influence in Regression, 2.2.
 *
 * <p>It cannot find: what is narrower than a third of an octave and not large; what all units of a
 * kind share; two units with the same fault, for each hides the other; a departure within the band
 * of the anchor, which shows as one elsewhere.
 */
public final class DepartsFromItsKind {
  /** The doubt as files name it. */
  public static final String DOUBT = "departs from its kind";

  /** With fewer a limit would ask for more than some ten standard deviations. */
  public static final int FEWEST_UNITS = 5;

  private static final double LEAST_SHARE = 0.9;
  private static final double FLOOR_DB2 = 0.01;
  private static final double WIDER_COUNTS = 6;
  private static final double OWN_COUNTS = 2;

  /** By so much a departure must exceed the limit to be found in 7 of 10 studies. */
  private static final double SEVEN_IN_TEN = 0.9;

  /** Where it is said what would be found: in the bass, the middle and the treble. */
  public static final List<Double> SAID_HZ = List.of(100.0, 2000.0, 8000.0);

  private final PairedUnits paired;
  private final int[] judged;
  private final boolean seated;
  private final Neighbourhood third;
  private final Neighbourhood near;
  private final Neighbourhood half;
  private final Neighbourhood wide;
  private final double[][] differences;

  /** Sampling variance of every unit's difference from its seatings, and the kind's mean, dB². */
  private final double[][] own;

  private final double[] usual;
  private final double limit;
  private final List<Departure> departures;

  /**
   * A unit that departs from its kind.
   *
   * @param bandHz mid-band frequency in Hz where it departs most
   * @param departureDb its difference there less the mean of the other units', over a third of an
   *     octave, dB
   * @param value {@code |t|}, in standard deviations of the other units
   * @param limit that it exceeds
   */
  public record Departure(
      String unit, int others, double bandHz, double departureDb, double value, double limit) {

    Doubt doubt() {
      return Doubt.open(
          Doubt.Subject.UNIT,
          unit,
          "",
          DOUBT,
          new Doubt.Found(deviations(Numbers.against(value, limit, 1)), deviations(limit(limit))),
          ("near %s its difference between the fixtures lies %s dB %s the mean of the other %s units,"
                  + " %s standard deviations (doubted from %s on): other pads or tips on one"
                  + " fixture, or a fault.")
              .formatted(
                  Numbers.hertz(bandHz),
                  Numbers.fixed(Math.abs(departureDb), 1),
                  departureDb > 0 ? "above" : "below",
                  others,
                  Numbers.against(value, limit, 1),
                  limit(limit)),
          "It moves the kind's mean and widens its intervals. Compare its pads or tips on both"
              + " fixtures and capture it again; if it is as it should be, confirm it.");
    }

    private static String limit(double limit) {
      return Numbers.fixed(limit, 1);
    }

    private static String deviations(String number) {
      return number + " standard deviations";
    }
  }

  private DepartsFromItsKind(PairedUnits paired) {
    this.paired = paired;
    int units = paired.units().size();
    judged =
        units < FEWEST_UNITS
            ? new int[0]
            : IntStream.range(0, paired.grid().size())
                .filter(b -> paired.at(b).size() >= Math.max(FEWEST_UNITS, LEAST_SHARE * units))
                .toArray();
    seated =
        judged.length > 0
            && IntStream.of(judged)
                .mapToObj(paired::at)
                .allMatch(s -> s.from().variance().isPresent() && s.to().variance().isPresent());
    differences = new double[units][];
    own = new double[units][];
    int octave = paired.grid().perOctave();
    third = around(octave / 6);
    near = around(octave / 3);
    half = around(octave / 2);
    wide = around((seated ? 3 : 2) * octave);
    for (int i = 0; i < units; i++) {
      Levels from = paired.from().means().get(i);
      differences[i] = averaged(paired.to().means().get(i).minus(from));
      own[i] = new double[paired.grid().size()];
    }
    if (seated) {
      addSeatingVariance(paired.from());
      addSeatingVariance(paired.to());
    }
    usual = new double[paired.grid().size()];
    for (double[] of : own) {
      Arrays.setAll(usual, b -> usual[b] + of[b] / units);
    }
    limit = judged.length == 0 ? 0 : limit(units, seated ? fewestSeatings() : 1);
    departures =
        judged.length == 0
            ? List.of()
            : IntStream.range(0, units).boxed().flatMap(i -> largest(i).stream()).toList();
  }

  /** Judges the units of a kind. */
  public static DepartsFromItsKind of(PairedUnits paired) {
    return new DepartsFromItsKind(paired);
  }

  /**
   * How many standard deviations a unit may depart by.
   *
   * @param seatings of a unit on a fixture; 1 where their scatter is not known
   */
  static double limit(int units, double seatings) {
    return seatings < 2
        ? 7 + 10.5 / (units - 3)
        : 5.6 + 2.4 / (units - 3) + 1.2 / (seatings * seatings);
  }

  /** The kind: its name. */
  public String kind() {
    return paired.kind();
  }

  /** The units that depart, in the order of the study's table. */
  public List<Departure> departures() {
    return departures;
  }

  /** A doubt for every unit that departs. */
  public List<Doubt> doubts() {
    return departures.stream().map(Departure::doubt).toList();
  }

  /**
   * What this study could have found, in a sentence: the size of a departure over a third of an
   * octave that would be found in 7 of 10 such studies, by the spread and number of these units.
   */
  public String couldHaveFound() {
    String units = Numbers.count(paired.units().size(), "unit", "units");
    if (judged.length == 0) {
      return "whether one of the %s departs from the others cannot be judged: that takes %s"
          .formatted(units, FEWEST_UNITS);
    }
    List<String> sizes =
        SAID_HZ.stream()
            .filter(this::reaches)
            .map(hz -> "%s dB near %s".formatted(Numbers.fixed(foundDb(hz), 1), Numbers.hertz(hz)))
            .collect(Collectors.toList());
    if (sizes.isEmpty()) {
      double hz = midHz(judged[judged.length / 2]);
      sizes.add("%s dB near %s".formatted(Numbers.fixed(foundDb(hz), 1), Numbers.hertz(hz)));
    }
    String last = sizes.remove(sizes.size() - 1);
    return ("with %s, other pads or tips that move the difference over a third of an octave by %s"
            + " would be found in 7 of 10 studies")
        .formatted(units, sizes.isEmpty() ? last : String.join(", ", sizes) + " or " + last);
  }

  /**
   * The size of a departure over a third of an octave about a frequency that would be found in 7 of
   * 10 studies, dB; of the nearest band that is judged, of a kind of five or more units.
   */
  public double foundDb(double hz) {
    int band = nearest(hz);
    int n = paired.units().size();
    double[] variances = new double[paired.grid().size()];
    for (int b : judged) {
      double[] at = at(b, -1);
      double mean = DoubleStream.of(at).average().orElseThrow();
      variances[b] =
          DoubleStream.of(at).map(d -> (d - mean) * (d - mean)).sum() / (at.length - 1) + FLOOR_DB2;
    }
    double sdDb = Math.sqrt(steadied(variances, n - 1)[band]);
    return sdDb * (limit * Math.sqrt(n / (n - 1.0)) + SEVEN_IN_TEN);
  }

  /** Whether judged bands reach to a third of an octave about a frequency. */
  private boolean reaches(double hz) {
    return Math.abs(Math.log(midHz(nearest(hz)) / hz)) < Math.log(2) / 6;
  }

  /** The judged band whose middle is nearest to a frequency. */
  private int nearest(double hz) {
    int nearest = judged[0];
    for (int b : judged) {
      if (Math.abs(Math.log(midHz(b) / hz)) < Math.abs(Math.log(midHz(nearest) / hz))) {
        nearest = b;
      }
    }
    return nearest;
  }

  private double midHz(int band) {
    return paired.grid().band(band).midHz();
  }

  private Neighbourhood around(int reach) {
    boolean[] counts = new boolean[paired.grid().size()];
    for (int b : judged) {
      counts[b] = true;
    }
    return Neighbourhood.of(counts.length, b -> counts[b], reach);
  }

  /** NaN where a level in reach is missing. */
  private double[] averaged(Levels levels) {
    double[] raw = new double[paired.grid().size()];
    Arrays.setAll(raw, b -> levels.level(b).orElse(Double.NaN));
    return mean(third, raw);
  }

  /** The mean around every judged band. */
  private double[] mean(Neighbourhood around, double[] values) {
    double[] means = new double[values.length];
    for (int b : judged) {
      means[b] = around.mean(b, values);
    }
    return means;
  }

  /** Of a unit seated twice its own, of others the kind's, over how often it was seated. */
  private void addSeatingVariance(PairedUnits.OnFixture fixture) {
    int units = paired.units().size();
    double[][] squares = new double[units][paired.grid().size()];
    int[][] counts = new int[units][paired.grid().size()];
    for (int i = 0; i < units; i++) {
      List<double[]> curves = fixture.curves().get(i).stream().map(c -> averaged(c)).toList();
      for (int b : judged) {
        double[] at =
            curves.stream().mapToDouble(c -> c[b]).filter(v -> !Double.isNaN(v)).toArray();
        double mean = DoubleStream.of(at).average().orElse(0);
        squares[i][b] = DoubleStream.of(at).map(v -> (v - mean) * (v - mean)).sum();
        counts[i][b] = at.length;
      }
    }
    for (int b : judged) {
      double all = 0;
      int freedom = 0;
      for (int i = 0; i < units; i++) {
        all += squares[i][b];
        freedom += Math.max(0, counts[i][b] - 1);
      }
      for (int i = 0; i < units; i++) {
        int m = Math.max(1, counts[i][b]);
        double variance = m > 1 ? squares[i][b] / (m - 1) : all / Math.max(1, freedom);
        own[i][b] += variance / m;
      }
    }
  }

  /** Harmonic mean of the units' seatings on the fixture where it is less. */
  private double fewestSeatings() {
    return IntStream.of(judged)
        .mapToObj(paired::at)
        .mapToDouble(s -> Math.min(s.from().harmonicMean(), s.to().harmonicMean()))
        .min()
        .orElseThrow();
  }

  /** The differences at a band of all units that have one, but for one. */
  private double[] at(int band, int butFor) {
    return IntStream.range(0, differences.length)
        .filter(i -> i != butFor)
        .mapToDouble(i -> differences[i][band])
        .filter(d -> !Double.isNaN(d))
        .toArray();
  }

  /** {@code N^w · W^(1-w)} of variances with so many degrees of freedom. */
  private double[] steadied(double[] variances, int freedom) {
    double[] shape = new double[variances.length];
    Arrays.fill(shape, 1);
    if (seated) {
      double[] smooth = mean(third, usual);
      Arrays.setAll(shape, b -> smooth[b] + FLOOR_DB2 / 4);
    }
    double[] ratios = new double[variances.length];
    Arrays.setAll(ratios, b -> variances[b] / shape[b]);
    double[] narrow = mean(near, variances);
    double[] broad = mean(wide, ratios);
    double w = freedom / (freedom + WIDER_COUNTS);
    double[] steadied = new double[variances.length];
    for (int b : judged) {
      steadied[b] = StrictMath.pow(narrow[b], w) * StrictMath.pow(shape[b] * broad[b], 1 - w);
    }
    return steadied;
  }

  /** The largest departure of a unit, if it exceeds the limit. */
  private List<Departure> largest(int unit) {
    double[] departures = new double[paired.grid().size()];
    double[] variances = new double[departures.length];
    for (int b : judged) {
      double[] others = at(b, unit);
      double mean = DoubleStream.of(others).average().orElseThrow();
      departures[b] = differences[unit][b] - mean;
      variances[b] =
          DoubleStream.of(others).map(d -> (d - mean) * (d - mean)).sum() / (others.length - 1)
              + FLOOR_DB2;
    }
    double[] steadied = steadied(variances, differences.length - 2);
    double[] seating = mean(half, own[unit]);
    double[] kinds = mean(half, usual);
    Departure largest = null;
    for (int b : judged) {
      int others = at(b, unit).length;
      double variance = steadied[b] + OWN_COUNTS * Math.max(0, seating[b] - kinds[b]);
      double t = Math.abs(departures[b]) / Math.sqrt(variance * (others + 1.0) / others);
      if (t > (largest == null ? limit : largest.value)) {
        largest =
            new Departure(paired.units().get(unit), others, midHz(b), departures[b], t, limit);
      }
    }
    return largest == null ? List.of() : List.of(largest);
  }
}
