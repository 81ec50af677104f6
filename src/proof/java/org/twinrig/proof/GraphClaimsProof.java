package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.twinrig.doubt.Doubt;
import org.twinrig.doubt.GraphDoubts;
import org.twinrig.proof.Happening.NewGraph;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;
import org.twinrig.proof.Reexpressed.Judged;
import org.twinrig.proof.Reexpressed.Point;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;

/**
 * How many old graphs that are not what the catalogue says are doubted, how many sound ones are,
 * and whether intervals hold among those that are not doubted.
 *
 * <p>The promises: of sound graphs at most 5 % are doubted. With 12 units or more a kind, of graphs
 * of an in-ear listed among over-ears, or the reverse, of compensated ones listed as raw, and of
 * those with 1.5 dB of noise at every point 95 % are doubted; of those smoothed over 1/3 octave,
 * which is not stated, 80 %. Where units of a kind differ over every octave by as much as kinds do,
 * as on the curve simulator, 65 % of wrong kinds, forms and smoothing. Of smoothing nothing where
 * units were seated once and a graph averages more.
 *
 * @param studies which studies are tried
 * @param graphsPerKind new units of each kind and study
 */
record GraphClaimsProof(List<Size> studies, int graphsPerKind)
    implements Proof<GraphClaimsProof.Row> {
  private static final String REFERENCE = "reference";
  private static final String ALL = "all";
  private static final List<Integer> GRAPH_SEATINGS = List.of(1, 3, 5);

  /** Chance alone breaks a promise kept exactly once in forty rows. */
  private static final double ERRORS = 2;

  private static final int ENOUGH_UNITS = 12;

  /** Keys of the draws. */
  private static final long UNITS = 1;

  private static final long NEW_UNITS = 2;
  private static final long NOISE = 3;

  /** How many units a kind, and seatings a unit, a study has. */
  record Size(int units, int seatings) {}

  /**
   * What is wrong with a graph: in words, by what doubt it should be found (empty where nothing is
   * wrong), and the share that is promised to be found with units enough; 0 where nothing is.
   */
  enum Fault {
    SOUND("none", "", 0),
    AS_OPEN("listed as open over-ear", GraphDoubts.KIND, 0),
    AS_CLOSED("listed as closed over-ear", GraphDoubts.KIND, 0),
    AS_IN_EAR("listed as in-ear", GraphDoubts.KIND, 0.95),
    COMPENSATED("compensated listed as raw", GraphDoubts.FORM, 0.95),
    RAW("raw listed as compensated", GraphDoubts.FORM, 0.95),
    LEAKY("leaky among sealed", GraphDoubts.OUTSIDE, 0),
    NOISE_05("noise of 0.5 dB a point", GraphDoubts.NOISE, 0),
    NOISE_10("noise of 1.0 dB a point", GraphDoubts.NOISE, 0),
    NOISE_15("noise of 1.5 dB a point", GraphDoubts.NOISE, 0.95),
    THIRD("smoothing 1/3 not stated", GraphDoubts.SMOOTHING, 0.8),
    SIXTH("smoothing 1/6 not stated", GraphDoubts.SMOOTHING, 0),
    TWELFTH("smoothing 1/12 not stated", GraphDoubts.SMOOTHING, 0),
    NOT_THERE("smoothing 1/3 stated and not there", GraphDoubts.SMOOTHING, 0);

    private final String word;
    private final String doubt;
    private final double share;

    Fault(String word, String doubt, double share) {
      this.word = word;
      this.doubt = doubt;
      this.share = share;
    }

    /** As tables write it. */
    String word() {
      return word;
    }

    /** The kind it is listed as. */
    private String listed(String kind) {
      return switch (this) {
        case AS_OPEN -> Lab.KINDS.get(0);
        case AS_CLOSED -> Lab.KINDS.get(1);
        case AS_IN_EAR -> Lab.KINDS.get(2);
        default -> kind;
      };
    }

    private boolean concerns(String kind) {
      boolean other = doubt.equals(GraphDoubts.KIND) && listed(kind).equals(kind);
      boolean unsealed = this == LEAKY && kind.equals(Lab.KINDS.get(0));
      return !other && !unsealed;
    }

    private int smoothing() {
      return switch (this) {
        case THIRD -> 3;
        case SIXTH -> 6;
        case TWELFTH -> 12;
        default -> 0;
      };
    }

    private double noiseDb() {
      return switch (this) {
        case NOISE_05 -> 0.5;
        case NOISE_10 -> 1;
        case NOISE_15 -> 1.5;
        default -> 0;
      };
    }

    /** What is added to the raw curve as the catalogue makes it, in references. */
    private int references() {
      return this == COMPENSATED ? -1 : this == RAW ? 1 : 0;
    }
  }

  /** A graph, what was doubted of it, and how its intervals held. */
  record Tried(Fault fault, String kind, List<Doubt> doubts, Judged judged) {
    boolean has(String doubt) {
      return doubts.stream().anyMatch(d -> d.doubt().equals(doubt));
    }

    /** Whether what is wrong, or for a sound graph anything, is doubted. */
    boolean found() {
      return fault == Fault.SOUND ? !doubts.isEmpty() : has(fault.doubt);
    }

    /** Whether the doubt names what the graph is. */
    boolean named() {
      String name =
          switch (fault.doubt) {
            case GraphDoubts.KIND -> "fits `" + kind + "`";
            case GraphDoubts.SMOOTHING ->
                fault == Fault.NOT_THERE ? "not smoothed" : "1/" + fault.smoothing() + " octave";
            default -> "";
          };
      return doubts.stream()
          .anyMatch(d -> d.doubt().equals(fault.doubt) && d.likelyCause().contains(name));
    }
  }

  /** What many studies gave for one fault and kind, or for all kinds together. */
  record Row(
      String simulator,
      Size size,
      int graphSeatings,
      String kind,
      Fault fault,
      List<List<Tried>> studies) {

    Clustered share(Predicate<Tried> which) {
      return Clustered.mean(studies, (Tried t) -> which.test(t) ? 1 : 0);
    }

    /** How many judgements lie inside their intervals, of all or of graphs without a doubt. */
    double inside(boolean undoubted) {
      return studies.stream()
          .flatMap(List::stream)
          .filter(t -> !undoubted || t.doubts.isEmpty())
          .flatMap(t -> t.judged.points().stream())
          .mapToDouble((Point p) -> p.inside() ? 1 : 0)
          .average()
          .orElse(1);
    }
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (Lab lab : List.of(new ChainLab(harness), new CurveLab(harness.seed()))) {
      for (Size size : studies) {
        List<Map<Integer, List<Tried>>> tried =
            harness.each(
                lab.word() + ", " + size.units + " units of " + size.seatings + " seatings",
                study -> tried(harness, lab, size, study));
        for (int seatings : GRAPH_SEATINGS) {
          rows.addAll(
              rows(lab.word(), size, seatings, tried.stream().map(t -> t.get(seatings)).toList()));
        }
      }
    }
    return rows;
  }

  private static List<Row> rows(
      String simulator, Size size, int seatings, List<List<Tried>> studies) {
    List<Row> rows = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      List<String> kinds = new ArrayList<>(Lab.KINDS.stream().filter(fault::concerns).toList());
      if (kinds.size() == Lab.KINDS.size()) {
        kinds.add(ALL);
      }
      for (String kind : kinds) {
        rows.add(
            new Row(
                simulator,
                size,
                seatings,
                kind,
                fault,
                studies.stream()
                    .map(
                        s ->
                            s.stream()
                                .filter(t -> t.fault == fault)
                                .filter(t -> kind.equals(ALL) || t.kind.equals(kind))
                                .toList())
                    .toList()));
      }
    }
    return rows;
  }

  /** The graphs of one study, by how many seatings they average. */
  private Map<Integer, List<Tried>> tried(Harness harness, Lab lab, Size size, int study) {
    Map<String, List<Measured>> units = new TreeMap<>();
    for (String kind : Lab.KINDS) {
      units.put(
          kind,
          lab.measure(kind, size.units, Build.USUAL, size.units, study, UNITS).stream()
              .map(m -> first(m, size.seatings))
              .toList());
    }
    Reexpressed found = Reexpressed.of(lab.hz(), Harness.inForce(), units);
    double[] reference = Arrays.stream(lab.hz()).map(GraphClaimsProof::referenceDb).toArray();
    GraphDoubts doubts =
        new GraphDoubts(found.profiles(), Map.of(REFERENCE, found.pinned(reference)));
    Map<Integer, List<Tried>> tried = new TreeMap<>();
    for (String kind : Lab.KINDS) {
      for (Build build : List.of(Build.USUAL, Build.LEAKY)) {
        boolean leaky = build == Build.LEAKY;
        int count = leaky && !Fault.LEAKY.concerns(kind) ? 0 : graphsPerKind;
        List<Measured> drawn =
            count == 0 ? List.of() : lab.measure(kind, count, build, size.units, study, NEW_UNITS);
        for (int u = 0; u < drawn.size(); u++) {
          for (Fault fault : Fault.values()) {
            for (int seatings : GRAPH_SEATINGS) {
              if (fault.concerns(kind) && leaky == (fault == Fault.LEAKY)) {
                Chance chance =
                    Chance.of(harness.seed(), size.units, study, NOISE, kind.hashCode(), u);
                double[] from =
                    changed(
                        fault,
                        lab.hz(),
                        Measured.mean(drawn.get(u).from(), seatings),
                        reference,
                        chance);
                double[] to = Measured.mean(drawn.get(u).to(), Lab.SEATINGS);
                NewGraph graph =
                    new NewGraph(fault.listed(kind), from, OptionalInt.of(seatings), to);
                tried
                    .computeIfAbsent(seatings, s -> new ArrayList<>())
                    .add(
                        new Tried(
                            fault,
                            kind,
                            doubts.of(claims(fault, kind, seatings), found.pinned(from), b -> 0),
                            found.judge(graph)));
              }
            }
          }
        }
      }
    }
    return tried;
  }

  private static GraphDoubts.Claims claims(Fault fault, String kind, int seatings) {
    return new GraphDoubts.Claims(
        "graph",
        "graph.csv",
        fault.listed(kind),
        fault == Fault.RAW ? REFERENCE : "",
        OptionalDouble.of(seatings),
        fault == Fault.NOT_THERE ? new Smoothing(3) : Smoothing.NONE,
        (Lab.POINTS - 1) / (Math.log(2200) / Math.log(2)));
  }

  private static Measured first(Measured unit, int seatings) {
    return new Measured(unit.from().subList(0, seatings), unit.to().subList(0, seatings));
  }

  private static double[] changed(
      Fault fault, double[] hz, double[] curve, double[] reference, Chance chance) {
    double[] changed = curve.clone();
    for (int i = 0; i < changed.length; i++) {
      changed[i] +=
          fault.references() * reference[i]
              + (fault.noiseDb() > 0 ? chance.gaussian(0, fault.noiseDb()) : 0);
    }
    if (fault.smoothing() > 0) {
      Response smoothed = new Smoothing(fault.smoothing()).apply(Response.copyOf(hz, changed));
      Arrays.setAll(changed, smoothed::levelDb);
    }
    return changed;
  }

  /** A reference as laboratories have them: a rise about 3 kHz and a gentle slope, dB. */
  private static double referenceDb(double hz) {
    double octaves = Math.log(hz / 3000) / Math.log(2);
    return 10 * Math.exp(-octaves * octaves / 1.6) - 0.6 * Math.log(hz / 500) / Math.log(2);
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("simulator", Row::simulator)
        .count("units", r -> r.size.units)
        .count("seatings", r -> r.size.seatings)
        .count("graph_seatings", Row::graphSeatings)
        .text("kind", Row::kind)
        .text("fault", r -> r.fault.word())
        .count("studies", r -> r.studies.size())
        .count("graphs", r -> r.studies.stream().mapToInt(List::size).sum())
        .figure("found", "", r -> r.share(Tried::found))
        .number("named", r -> r.share(Tried::named).value())
        .figure("held_back", "", r -> r.share(t -> !t.doubts.isEmpty()))
        .number("kind_doubtful", r -> r.share(t -> t.has(GraphDoubts.KIND)).value())
        .number("form_doubtful", r -> r.share(t -> t.has(GraphDoubts.FORM)).value())
        .number("outside_the_study", r -> r.share(t -> t.has(GraphDoubts.OUTSIDE)).value())
        .number("smoothing_doubtful", r -> r.share(t -> t.has(GraphDoubts.SMOOTHING)).value())
        .number("noise", r -> r.share(t -> t.has(GraphDoubts.NOISE)).value())
        .number("inside", r -> r.inside(false))
        .number("inside_not_held_back", r -> r.inside(true));
  }

  @Override
  public List<String> broken(Row row) {
    Clustered found = row.share(Tried::found);
    if (row.fault == Fault.SOUND) {
      return found.value() - ERRORS * found.se() > 0.05
          ? List.of(IntervalProof.sentence(found, 0.05))
          : List.of();
    }
    double promised = promised(row);
    return row.size.units >= ENOUGH_UNITS && found.value() + ERRORS * found.se() < promised
        ? List.of(IntervalProof.sentence(found, promised))
        : List.of();
  }

  private static double promised(Row row) {
    double share =
        row.fault == Fault.AS_OPEN || row.fault == Fault.AS_CLOSED ? inEar(row) : row.fault.share;
    if (row.fault.doubt.equals(GraphDoubts.SMOOTHING)) {
      boolean unknown = row.size.seatings == 1 && row.graphSeatings > 1;
      return unknown ? 0 : row.simulator.equals("curves") ? Math.min(0.65, share) : share;
    }
    boolean alike = row.simulator.equals("curves") && row.fault != Fault.NOISE_15;
    return alike ? Math.min(0.65, share) : share;
  }

  /**
   * Of in-ears among over-ears 95 %; of one sort of over-ears among the other nothing is promised.
   */
  private static double inEar(Row row) {
    return row.kind.equals(Lab.KINDS.get(2)) ? 0.95 : 0;
  }
}
