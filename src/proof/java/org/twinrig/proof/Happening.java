package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;

/**
 * What goes on in a laboratory, whatever simulator draws it: with the units of its study, and with
 * the new units whose old graphs are re-expressed.
 *
 * @param word as tables write it
 */
record Happening(String word, OfStudy study, OfGraphs graphs) {
  /** Every happening; the first is as it should be. */
  static final List<Happening> ALL =
      List.of(
          new Happening("ideal", OfStudy.USUAL, OfGraphs.USUAL),
          new Happening("heavy tails", OfStudy.HEAVY_TAILS, OfGraphs.USUAL),
          new Happening("two sorts in a kind", OfStudy.TWO_SORTS, OfGraphs.USUAL),
          new Happening("one unit mislabelled", OfStudy.MISLABELLED, OfGraphs.USUAL),
          new Happening("left and right as two units", OfStudy.SIDES, OfGraphs.USUAL),
          new Happening("slow drift", OfStudy.DRIFT, OfGraphs.USUAL),
          new Happening("noisy old graphs", OfStudy.USUAL, OfGraphs.NOISY),
          new Happening("one seating stated", OfStudy.USUAL, OfGraphs.ONE_SEATING),
          new Happening("one seating not stated", OfStudy.USUAL, OfGraphs.ONE_NOT_STATED),
          new Happening("louder treble", OfStudy.USUAL, OfGraphs.LOUDER_TREBLE),
          new Happening("leaky among sealed", OfStudy.USUAL, OfGraphs.LEAKY));

  /** What goes on with a study. */
  enum OfStudy {
    /** Nothing. */
    USUAL,
    /** Units depart from their kind's transfer as Student's t with three degrees of freedom. */
    HEAVY_TAILS,
    /** Open and closed headphones, evenly many, are called one kind. */
    TWO_SORTS,
    /** One of the closed headphones is an open one, and one of the open a closed one. */
    MISLABELLED,
    /** The two sides of half as many headphones are called units. */
    SIDES,
    /** The chain of the new fixture drifts while the units are measured on it. */
    DRIFT
  }

  /** What goes on with old graphs. */
  enum OfGraphs {
    /** They average as many seatings as the study, and the catalogue says so. */
    USUAL,
    /** Every point has a noise of its own. */
    NOISY,
    /** They average one seating, and the catalogue says so. */
    ONE_SEATING,
    /** They average one seating, and the catalogue is silent. */
    ONE_NOT_STATED,
    /** The units have more treble than any of the study's, on both fixtures alike. */
    LOUDER_TREBLE,
    /** The units leak, and those of the study do not. */
    LEAKY
  }

  /** Kinds that a leak makes a difference to. */
  private static final List<String> SEALED = List.of("closed over-ear", "in-ear");

  private static final String OPEN = "open over-ear";
  private static final String CLOSED = "closed over-ear";

  /** Noise of a point of a graph read off a print; common practice, no source. */
  private static final double POINT_NOISE_DB = 1.5;

  private static final double TREBLE_DB = 6;
  private static final double TREBLE_HZ = 5000;

  /** From the first unit to the last; some tenths a week, common practice, no source. */
  private static final double DRIFT_DB = -1;

  private static final double DRIFT_BELOW_HZ = 100;
  private static final double DRIFT_ABOVE_HZ = 4000;

  /** Keys of the draws, beside the study's number. */
  private static final long UNITS = 1;

  private static final long NEW_UNITS = 2;
  private static final long OTHERS = 3;
  private static final long FACTORS = 4;
  private static final long NEW_FACTORS = 5;
  private static final long NOISE = 6;

  /** A study's number, and how many units of each kind it has. */
  record Draw(Lab lab, long seed, int units, long study) {
    private List<Measured> measure(String kind, int count, Build build, long which) {
      return count == 0 ? List.of() : lab.measure(kind, count, build, units, study, which);
    }
  }

  /** The new unit's old graph, and what the new fixture shows. */
  @SuppressWarnings("ArrayRecordComponent") // curves on the laboratory's axis, never compared
  record NewGraph(String kind, double[] fromDb, OptionalInt seatings, double[] toDb) {}

  /** The units of the study, by kind. */
  static Map<String, List<Measured>> units(OfStudy what, Draw draw) {
    Map<String, List<Measured>> units = new TreeMap<>();
    int n = draw.units;
    if (what == OfStudy.TWO_SORTS) {
      List<Measured> both = new ArrayList<>(draw.measure(OPEN, n / 2, Build.USUAL, UNITS));
      both.addAll(draw.measure(CLOSED, n - n / 2, Build.USUAL, UNITS));
      units.put("over-ear", both);
      return units;
    }
    Build build = what == OfStudy.SIDES ? Build.BOTH_SIDES : Build.USUAL;
    for (String kind : what == OfStudy.MISLABELLED ? List.of(OPEN, CLOSED) : Lab.KINDS) {
      List<Measured> drawn = new ArrayList<>(draw.measure(kind, n, build, UNITS));
      for (int i = 0; i < n; i++) {
        drawn.set(i, changed(what, draw, kind, drawn.get(i), i));
      }
      if (what == OfStudy.MISLABELLED) {
        String other = kind.equals(OPEN) ? CLOSED : OPEN;
        drawn.set(0, draw.measure(other, 1, Build.USUAL, OTHERS).get(0));
      }
      units.put(kind, drawn);
    }
    return units;
  }

  private static Measured changed(OfStudy what, Draw draw, String kind, Measured unit, int i) {
    return switch (what) {
      case HEAVY_TAILS -> heavy(draw, kind, unit, FACTORS, i);
      case DRIFT -> unit.plus(new double[Lab.POINTS], drift(draw.lab, i / (draw.units - 1.0)));
      default -> unit;
    };
  }

  /**
   * New units of a study, and their old graphs.
   *
   * @param perKind how many of each kind; of two sorts in a kind, of each sort
   */
  List<NewGraph> newGraphs(Draw draw, int perKind) {
    List<NewGraph> made = new ArrayList<>();
    units(study, draw)
        .keySet()
        .forEach(
            kind -> {
              List<Measured> drawn = newUnits(draw, kind, perKind);
              for (int i = 0; i < drawn.size(); i++) {
                made.add(graph(draw, kind, drawn.get(i), i));
              }
            });
    return made;
  }

  private List<Measured> newUnits(Draw draw, String kind, int count) {
    if (graphs == OfGraphs.LEAKY) {
      return draw.measure(kind, SEALED.contains(kind) ? count : 0, Build.LEAKY, NEW_UNITS);
    }
    if (study == OfStudy.TWO_SORTS) {
      List<Measured> both = new ArrayList<>(draw.measure(OPEN, count, Build.USUAL, NEW_UNITS));
      both.addAll(draw.measure(CLOSED, count, Build.USUAL, NEW_UNITS));
      return both;
    }
    List<Measured> drawn = draw.measure(kind, count, Build.USUAL, NEW_UNITS);
    if (study != OfStudy.HEAVY_TAILS) {
      return drawn;
    }
    List<Measured> changed = new ArrayList<>();
    for (int i = 0; i < drawn.size(); i++) {
      changed.add(heavy(draw, kind, drawn.get(i), NEW_FACTORS, i));
    }
    return changed;
  }

  private NewGraph graph(Draw draw, String kind, Measured unit, int number) {
    boolean one = graphs == OfGraphs.ONE_SEATING || graphs == OfGraphs.ONE_NOT_STATED;
    double[] from = Measured.mean(unit.from(), one ? 1 : Lab.SEATINGS);
    double[] to = Measured.mean(unit.to(), Lab.SEATINGS);
    Chance chance = Chance.of(draw.seed, draw.units, draw.study, NOISE, kind.hashCode(), number);
    double[] hz = draw.lab.hz();
    for (int i = 0; i < hz.length; i++) {
      if (graphs == OfGraphs.NOISY) {
        from[i] += chance.gaussian(0, POINT_NOISE_DB);
      } else if (graphs == OfGraphs.LOUDER_TREBLE) {
        double treble = TREBLE_DB * above(hz[i], TREBLE_HZ);
        from[i] += treble;
        to[i] += treble;
      }
    }
    return new NewGraph(
        kind,
        from,
        graphs == OfGraphs.ONE_NOT_STATED
            ? OptionalInt.empty()
            : OptionalInt.of(one ? 1 : Lab.SEATINGS),
        to);
  }

  /** The unit departs so many times as far from its kind's transfer. */
  private static Measured heavy(Draw draw, String kind, Measured unit, long which, int number) {
    double factor =
        Chance.of(draw.seed, draw.units, draw.study, which, kind.hashCode(), number).heavyFactor();
    double[] mean = draw.lab.meanTransferDb(kind);
    double[] from = Measured.mean(unit.from(), Lab.SEATINGS);
    double[] to = Measured.mean(unit.to(), Lab.SEATINGS);
    // Levels of units are their own, and no matter: they depart in shape only.
    double level = level(draw.lab, to) - level(draw.lab, from) - level(draw.lab, mean);
    double[] more = new double[mean.length];
    Arrays.setAll(more, i -> (factor - 1) * (to[i] - from[i] - mean[i] - level));
    return unit.plus(new double[more.length], more);
  }

  /** The mean level about the default anchor. */
  private static double level(Lab lab, double[] curve) {
    double[] hz = lab.hz();
    double sum = 0;
    int count = 0;
    for (int i = 0; i < hz.length; i++) {
      if (hz[i] >= 300 && hz[i] <= 1000) {
        sum += curve[i];
        count++;
      }
    }
    return sum / count;
  }

  private static double[] drift(Lab lab, double share) {
    double[] hz = lab.hz();
    double[] drift = new double[hz.length];
    Arrays.setAll(
        drift,
        i -> share * DRIFT_DB * (above(hz[i], DRIFT_ABOVE_HZ) + 1 - above(hz[i], DRIFT_BELOW_HZ)));
    return drift;
  }

  /** From 0 well below a frequency to 1 well above, within an octave. */
  private static double above(double hz, double cornerHz) {
    return 1 / (1 + StrictMath.pow(cornerHz / hz, 6));
  }
}
