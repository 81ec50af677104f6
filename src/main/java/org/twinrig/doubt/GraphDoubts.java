package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntToDoubleFunction;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Levels;
import org.twinrig.response.Smoothing;

/**
 * Whether an old graph is what the catalogue says it is, by its curve alone, held against the
 * study's units on the old fixture.
 *
 * <p>Its levels over thirds of an octave are held against those of the kind claimed, of every other
 * kind ({@code kind doubtful}) and of the claimed kind with another reference added back or none
 * ({@code form doubtful}), by {@link Contest}; of all claims that win the likeliest is named. Else
 * it may lie outside all units of its kind, see {@link KindExtent}. Its fine structure ({@link
 * FineStructure}) is held against that of the same units, and of these smoothed over 1/6, 1/3 or
 * one octave ({@code smoothing doubtful}) or with noise of 0.5, 1 or 2 dB at every point ({@code
 * noise}), by the same contest.
 *
 * <p>What a graph of fewer seatings, and what old graphs by themselves, scatter more than the
 * units' means widens every limit. Levels {@code 0.992} for each kind and {@code 0.997} for each of
 * form, smoothing and noise; shrinkage 0.2 and 0.03. They were set on simulated studies of 6, 8, 12
 * and 20 units with other kinds and other fixtures than those of the proof.
 *
 * <p>It does not see: a wrong kind whose units look alike on the old fixture; kinds with fewer than
 * four units; smoothing over 1/12 octave or less, which bands do not show; fine structure of graphs
 * with fewer points than bands, or of more seatings than a study has that seated its units once; a
 * reference nobody named. Safe for use by several threads.
 */
public final class GraphDoubts {
  /** The doubts as files name them. */
  public static final String KIND = "kind doubtful";

  public static final String FORM = "form doubtful";
  public static final String OUTSIDE = "outside the study";
  public static final String SMOOTHING = "smoothing doubtful";
  public static final String NOISE = "noise";

  private static final int FEWEST_UNITS = 4;
  private static final Contest.Rule KINDS =
      new Contest.Rule(new KindLikelihood.Shrinkage(0.2, 2, 0.02), 0.992);
  private static final Contest.Rule FORMS = new Contest.Rule(KINDS.shrinkage(), 0.997);
  private static final Contest.Rule DETAIL =
      new Contest.Rule(new KindLikelihood.Shrinkage(0.03, 0, 0.02), 0.997);

  /** References that differ by less are not told apart. */
  private static final double SAME_REFERENCE_DB = 1;

  private static final List<Smoothing> SMOOTHINGS =
      List.of(Smoothing.NONE, new Smoothing(6), new Smoothing(3), new Smoothing(1));

  private static final double[] NOISES_DB = {0.5, 1, 2};

  /** Of noise at points as close as bands, bands keep so much. */
  private static final double NOISE_KEPT = 0.6;

  /** Logarithms of a seating's energies go together so far. */
  private static final double TOGETHER = 0.3;

  /** What a graph that is smoothed unsaid has of the units' fine structure, at most. */
  private static final double MOST_OF_SMOOTHED = 0.85;

  /** Of a graph that averages nobody knows how many. */
  private static final double MANY_SEATINGS = 100;

  private final List<KindProfile> profiles;
  private final Map<String, Levels> references;
  private final Map<Object, List<Rival>> known = new ConcurrentHashMap<>();
  private final Map<Object, KindExtent> extents = new ConcurrentHashMap<>();

  /**
   * Checks against a study.
   *
   * @param profiles of its kinds
   * @param references curves that may have been subtracted, by name, pinned
   */
  public GraphDoubts(List<KindProfile> profiles, Map<String, Levels> references) {
    this.profiles = profiles.stream().filter(p -> p.units().size() >= FEWEST_UNITS).toList();
    this.references = new TreeMap<>(references);
  }

  /**
   * What is claimed of a graph.
   *
   * @param reference what was subtracted; empty of a raw graph
   * @param seatings how many of the study's seatings it counts as; nothing where not known
   * @param smoothing beyond that of the study's captures
   * @param pointsPerOctave how dense its points are
   */
  public record Claims(
      String graph,
      String file,
      String kind,
      String reference,
      OptionalDouble seatings,
      Smoothing smoothing,
      double pointsPerOctave) {}

  /** Another claim. */
  private record Rival(String doubt, String name, Contest contest) {}

  /** A claim that wins. */
  private record Won(Rival rival, double ratio, double limit) {}

  private record Key(
      String what, String kind, String reference, Smoothing smoothing, Run run, double m) {}

  /**
   * The doubts about a graph.
   *
   * @param raw its levels, with what was subtracted added back, pinned to the study's anchor
   * @param scatterDb what old graphs scatter by themselves, by band
   */
  public List<Doubt> of(Claims claims, Levels raw, IntToDoubleFunction scatterDb) {
    Optional<KindProfile> kind =
        profiles.stream().filter(p -> p.kind().equals(claims.kind)).findFirst();
    List<Levels> all = new ArrayList<>(List.of(raw));
    profiles.forEach(p -> all.addAll(p.units()));
    Optional<Run> run = kind.isEmpty() ? Optional.empty() : Run.common(all);
    if (run.isEmpty()) {
      return List.of();
    }
    List<Doubt> doubts = new ArrayList<>();
    shape(claims, kind.get(), raw, run.get(), scatterDb).ifPresent(doubts::add);
    // Against another kind's units, or with a reference too much, a curve seems smoother than it
    // is.
    boolean otherwise = doubts.stream().anyMatch(d -> !d.doubt().equals(OUTSIDE));
    if (raw.grid().perOctave() >= FineStructure.BANDS_PER_OCTAVE
        && claims.pointsPerOctave >= raw.grid().perOctave()) {
      detail(claims, kind.get(), raw, run.get())
          .filter(
              d ->
                  !d.doubt().equals(SMOOTHING)
                      || (!otherwise
                          && (claims.smoothing.fraction() > 0
                              || showsLess(kind.get(), raw, run.get()))))
          .ifPresent(doubts::add);
    }
    return doubts;
  }

  private Optional<Doubt> shape(
      Claims claims, KindProfile kind, Levels raw, Run run, IntToDoubleFunction scatterDb) {
    double[] curve = run.thirds(raw);
    double more = Math.max(0, 1 / claims.seatings.orElse(1) - 1 / kind.seatings());
    double[][] own = covariance(kind, run, more, scatterDb);
    Key key = new Key("shape", claims.kind, claims.reference, claims.smoothing, run, 0);
    Optional<Won> won = won(known.computeIfAbsent(key, k -> shapes(claims, run)), curve, own);
    return won.isPresent()
        ? won.map(w -> shapeDoubt(claims, w, curve))
        : extents
            .computeIfAbsent(
                new Key("extent", claims.kind, "", claims.smoothing, run, 0),
                k -> new KindExtent(groups(claims, run), KINDS.shrinkage(), kind.grid(), run))
            .of(curve, own)
            .map(
                found ->
                    Doubt.ofGraph(
                        claims.graph,
                        claims.file,
                        OUTSIDE,
                        found.found(),
                        found.cause(claims.kind),
                        "What was learnt from the study's units need not hold for it. Listen to or"
                            + " measure the unit; or say in `confirmed` why it belongs."));
  }

  /** A graph without the captures' noise shows less of the finest, but not less in all. */
  private static boolean showsLess(KindProfile kind, Levels raw, Run run) {
    return FineStructure.rmsDb(raw, run) < MOST_OF_SMOOTHED * unitsRmsDb(kind, run);
  }

  private static double unitsRmsDb(KindProfile kind, Run run) {
    return kind.units().stream()
        .mapToDouble(u -> FineStructure.rmsDb(u, run))
        .average()
        .orElseThrow();
  }

  private static Optional<Won> won(List<Rival> rivals, double[] curve, double[][] own) {
    return rivals.stream()
        .map(r -> new Won(r, r.contest.ratio(curve), r.contest.limit(own)))
        .filter(w -> w.ratio < w.limit)
        .min(Comparator.comparingDouble(Won::ratio));
  }

  /** Units of all kinds over thirds of an octave, the claimed kind first. */
  private List<double[][]> groups(Claims claims, Run run) {
    return profiles.stream()
        .sorted(Comparator.comparing(p -> !p.kind().equals(claims.kind)))
        .map(p -> p.smoothed(claims.smoothing).units())
        .map(units -> units.stream().map(run::thirds).toArray(double[][]::new))
        .toList();
  }

  private List<Rival> shapes(Claims claims, Run run) {
    List<double[][]> groups = groups(claims, run);
    List<String> others =
        profiles.stream().map(KindProfile::kind).filter(k -> !k.equals(claims.kind)).toList();
    List<Rival> rivals = new ArrayList<>();
    for (int k = 0; k < others.size(); k++) {
      rivals.add(
          new Rival(KIND, others.get(k), new Contest(groups, groups.get(k + 1), false, KINDS)));
    }
    List<String> forms = new ArrayList<>(references.keySet());
    forms.add("");
    forms.remove(claims.reference);
    for (String form : forms) {
      moved(claims.reference, form, run)
          .ifPresent(
              add -> {
                double[][] other = groups.get(0).clone();
                Arrays.setAll(other, u -> minus(other[u], add));
                rivals.add(new Rival(FORM, form, new Contest(groups, other, true, FORMS)));
              });
    }
    return rivals;
  }

  /**
   * What another reference adds beyond the one claimed; nothing where that is little or unknown.
   */
  private Optional<double[]> moved(String claimed, String other, Run run) {
    Levels none = profiles.get(0).units().get(0).map(db -> 0);
    Levels before = claimed.isEmpty() ? none : references.get(claimed);
    Levels after = other.isEmpty() ? none : references.get(other);
    if (before == null || !run.within(before) || !run.within(after)) {
      return Optional.empty();
    }
    double[] add = minus(run.thirds(after), run.thirds(before));
    double rms = Math.sqrt(Arrays.stream(add).map(a -> a * a).average().orElse(0));
    return rms < SAME_REFERENCE_DB ? Optional.empty() : Optional.of(add);
  }

  private static double[] minus(double[] some, double[] other) {
    double[] difference = new double[some.length];
    Arrays.setAll(difference, i -> some[i] - other[i]);
    return difference;
  }

  /** Covariance over thirds of an octave of what a graph holds beyond the units' means, dB². */
  private static double[][] covariance(
      KindProfile kind, Run run, double seatings, IntToDoubleFunction scatterDb) {
    int step = Math.max(1, kind.grid().perOctave() / 3);
    int size = (run.to() - run.from()) / step;
    double[][] sums = new double[size][size];
    for (int a = run.from(); a < run.to(); a++) {
      int nearest = Math.max(run.from(), a - kind.grid().perOctave());
      for (int b = nearest; b <= a; b++) {
        double correlation = kind.correlation(a - b);
        double each =
            (seatings * kind.seatingCovariance(a, b)
                    + correlation * scatterDb.applyAsDouble(a) * scatterDb.applyAsDouble(b))
                / step
                / step;
        int i = (a - run.from()) / step;
        int j = (b - run.from()) / step;
        sums[i][j] += each;
        if (a != b) {
          sums[j][i] += each;
        }
      }
    }
    return sums;
  }

  private Doubt shapeDoubt(Claims claims, Won won, double[] curve) {
    String name = won.rival.name;
    if (won.rival.doubt.equals(KIND)) {
      double[] rms = won.rival.contest.rms(curve);
      return Doubt.ofGraph(
          claims.graph,
          claims.file,
          KIND,
          found(won),
          "its shape fits `%s`, from whose mean it is %s RMS away; from that of `%s`, as listed, %s."
              .formatted(name, db(rms[1]), claims.kind, db(rms[0])),
          "It would be translated by the wrong kind's transfer. Correct `kind` in the catalogue; or"
              + " say in `confirmed` why it is right.");
    }
    String likely =
        name.isEmpty()
            ? "as it was published: raw, although listed as compensated by `"
                + claims.reference
                + "`"
            : "with `"
                + name
                + "` added back: compensated by it, although listed as "
                + (claims.reference.isEmpty() ? "raw" : "by `" + claims.reference + "`");
    return Doubt.ofGraph(
        claims.graph,
        claims.file,
        FORM,
        found(won),
        "its shape is likelier among the study's units " + likely + ".",
        "A reference too much or too little is an error at every frequency. Correct `form` or"
            + " `reference` in the catalogue; or say in `confirmed` why it is right.");
  }

  private Optional<Doubt> detail(Claims claims, KindProfile kind, Levels raw, Run run) {
    double[] own =
        FineStructure.logarithms(FineStructure.energies(raw, run), new double[FineStructure.SIZE]);
    double seatings = claims.seatings.orElse(MANY_SEATINGS);
    if (!kind.knowsSeatings() && seatings != kind.seatings()) {
      // More seatings show less detail and fewer show more, nobody knows how much.
      String sure = seatings > kind.seatings() ? NOISE : SMOOTHING;
      return detail(claims, kind, run, own, kind.seatings())
          .filter(w -> w.rival.doubt.equals(sure))
          .map(w -> detailDoubt(claims, kind, raw, run, w));
    }
    if (claims.seatings.isPresent()) {
      return detail(claims, kind, run, own, claims.seatings.getAsDouble())
          .map(w -> detailDoubt(claims, kind, raw, run, w));
    }
    // Nobody knows how many seatings were averaged: both ends must agree.
    Optional<Won> one = detail(claims, kind, run, own, 1);
    Optional<Won> many = detail(claims, kind, run, own, MANY_SEATINGS);
    return one.filter(o -> many.filter(m -> m.rival.doubt.equals(o.rival.doubt)).isPresent())
        .map(w -> detailDoubt(claims, kind, raw, run, w));
  }

  private Optional<Won> detail(
      Claims claims, KindProfile kind, Run run, double[] own, double seatings) {
    Key key = new Key("detail", claims.kind, "", claims.smoothing, run, seatings);
    List<Rival> rivals = known.computeIfAbsent(key, k -> details(claims, kind, run, seatings));
    return won(rivals, own, seatingDetail(kind.smoothed(claims.smoothing), run, seatings));
  }

  /** How far a seating's own fine structure moves the logarithms of a graph's energies. */
  private static double[][] seatingDetail(KindProfile kind, Run run, double seatings) {
    double share = Math.max(0, 1 / seatings - 1 / kind.seatings());
    double[] energies = meanEnergies(kind, run);
    double[][] covariance = new double[FineStructure.SIZE][FineStructure.SIZE];
    for (int i = 0; i < covariance.length; i++) {
      for (int j = 0; j < covariance.length; j++) {
        covariance[i][j] =
            (i == j ? 1 : TOGETHER)
                * moves(kind, energies, share, i)
                * moves(kind, energies, share, j);
      }
    }
    return covariance;
  }

  private static double moves(KindProfile kind, double[] energies, double share, int i) {
    double more = share * kind.seatingDetail().get(i);
    return kind.detailSpread() * more / (energies[i] + more + FineStructure.FLOOR_DB2);
  }

  private static double[] meanEnergies(KindProfile kind, Run run) {
    return KindLikelihood.mean(
        kind.units().stream().map(u -> FineStructure.energies(u, run)).toArray(double[][]::new));
  }

  private List<Rival> details(Claims claims, KindProfile kind, Run run, double seatings) {
    List<double[][]> groups = new ArrayList<>();
    groups.add(details(kind, claims.smoothing, run, seatings, 0));
    profiles.stream()
        .filter(p -> !p.kind().equals(kind.kind()))
        .map(p -> details(p, claims.smoothing, run, seatings, 0))
        .forEach(groups::add);
    List<Rival> rivals = new ArrayList<>();
    for (Smoothing smoothing : SMOOTHINGS) {
      if (smoothing.fraction() != claims.smoothing.fraction()
          && smoothing.fraction() < kind.grid().perOctave()) {
        rivals.add(
            new Rival(
                SMOOTHING,
                smoothing.word(),
                new Contest(groups, details(kind, smoothing, run, seatings, 0), true, DETAIL)));
      }
    }
    for (double noise : NOISES_DB) {
      rivals.add(
          new Rival(
              NOISE,
              Numbers.fixed(noise, 1),
              new Contest(
                  groups, details(kind, claims.smoothing, run, seatings, noise), true, DETAIL)));
    }
    return rivals;
  }

  /** Logarithms of the units' energies, smoothed and with noise, as graphs of so many seatings. */
  private static double[][] details(
      KindProfile kind, Smoothing smoothing, Run run, double seatings, double noiseDb) {
    KindProfile smoothed = kind.smoothed(smoothing);
    double[] before = meanEnergies(kind, run);
    double[] after = meanEnergies(smoothed, run);
    double[] more = new double[FineStructure.SIZE];
    double noise = 6 * Math.pow(NOISE_KEPT * noiseDb, 2);
    // A smoothed seating loses what units lose.
    Arrays.setAll(
        more,
        i ->
            noise
                + (1 / seatings - 1 / kind.seatings())
                    * kind.seatingDetail().get(i)
                    * (before[i] > 0 ? Math.min(1, after[i] / before[i]) : 1));
    return smoothed.units().stream()
        .map(u -> FineStructure.logarithms(FineStructure.energies(u, run), more))
        .toArray(double[][]::new);
  }

  private static Doubt detailDoubt(Claims claims, KindProfile kind, Levels raw, Run run, Won won) {
    String here = db(FineStructure.rmsDb(raw, run));
    String units = db(unitsRmsDb(kind, run));
    if (won.rival.doubt.equals(NOISE)) {
      return Doubt.ofGraph(
          claims.graph,
          claims.file,
          NOISE,
          found(won),
          "neighbouring bands differ by %s RMS, those of the study's units by %s: noise, or points read off a print."
              .formatted(here, units),
          "Noise of an old graph stands in the new one too, and no interval counts it. Give a better"
              + " copy; or say in `confirmed` why it is so.");
    }
    String like =
        won.rival.name.equals("none")
            ? "as much as of a graph that is not smoothed"
            : "as after smoothing over about " + won.rival.name + " octave";
    return Doubt.ofGraph(
        claims.graph,
        claims.file,
        SMOOTHING,
        found(won),
        "neighbouring bands differ by %s RMS, those of the study's units by %s: %s; listed as %s."
            .formatted(here, units, like, claims.smoothing.plain()),
        "A smoothed graph needs a study smoothed alike. Correct `smoothing` in the catalogue; or say"
            + " in `confirmed` why it is right.");
  }

  private static Doubt.Found found(Won won) {
    return new Doubt.Found(odds(won.ratio), odds(won.limit));
  }

  private static String odds(double ratio) {
    double odds = Math.exp(-ratio);
    return odds > 1e6 ? "over 1000000 to 1" : Numbers.fixed(odds, odds < 10 ? 1 : 0) + " to 1";
  }

  static String db(double value) {
    return Numbers.fixed(value, value < 1 ? 2 : 1) + " dB";
  }
}
