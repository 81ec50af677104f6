package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.twinrig.proof.Happening.NewGraph;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;
import org.twinrig.proof.Reexpressed.Judged;
import org.twinrig.proof.Reexpressed.Point;
import org.twinrig.translation.Continuity;

/**
 * What old graphs of the study's own units are worth: whether a change of the old fixture is found
 * through them, and whether intervals hold where old graphs scatter more than today's captures.
 *
 * <p>Every unit of a study has an old graph of its first two seatings on the old fixture; the study
 * has the three others, and five on the new fixture. Some graphs of new units are re-expressed with
 * and without that evidence.
 *
 * <p>The promise: without a change at most 5 % of catalogues are doubted, to within two standard
 * errors in any row; 1.5 dB above 5 kHz is found through 8 units a kind in at least 90 %; and where
 * old graphs scatter by 0.5 dB their intervals hold at least 93 % of new measurements with the
 * evidence.
 *
 * @param unitsPerKind of each kind in a study, all of them with an old graph
 */
record ContinuityProof(List<Integer> unitsPerKind) implements Proof<ContinuityProof.Row> {
  private static final int GRAPH_SEATINGS = 2;
  private static final int NEW_UNITS = 5;
  private static final int PROMISED_FROM = 8;
  private static final double FALSE_DOUBTS = 0.05;

  /** So many standard errors may be chance. */
  private static final double CHANCE = 2;

  private static final double FOUND = 0.90;
  private static final double LEAST_INSIDE = 0.93;

  /** What is other with old graphs than with today's captures. */
  enum Planted {
    NOTHING("nothing"),
    /** Every graph has a smooth curve of its own in it. */
    SCATTER("scatter of 0.5 dB"),
    /** All graphs have another treble. */
    CHANGE("1.5 dB above 5 kHz");

    private static final double SCATTER_DB = 0.5;
    private static final double SCATTER_OCTAVES = 0.5;
    private static final double CHANGE_DB = 1.5;
    private static final double CHANGE_HZ = 5000;

    private final String word;

    Planted(String word) {
      this.word = word;
    }

    double[] into(double[] graph, double[] hz, Chance chance) {
      double[] changed = graph.clone();
      if (this == SCATTER) {
        double[] octaves = new double[hz.length];
        double[] sd = new double[hz.length];
        Arrays.setAll(octaves, i -> Math.log(hz[i]) / Math.log(2));
        Arrays.fill(sd, SCATTER_DB);
        new SmoothCurves(octaves, SCATTER_OCTAVES).addTo(changed, sd, chance);
      } else if (this == CHANGE) {
        Arrays.setAll(changed, i -> graph[i] + (hz[i] > CHANGE_HZ ? CHANGE_DB : 0));
      }
      return changed;
    }
  }

  /** A catalogue: its new graphs with the evidence and without, and whether it was doubted. */
  record Tried(List<Judged> with, List<Judged> without, boolean doubted) {
    private static List<Point> points(List<Judged> graphs) {
      return graphs.stream().flatMap(g -> g.points().stream()).toList();
    }
  }

  /** What many studies gave. */
  record Row(String simulator, int units, Planted planted, List<Tried> studies) {
    private static Clustered share(List<List<Point>> studies) {
      return Clustered.mean(studies, (Point p) -> p.inside() ? 1 : 0);
    }

    Clustered with() {
      return share(studies.stream().map(t -> Tried.points(t.with)).toList());
    }

    Clustered without() {
      return share(studies.stream().map(t -> Tried.points(t.without)).toList());
    }

    Clustered doubted() {
      return Clustered.mean(
          studies.stream().map(List::of).toList(), (Tried t) -> t.doubted ? 1 : 0);
    }

    Clustered outside() {
      return Clustered.mean(
          studies.stream().map(Tried::with).toList(), (Judged g) -> g.outside() ? 1 : 0);
    }
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (Lab lab : List.of(new ChainLab(harness), new CurveLab(harness.seed()))) {
      for (int units : unitsPerKind) {
        List<List<Tried>> studies =
            harness.each(
                lab.word() + ", " + units + " units per kind",
                study -> tried(lab, harness.seed(), units, study));
        List<Planted> all = List.of(Planted.values());
        for (int p = 0; p < all.size(); p++) {
          int which = p;
          List<Tried> tried = studies.stream().map(s -> s.get(which)).toList();
          rows.add(new Row(lab.word(), units, all.get(p), tried));
        }
      }
    }
    return rows;
  }

  private static List<Tried> tried(Lab lab, long seed, int units, int study) {
    Map<String, List<Measured>> fitted = new TreeMap<>();
    Map<String, List<Measured>> drawn = new TreeMap<>();
    for (String kind : Lab.KINDS) {
      List<Measured> all = lab.measure(kind, units + NEW_UNITS, Build.USUAL, 18, units, study);
      drawn.put(kind, all);
      fitted.put(
          kind,
          all.subList(0, units).stream()
              .map(u -> new Measured(u.from().subList(GRAPH_SEATINGS, Lab.SEATINGS), u.to()))
              .toList());
    }
    Reexpressed plain = Reexpressed.of(lab.hz(), Harness.inForce(), fitted);
    List<Tried> tried = new ArrayList<>();
    for (Planted planted : Planted.values()) {
      List<NewGraph> old = new ArrayList<>();
      List<NewGraph> fresh = new ArrayList<>();
      drawn.forEach(
          (kind, all) -> {
            for (int u = 0; u < all.size(); u++) {
              Chance chance = Chance.of(seed, 19, units, study, kind.hashCode(), u);
              double[] graph = Measured.mean(all.get(u).from(), GRAPH_SEATINGS);
              double[] to = Measured.mean(all.get(u).to(), Lab.SEATINGS);
              (u < units ? old : fresh)
                  .add(
                      new NewGraph(
                          kind,
                          planted.into(graph, lab.hz(), chance),
                          OptionalInt.of(GRAPH_SEATINGS),
                          to));
            }
          });
      Continuity continuity = plain.continuity(old);
      Reexpressed held = plain.with(continuity);
      tried.add(
          new Tried(
              fresh.stream().map(held::judge).toList(),
              fresh.stream().map(plain::judge).toList(),
              !continuity.doubts().isEmpty()));
    }
    return tried;
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("simulator", Row::simulator)
        .count("units", Row::units)
        .text("planted", r -> r.planted.word)
        .count("studies", r -> r.studies.size())
        .figure("doubted", "", Row::doubted)
        .figure("inside", "", Row::with)
        .figure("inside_without_evidence", "", Row::without)
        .figure("outside_the_study", "", Row::outside);
  }

  @Override
  public List<String> broken(Row row) {
    List<String> broken = new ArrayList<>();
    if (row.planted == Planted.NOTHING
        && row.doubted().value() - CHANCE * row.doubted().se() > FALSE_DOUBTS) {
      broken.add("doubted: " + IntervalProof.sentence(row.doubted(), FALSE_DOUBTS));
    }
    boolean enough = row.units >= PROMISED_FROM;
    if (row.planted == Planted.CHANGE && enough && row.doubted().value() < FOUND) {
      broken.add("found: " + IntervalProof.sentence(row.doubted(), FOUND));
    }
    if (row.planted != Planted.CHANGE && enough && row.with().value() < LEAST_INSIDE) {
      broken.add("inside: " + IntervalProof.sentence(row.with(), LEAST_INSIDE));
    }
    return broken;
  }
}
