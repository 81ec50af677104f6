package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/**
 * One unit's difference between the fixtures against those of the other units of its kind: an eye
 * that knows the unit sees what no test may claim.
 */
public final class UnitFigure {
  /** Of fewer others a standard deviation says nothing. */
  private static final int LEAST_OTHERS = 3;

  /** A notch that moved would squeeze everything else. */
  private static final double WIDEST_DB = 20;

  private final List<Band> bands;

  /** Differences between the fixtures, dB, unit by unit; NaN where a unit has no level. */
  private final double[][] differences;

  private final int unit;
  private final double[] mean;
  private final double[] sd;

  private UnitFigure(PairedUnits kind, int unit) {
    this.bands = kind.grid().bands();
    this.unit = unit;
    this.differences =
        IntStream.range(0, kind.units().size())
            .mapToObj(i -> difference(kind.from().means().get(i), kind.to().means().get(i)))
            .toArray(double[][]::new);
    this.mean = new double[bands.size()];
    this.sd = new double[bands.size()];
    for (int b = 0; b < bands.size(); b++) {
      ofTheOthers(b);
    }
  }

  private static double[] difference(Levels from, Levels to) {
    return IntStream.range(0, from.grid().size())
        .mapToDouble(b -> from.has(b) && to.has(b) ? to.db(b) - from.db(b) : Double.NaN)
        .toArray();
  }

  private void ofTheOthers(int band) {
    double[] others =
        IntStream.range(0, differences.length)
            .filter(i -> i != unit)
            .mapToDouble(i -> differences[i][band])
            .filter(v -> !Double.isNaN(v))
            .toArray();
    double middle = IntStream.range(0, others.length).mapToDouble(k -> others[k]).sum();
    mean[band] = others.length < LEAST_OTHERS ? Double.NaN : middle / others.length;
    double squares = 0;
    for (double other : others) {
      squares += (other - mean[band]) * (other - mean[band]);
    }
    sd[band] = Math.sqrt(squares / (others.length - 1));
  }

  /**
   * Draws a unit of a kind; nothing where the kind has no unit of this name, or no band of it has
   * three others to hold it against.
   */
  public static Optional<Figure> of(PairedUnits kind, String unit, Caption caption) {
    int at = kind.units().indexOf(unit);
    if (at < 0) {
      return Optional.empty();
    }
    UnitFigure drawn = new UnitFigure(kind, at);
    return drawn.farthest() < 0 ? Optional.empty() : Optional.of(drawn.figure(unit, caption));
  }

  private Figure figure(String name, Caption caption) {
    double[] hz = Values.of(bands, Band::midHz);
    double[] low = IntStream.range(0, mean.length).mapToDouble(b -> mean[b] - 2 * sd[b]).toArray();
    double[] high = IntStream.range(0, mean.length).mapToDouble(b -> mean[b] + 2 * sd[b]).toArray();
    Plot plot = Plot.overFrequency(axis(low, high)).area(hz, low, high, "± 2 SD of the others");
    String others = "other units";
    for (int i = 0; i < differences.length; i++) {
      if (i != unit) {
        plot.line(hz, differences[i], new Ink.Pen(Ink.UNIT, Ink.THIN), others);
        others = "";
      }
    }
    plot.line(hz, mean, Ink.OLD, "their mean").line(hz, differences[unit], Ink.ESTIMATE, name);
    String counted =
        "%s, against %s; each line: mean of a unit's seatings"
            .formatted(
                caption.kind(), Numbers.count(differences.length - 1, "other unit", "other units"));
    return new Sheet(title(name), counted, caption.fingerprint())
        .overFrequency(plot, List.of())
        .figure(Figure.nameOf("unit", name), alt(name));
  }

  private Axis axis(double[] low, double[] high) {
    double lowest = Values.least(Values.least(-2, low), differences);
    double highest = Values.greatest(Values.greatest(2, high), differences);
    return Axis.differences(
        "New minus old, dB", Math.max(-WIDEST_DB, lowest), Math.min(WIDEST_DB, highest));
  }

  /** The band where the unit is farthest from the mean of the others; -1 where there is none. */
  private int farthest() {
    int most = -1;
    for (int b = 0; b < mean.length; b++) {
      double away = Math.abs(awayDb(b));
      if (!Double.isNaN(away) && (most < 0 || away > Math.abs(awayDb(most)))) {
        most = b;
      }
    }
    return most;
  }

  private double awayDb(int band) {
    return differences[unit][band] - mean[band];
  }

  private String title(String name) {
    int most = farthest();
    return "%s is farthest from its kind near %s: %s dB %s the mean"
        .formatted(
            name,
            Numbers.hertz(bands.get(most).midHz()),
            Numbers.fixed(Math.abs(awayDb(most)), 1),
            awayDb(most) < 0 ? "below" : "above");
  }

  private String alt(String name) {
    double outside =
        IntStream.range(0, mean.length)
            .filter(b -> Math.abs(awayDb(b)) > 2 * sd[b])
            .mapToDouble(b -> Math.log(bands.get(b).upperHz() / bands.get(b).lowerHz()))
            .sum();
    return ("Difference between the fixtures against frequency: %s as a strong line, the other"
            + " units of its kind as thin ones, their mean dashed, and a pale band of two standard"
            + " deviations about it, outside which %s lies over %s octaves")
        .formatted(name, name, Numbers.fixed(outside / Math.log(2), 1));
  }
}
