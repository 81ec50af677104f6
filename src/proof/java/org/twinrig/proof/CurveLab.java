package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A second simulator, of another physics: smooth random curves and moving resonances, no
 * impedances. What holds on both simulators is not tuned to one of them.
 *
 * <p>On the old fixture a unit shows its kind's mean curve, a tuning of its own (a broad and a fine
 * Gaussian process on logarithmic frequency), resonances whose centre, width and height are its
 * own, and what its leak takes away. On the new fixture the kind's transfer is added, a smooth
 * curve, and a stray of the unit that nothing foretells; the resonances stand at other frequencies
 * and with other heights, by a rule of the kind and a stray of the unit, so that the old curve
 * foretells part of the difference near them; the leak takes more away. Every seating adds a smooth
 * scatter, a skewed leak and the noise of the reading.
 *
 * <p>All parts add in dB, so that every expectation is known in closed form but for one integral
 * over the widths of resonances.
 */
final class CurveLab implements Lab {
  /** A leak in a kind that seals: some ten decibels of deep bass; common practice, no source. */
  static final double LEAKY_DB = 10;

  /** Noise of a reading, dB: some hundredths in a quiet room; common practice, no source. */
  static final double NOISE_DB = 0.05;

  /** Sides of one headphone differ by some tenths of a decibel; common practice, no source. */
  private static final double SIDE_DB = 0.4;

  /** Kinds are what they are, whatever study is drawn. */
  private static final long KINDS_SEED = 40_960_117;

  private static final double MOST_NEPERS = 5;
  private static final int NEPER_STEPS = 100;

  /** Keys of the draws of a kind, of a unit, of its sides and of its seatings. */
  private static final long KIND = 0;

  private static final long UNIT = 1;
  private static final long SIDE = 2;
  private static final long SEATING = 3;

  private final long seed;
  private final double[] hz = new double[POINTS];
  private final double[] octaves = new double[POINTS];
  private final SmoothCurves broad;
  private final SmoothCurves middling;
  private final SmoothCurves fine;
  private final Map<String, Sort> sorts;

  /** A laboratory; equal seeds give equal studies. */
  CurveLab(long seed) {
    this(seed, KINDS_SEED);
  }

  /** The same of other kinds: their mean curves and transfers follow from a seed of their own. */
  CurveLab(long seed, long kindsSeed) {
    this.seed = seed;
    for (int i = 0; i < POINTS; i++) {
      hz[i] = 10 * StrictMath.pow(2200, i / (POINTS - 1.0));
      octaves[i] = StrictMath.log(hz[i]) / StrictMath.log(2);
    }
    broad = new SmoothCurves(octaves, 1);
    middling = new SmoothCurves(octaves, 0.5);
    fine = new SmoothCurves(octaves, 0.2);
    sorts =
        CurveKind.ALL.stream()
            .collect(Collectors.toMap(CurveKind::label, k -> new Sort(k, kindsSeed)));
  }

  @Override
  public String word() {
    return "curves";
  }

  @Override
  public double[] hz() {
    return hz.clone();
  }

  @Override
  public double[] meanTransferDb(String kind) {
    Sort sort = sorts.get(kind);
    return minus(sort.meanDb(true), sort.meanDb(false));
  }

  /** The expectation of a kind's units on the new or the old fixture, dB. */
  double[] meanDb(String kind, boolean onNew) {
    return sorts.get(kind).meanDb(onNew);
  }

  @Override
  public List<Measured> measure(String kind, int units, Build build, long... key) {
    List<Measured> measured = new ArrayList<>();
    for (Unit unit : units(kind, units, build, key)) {
      measured.add(unit.measured(SEATINGS));
    }
    return measured;
  }

  /** The units that {@link #measure} measures. */
  List<Unit> units(String kind, int count, Build build, long... key) {
    Sort sort = sorts.get(kind);
    long draw = Chance.mixed(seed);
    for (long number : key) {
      draw = Chance.mixed(draw ^ number);
    }
    List<Unit> units = new ArrayList<>();
    for (int number = 0; units.size() < count; number++) {
      long own = Chance.mixed(draw ^ Chance.mixed(31L * sort.kind.number() + number));
      double leakDb = build == Build.LEAKY ? LEAKY_DB : 0;
      Unit unit = sort.unit(own, leakDb);
      if (build == Build.BOTH_SIDES) {
        units.add(sort.side(unit, 1));
        units.add(sort.side(unit, 2));
      } else {
        units.add(unit);
      }
    }
    return units;
  }

  /** A factor on a spread: 1 in the middle, others below 200 Hz and above 8 kHz, smoothly. */
  private double[] profile(double low, double high) {
    double[] profile = new double[POINTS];
    Arrays.setAll(
        profile,
        i ->
            1
                + (low - 1) * step(Math.log(200 / hz[i]))
                + (high - 1) * step(Math.log(hz[i] / 8000)));
    return profile;
  }

  private static double step(double nepers) {
    return 1 / (1 + StrictMath.exp(-5 * nepers));
  }

  private static double[] times(double[] some, double by) {
    return Arrays.stream(some).map(v -> v * by).toArray();
  }

  private static double[] minus(double[] some, double[] other) {
    double[] difference = new double[some.length];
    Arrays.setAll(difference, i -> some[i] - other[i]);
    return difference;
  }

  /** A kind on the axis. */
  private final class Sort {
    final CurveKind kind;
    final double[] meanDb = new double[POINTS];
    final double[] transferDb = new double[POINTS];
    final double[] leakShape = new double[POINTS];

    Sort(CurveKind kind, long kindsSeed) {
      this.kind = kind;
      Chance chance = Chance.of(kindsSeed, KIND, kind.number());
      // Kinds are tuned some decibels apart, most in the bass.
      broad.addTo(meanDb, times(profile(1.5, 1.5), 2), chance);
      broad.addTo(transferDb, times(profile(2, 3), kind.transferDb()), chance);
      Arrays.setAll(leakShape, i -> 1 / (1 + (hz[i] / kind.leakHz()) * (hz[i] / kind.leakHz())));
    }

    Unit unit(long own, double leakDb) {
      Chance chance = Chance.of(own, UNIT);
      double[] from = meanDb.clone();
      double levelDb = chance.gaussian(94, 3);
      Arrays.setAll(from, i -> from[i] + levelDb);
      broad.addTo(from, times(profile(1, 1), kind.tuningDb()), chance);
      fine.addTo(from, times(profile(1, 1), kind.detailDb()), chance);
      double[] to = new double[POINTS];
      Arrays.setAll(to, i -> from[i] + transferDb[i]);
      // Fixtures agree best in the middle: cheeks and seals differ below, entrances above.
      middling.addTo(to, times(profile(2, 4), kind.strayDb()), chance);
      for (CurveKind.Resonance resonance : kind.resonances()) {
        double centre = log2(resonance.hz()) + chance.gaussian(0, resonance.octaves());
        double width = resonance.width() * StrictMath.exp(chance.gaussian(0, resonance.nepers()));
        double heightDb = chance.gaussian(resonance.heightDb(), resonance.heightSdDb());
        bump(from, centre, width, heightDb);
        double moved = centre + chance.gaussian(resonance.shift(), resonance.shiftSd());
        double keptDb = chance.gaussian(resonance.kept() * heightDb, resonance.strayDb());
        bump(to, moved, width, keptDb);
      }
      double oldLeak = leakDb + chance.exponential(kind.oldLeakDb());
      double newLeak = kind.leakRatio() * oldLeak + chance.exponential(kind.newLeakDb());
      Arrays.setAll(from, i -> from[i] - oldLeak * leakShape[i]);
      Arrays.setAll(to, i -> to[i] - newLeak * leakShape[i]);
      return new Unit(this, own, from, to);
    }

    /** One side of a headphone: built a little differently, and so on both fixtures alike. */
    Unit side(Unit unit, int side) {
      double[] built = new double[POINTS];
      Chance chance = Chance.of(unit.own, SIDE, side);
      middling.addTo(built, times(profile(1, 2), SIDE_DB), chance);
      double[] from = unit.from.clone();
      double[] to = unit.to.clone();
      Arrays.setAll(from, i -> from[i] + built[i]);
      Arrays.setAll(to, i -> to[i] + built[i]);
      return new Unit(this, unit.own + side, from, to);
    }

    /** The expectation over units and their seatings, but for the level of the unit. */
    double[] meanDb(boolean onNew) {
      double leakDb =
          onNew ? kind.leakRatio() * kind.oldLeakDb() + kind.newLeakDb() : kind.oldLeakDb();
      double[] mean = new double[POINTS];
      Arrays.setAll(
          mean,
          i ->
              94
                  + meanDb[i]
                  + (onNew ? transferDb[i] : 0)
                  - (leakDb + kind.seatLeakDb(onNew)) * leakShape[i]);
      for (CurveKind.Resonance r : kind.resonances()) {
        double centre = log2(r.hz()) + (onNew ? r.shift() : 0);
        double spread = onNew ? Math.hypot(r.octaves(), r.shiftSd()) : r.octaves();
        expectedBump(mean, r, centre, spread, (onNew ? r.kept() : 1) * r.heightDb());
      }
      return mean;
    }
  }

  private static double log2(double hz) {
    return StrictMath.log(hz) / StrictMath.log(2);
  }

  private void bump(double[] levels, double centre, double width, double heightDb) {
    for (int i = 0; i < POINTS; i++) {
      double away = (octaves[i] - centre) / width;
      levels[i] += heightDb * StrictMath.exp(-away * away / 2);
    }
  }

  /** A bump whose centre is normal: wider and lower; its width is log-normal, by the mid-points. */
  private void expectedBump(
      double[] levels, CurveKind.Resonance r, double centre, double spread, double heightDb) {
    double step = 2 * MOST_NEPERS / NEPER_STEPS;
    for (int k = 0; k < NEPER_STEPS; k++) {
      double z = -MOST_NEPERS + (k + 0.5) * step;
      double weight = step * StrictMath.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
      double width = r.width() * StrictMath.exp(z * r.nepers());
      double wider = Math.hypot(width, spread);
      bump(levels, centre, wider, weight * heightDb * width / wider);
    }
  }

  /** A unit whose expectation over seatings is known, but for the leaks of seatings, on both. */
  final class Unit {
    private final Sort sort;
    private final long own;
    private final double[] from;
    private final double[] to;

    private Unit(Sort sort, long own, double[] from, double[] to) {
      this.sort = sort;
      this.own = own;
      this.from = from;
      this.to = to;
    }

    /** The expectation over seatings on the new or the old fixture, dB. */
    double[] trueDb(boolean onNew) {
      double[] levels = new double[POINTS];
      Arrays.setAll(levels, i -> trueDb(onNew, i));
      return levels;
    }

    /** The same at one point. */
    double trueDb(boolean onNew, int point) {
      return (onNew ? to : from)[point] - sort.kind.seatLeakDb(onNew) * sort.leakShape[point];
    }

    Measured measured(int seatings) {
      List<double[]> old = new ArrayList<>();
      List<double[]> now = new ArrayList<>();
      for (int seating = 1; seating <= seatings; seating++) {
        old.add(seated(false, seating));
        now.add(seated(true, seating));
      }
      return new Measured(old, now);
    }

    private double[] seated(boolean onNew, int seating) {
      Chance chance = Chance.of(own, SEATING, onNew ? 1 : 0, seating);
      double[] levels = (onNew ? to : from).clone();
      // Below 200 Hz cushions and tips never sit alike; above 8 kHz millimetres decide.
      middling.addTo(levels, times(profile(3, 4), sort.kind.seatingDb()), chance);
      double leakDb = chance.exponential(sort.kind.seatLeakDb(onNew));
      for (int i = 0; i < POINTS; i++) {
        levels[i] += chance.gaussian(0, NOISE_DB) - leakDb * sort.leakShape[i];
        levels[i] = Math.rint(levels[i] * 100) / 100; // as files print it
      }
      return levels;
    }
  }
}
