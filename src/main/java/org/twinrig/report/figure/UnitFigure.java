package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
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

  /** As fine as a small graph can show. */
  private static final int POINTS_PER_OCTAVE = 8;

  private static final int COLUMNS = 4;
  private static final int ROW_HEIGHT = 90;

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
  public static Optional<Figure> of(PairedUnits kind, String unit, Caption caption, Anchor anchor) {
    int at = kind.units().indexOf(unit);
    if (at < 0) {
      return Optional.empty();
    }
    UnitFigure drawn = new UnitFigure(kind, at);
    return drawn.farthest() < 0
        ? Optional.empty()
        : Optional.of(drawn.figure(unit, caption, anchor));
  }

  private Figure figure(String name, Caption caption, Anchor anchor) {
    double[] hz = Values.of(bands, Band::midHz);
    double[] low = edge(-2);
    double[] high = edge(2);
    double lowest = Values.least(Values.least(-2, low), differences);
    double highest = Values.greatest(Values.greatest(2, high), differences);
    Axis axis =
        Axis.differences(
            anchor instanceof Anchor.None
                ? "New minus old, dB"
                : "New minus old after lining up, dB",
            Math.max(-WIDEST_DB, lowest),
            Math.min(WIDEST_DB, highest));
    Plot plot =
        Plot.overFrequency(axis).linedUp(anchor).area(hz, low, high, "± 2 SD of the others");
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

  /** The mean of the others, and so many of their standard deviations. */
  private double[] edge(int deviations) {
    return IntStream.range(0, mean.length).mapToDouble(b -> mean[b] + deviations * sd[b]).toArray();
  }

  /** Draws every unit of a kind against its others, small; nothing where there are too few. */
  public static Optional<Figure> all(PairedUnits kind, Caption caption) {
    if (kind.units().size() <= LEAST_OTHERS) {
      return Optional.empty();
    }
    int each = Math.max(1, kind.grid().perOctave() / POINTS_PER_OCTAVE);
    List<UnitFigure> units =
        IntStream.range(0, kind.units().size()).mapToObj(i -> new UnitFigure(kind, i)).toList();
    double[][] own = units.get(0).differences;
    double lowest = Math.max(-WIDEST_DB, Values.least(-2, own));
    double highest = Math.min(WIDEST_DB, Values.greatest(2, own));
    List<Plot> plots = new ArrayList<>();
    for (UnitFigure u : units) {
      String name = kind.units().get(u.unit);
      Axis up = Axis.stepped(name, lowest, highest, highest - lowest > 25 ? 10 : 5, 0);
      double[] hz = thinned(Values.of(u.bands, Band::midHz), each);
      plots.add(
          new Plot(Axis.fewFrequencies(100, 1000, 10_000), up, true)
              .area(hz, thinned(u.edge(-2), each), thinned(u.edge(2), each), "")
              .line(hz, thinned(u.differences[u.unit], each), Ink.LINE));
    }
    return Optional.of(
        caption
            .sheet(
                "every unit against the others",
                "; new minus old, dB; pale: mean of the others ± 2 SD")
            .rows(plots, COLUMNS, ROW_HEIGHT)
            .figure(
                caption.name("units"),
                "Small graphs, one for each of %s: its difference between the fixtures against"
                        .formatted(Numbers.count(units.size(), "unit", "units"))
                    + " frequency over a pale band of two standard deviations about the mean of"
                    + " the others"));
  }

  /** Means of so many neighbours, as far as there are any. */
  private static double[] thinned(double[] values, int each) {
    return IntStream.range(0, (values.length + each - 1) / each)
        .mapToDouble(
            k ->
                Arrays.stream(values, k * each, Math.min(values.length, (k + 1) * each))
                    .filter(v -> !Double.isNaN(v))
                    .average()
                    .orElse(Double.NaN))
        .toArray();
  }

  /** Where units hardly differ, as about the anchor, nothing stands out by less. */
  private static final double LEAST_SD_DB = 0.3;

  /**
   * The band where the unit is the most standard deviations from the mean of the others; -1 where
   * there is none.
   */
  private int farthest() {
    int most = -1;
    for (int b = 0; b < mean.length; b++) {
      if (!Double.isNaN(awayDb(b)) && (most < 0 || deviations(b) > deviations(most))) {
        most = b;
      }
    }
    return most;
  }

  private double deviations(int band) {
    return Math.abs(awayDb(band)) / Math.max(LEAST_SD_DB, sd[band]);
  }

  private double awayDb(int band) {
    return differences[unit][band] - mean[band];
  }

  private String title(String name) {
    int most = farthest();
    return "%s stands out most near %s: %s dB %s the others' mean"
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
