package org.twinrig.translation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.StatUtils;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.Neighbourhood;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Levels;
import org.twinrig.study.Pairing;

/**
 * Whether the old fixture is still what it was: old graphs of units that the study captured on it
 * again, held against those captures, graph minus today, both lined up at the anchor.
 *
 * <p>Pinnae, microphones and habits of averaging that were changed enter every re-expressed graph.
 * Per kind and band: the mean difference over units with its interval {@code ± t_{n-1}·SE}, and the
 * standard deviation between units. What scatters beyond the seatings of graph and captures belongs
 * to old graphs as such and adds to the variance of every interval of the catalogue: {@code max(0,
 * mean of Δ_i² - s2_A·(mean of 1/m_i + 1/n_i))}, both averaged over the bands within 1/6 octave, on
 * {@code n} degrees of freedom. It holds the squared mean as well, because a mean that is within
 * chance is not known to be 0 and no graph is corrected for it. A kind with fewer than three such
 * units takes that of all of them together.
 *
 * <p>That the old fixture changed is doubted where a mean over an octave, or over 1/3 octave, is
 * beyond chance: {@code |Δ̄| > t_{n-1, 1-α/2}·s/√n}, each unit's difference averaged over the bands
 * first; {@code α = 0.05}, shared equally by octaves and thirds, by all of either, and by the kinds
 * with five units or more and all units together (Bonferroni).
 */
public record Continuity(BandGrid grid, double confidence, List<Kind> kinds, Optional<Kind> all) {
  /** The doubt as files name it. */
  public static final String DOUBT = "old fixture changed";

  /** What a kind is called that holds the units of all kinds. */
  public static final String ALL_KINDS = "all kinds";

  private static final int FEWEST_UNITS = 3;
  private static final int FEWEST_TO_DOUBT = 5;
  private static final double FALSE_DOUBTS = 0.05;

  public Continuity {
    kinds = List.copyOf(kinds);
  }

  /**
   * A unit that has both: its graph minus its captures.
   *
   * @param ofGraph share of the seating variance in the graph, {@code 1/m}; that of {@code n}
   *     captured seatings is {@code ofCaptures}, {@code 1/n}
   */
  public record Compared(
      String kind, String unit, Levels differenceDb, double ofGraph, double ofCaptures) {

    /** A graph, pinned, that averages so many seatings. */
    public static Compared of(Pairing.OnOldFixture unit, Levels graph, double seatings) {
      double[] db = new double[graph.grid().size()];
      Arrays.setAll(
          db,
          b -> graph.has(b) && unit.mean().has(b) ? graph.db(b) - unit.mean().db(b) : Double.NaN);
      return new Compared(
          unit.unit().kind(),
          unit.unit().name(),
          Levels.copyOf(graph.grid(), db),
          1 / seatings,
          1.0 / unit.seatings());
    }

    /** A unit with several graphs counts once, by their mean. */
    static Compared mean(List<Compared> graphs) {
      Compared first = graphs.get(0);
      double[] db = new double[first.differenceDb.grid().size()];
      double ofGraph = 0;
      for (Compared graph : graphs) {
        ofGraph += graph.ofGraph / (graphs.size() * graphs.size());
        for (int b = 0; b < db.length; b++) {
          double own = graph.differenceDb.has(b) ? graph.differenceDb.db(b) : Double.NaN;
          db[b] += own / graphs.size();
        }
      }
      Levels mean = Levels.copyOf(first.differenceDb.grid(), db);
      return new Compared(first.kind, first.unit, mean, ofGraph, first.ofCaptures);
    }

    private double seatingShare() {
      return ofGraph + ofCaptures;
    }
  }

  /**
   * The units of a kind, and what they show band by band; nothing where no unit has a level.
   *
   * @param differences each unit's, in the order of the units
   */
  public record Kind(
      String kind, List<String> units, List<Optional<At>> bands, List<Levels> differences) {
    public Kind {
      units = List.copyOf(units);
      bands = List.copyOf(bands);
      differences = List.copyOf(differences);
    }
  }

  /**
   * What the units of a kind show at a band.
   *
   * @param biasDb mean of graph minus captures, dB
   * @param halfDb half-width of its interval, dB; nothing with one unit
   * @param spreadDb standard deviation between units, dB; nothing with one unit
   * @param addedDb2 what intervals of the catalogue gain in variance, dB²
   */
  public record At(
      Band band,
      int units,
      double biasDb,
      OptionalDouble halfDb,
      OptionalDouble spreadDb,
      double addedDb2) {}

  /** What units of the study that have an old graph, one entry each, say of the old fixture. */
  public static Continuity of(List<Compared> compared, Translation study) {
    Map<String, double[]> seatingVariances = seatingVariances(study);
    BandGrid grid = study.grid();
    double confidence = study.confidence();
    Map<String, List<Compared>> byKind = new LinkedHashMap<>();
    compared.forEach(c -> byKind.computeIfAbsent(c.kind, k -> new ArrayList<>()).add(c));
    List<Kind> kinds = new ArrayList<>();
    byKind.forEach((name, own) -> kinds.add(kind(name, own, seatingVariances, grid, confidence)));
    Optional<Kind> all =
        byKind.size() > 1
            ? Optional.of(kind(ALL_KINDS, compared, seatingVariances, grid, confidence))
            : Optional.empty();
    return new Continuity(grid, confidence, kinds, all);
  }

  /** Variance between seatings on the old fixture, dB² by band; NaN where it is not known. */
  private static Map<String, double[]> seatingVariances(Translation translation) {
    Map<String, double[]> byKind = new HashMap<>();
    for (TransferFunction kind : translation.kinds()) {
      byKind.put(
          kind.kind(),
          kind.bands().stream()
              .mapToDouble(
                  band ->
                      band.outcome() instanceof BandOutcome.Fitted fitted
                          ? fitted.scatter().seatVarianceFrom().orElse(Double.NaN)
                          : Double.NaN)
              .toArray());
    }
    return byKind;
  }

  private static Kind kind(
      String name,
      List<Compared> units,
      Map<String, double[]> seatingVariances,
      BandGrid grid,
      double confidence) {
    int bands = grid.size();
    double[] squares = new double[bands];
    double[] seating = new double[bands];
    Arrays.fill(squares, Double.NaN);
    Arrays.fill(seating, Double.NaN);
    for (int b = 0; b < bands; b++) {
      int band = b;
      List<Compared> here = units.stream().filter(u -> u.differenceDb.has(band)).toList();
      if (!here.isEmpty()) {
        squares[b] =
            here.stream()
                .mapToDouble(u -> Math.pow(u.differenceDb.db(band), 2))
                .average()
                .getAsDouble();
        seating[b] =
            here.stream()
                .mapToDouble(u -> variance(seatingVariances, u.kind, band) * u.seatingShare())
                .average()
                .getAsDouble();
      }
    }
    Neighbourhood near =
        Neighbourhood.of(bands, b -> !Double.isNaN(squares[b]), grid.perOctave() / 6);
    List<Optional<At>> at = new ArrayList<>();
    for (int b = 0; b < bands; b++) {
      int band = b;
      double[] values =
          units.stream()
              .filter(u -> u.differenceDb.has(band))
              .mapToDouble(u -> u.differenceDb.db(band))
              .toArray();
      double added = near.mean(b, squares) - near.mean(b, seating);
      at.add(
          values.length == 0
              ? Optional.empty()
              : Optional.of(at(grid.band(b), values, Math.max(0, added), confidence)));
    }
    return new Kind(
        name,
        units.stream().map(Compared::unit).toList(),
        at,
        units.stream().map(Compared::differenceDb).toList());
  }

  private static double variance(Map<String, double[]> variances, String kind, int band) {
    double[] own = variances.get(kind);
    return own == null || Double.isNaN(own[band]) ? 0 : own[band];
  }

  private static At at(Band band, double[] values, double added, double confidence) {
    double mean = StatUtils.mean(values);
    int n = values.length;
    if (n < 2) {
      return new At(band, n, mean, OptionalDouble.empty(), OptionalDouble.empty(), added);
    }
    double sd = Math.sqrt(StatUtils.variance(values));
    double half = StudentT.twoSided(confidence, n - 1.0) * sd / Math.sqrt(n);
    return new At(band, n, mean, OptionalDouble.of(half), OptionalDouble.of(sd), added);
  }

  /** Whether the intervals of a catalogue are widened by what was found: three units suffice. */
  public boolean counts() {
    return kinds.stream().mapToInt(k -> k.units.size()).sum() >= FEWEST_UNITS;
  }

  /** What old graphs of a kind scatter by themselves at a band. */
  Uncertainty added(String kind, int band) {
    Optional<Kind> own =
        kinds.stream()
            .filter(k -> k.kind.equals(kind) && k.units.size() >= FEWEST_UNITS)
            .findFirst();
    Optional<Kind> from = own.or(() -> all.or(() -> kinds.stream().findFirst()));
    Optional<At> found = counts() ? from.flatMap(k -> k.bands.get(band)) : Optional.empty();
    return found
        .filter(a -> a.units >= FEWEST_UNITS)
        .map(a -> new Uncertainty(Math.sqrt(a.addedDb2), a.units))
        .orElse(Uncertainty.NONE);
  }

  /**
   * Where the old fixture seems to have changed: one doubt for all kinds together where they show
   * it together, for that is one cause; else one a kind.
   */
  public List<Doubt> doubts() {
    List<Kind> tried = new ArrayList<>();
    all.filter(k -> k.units.size() >= FEWEST_TO_DOUBT).ifPresent(tried::add);
    kinds.stream().filter(k -> k.units.size() >= FEWEST_TO_DOUBT).forEach(tried::add);
    List<Doubt> doubts = new ArrayList<>();
    for (Kind kind : tried) {
      farthest(kind, FALSE_DOUBTS / tried.size()).ifPresent(m -> doubts.add(doubt(kind, m)));
      if (!doubts.isEmpty() && kind.kind.equals(ALL_KINDS)) {
        return doubts;
      }
    }
    return doubts;
  }

  /** A mean over a stretch of bands that is beyond its limit. */
  private record Moved(double fromHz, double toHz, double biasDb, double limitDb) {
    double excess() {
      return Math.abs(biasDb) / limitDb;
    }
  }

  private Optional<Moved> farthest(Kind kind, double alpha) {
    List<Moved> moved = new ArrayList<>();
    for (int width : new int[] {grid.perOctave(), Math.max(1, grid.perOctave() / 3)}) {
      int stretches = (grid.size() + width - 1) / width;
      double each = alpha / 2 / stretches;
      for (int s = 0; s < stretches; s++) {
        mean(kind, s * width, Math.min(grid.size(), (s + 1) * width), each).ifPresent(moved::add);
      }
    }
    return moved.stream()
        .filter(m -> m.excess() > 1)
        .max((a, b) -> Double.compare(a.excess(), b.excess()));
  }

  private Optional<Moved> mean(Kind kind, int first, int end, double alpha) {
    List<Double> means = new ArrayList<>();
    for (Levels difference : kind.differences) {
      double sum = 0;
      int count = 0;
      for (int b = first; b < end; b++) {
        if (difference.has(b)) {
          sum += difference.db(b);
          count++;
        }
      }
      if (count == end - first) {
        means.add(sum / count);
      }
    }
    int n = means.size();
    if (n < FEWEST_TO_DOUBT) {
      return Optional.empty();
    }
    double[] values = means.stream().mapToDouble(Double::doubleValue).toArray();
    double se = Math.sqrt(StatUtils.variance(values) / n);
    double limit = StudentT.twoSided(1 - alpha, n - 1.0) * se;
    return limit == 0
        ? Optional.empty()
        : Optional.of(
            new Moved(
                grid.band(first).lowerHz(),
                grid.band(end - 1).upperHz(),
                StatUtils.mean(values),
                limit));
  }

  private static Doubt doubt(Kind kind, Moved moved) {
    String where = Numbers.hertz(moved.fromHz) + " to " + Numbers.hertz(moved.toHz);
    return Doubt.open(
        Doubt.Subject.CATALOGUE,
        kind.kind,
        "",
        DOUBT,
        new Doubt.Found(db(moved.biasDb), db(moved.limitDb)),
        "old graphs of %s show %s %s from %s than today's captures (beyond chance from %s on)."
            .formatted(
                Numbers.count(kind.units.size(), "unit", "units"),
                db(moved.biasDb),
                moved.biasDb > 0 ? "more" : "less",
                where,
                db(moved.limitDb)),
        "Pinna, microphone or averaging may have changed since, and graphs are not corrected for it."
            + " Find out what changed, or translate only graphs made after the change.");
  }

  private static String db(double value) {
    return Numbers.fixed(Math.abs(value), 2) + " dB";
  }
}
