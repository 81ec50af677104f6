package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.evidence.Region;
import org.twinrig.proof.Happening.Draw;
import org.twinrig.proof.Happening.OfStudy;
import org.twinrig.proof.Reexpressed.Judged;
import org.twinrig.proof.Reexpressed.Point;

/**
 * What becomes of re-expressed graphs where laboratories are not as they should be, on two
 * simulators that have nothing in common: whether intervals hold, how large errors are, and what
 * the program says of it.
 *
 * <p>The promise, where all is as it should be: new units lie inside their 95 % interval 93 % to 97
 * % of the time averaged over the bands, and no less than 90 % in any region. Nothing is promised
 * of the other rows: they say what such a laboratory must reckon with.
 *
 * <p>Every share is over the graphs of all studies, its Monte Carlo standard error between studies.
 *
 * @param unitsPerKind how many units of each kind the studies have; even numbers, each once
 * @param graphsPerKind new units of each kind, or sort in a kind, and study
 */
record SituationProof(List<Integer> unitsPerKind, int graphsPerKind)
    implements Proof<SituationProof.Row> {
  /** From so many units on only what shares the usual studies is tried: it takes long enough. */
  private static final int MANY_UNITS = 30;

  private static final double LEAST = 0.93;
  private static final double MOST = 0.97;
  private static final double LEAST_IN_A_REGION = 0.90;

  /**
   * What many studies gave.
   *
   * @param situation what went on in the laboratories
   * @param simulator which one drew them
   * @param units of each kind in a study
   * @param studies the judged graphs of each
   */
  record Row(String situation, String simulator, int units, List<List<Judged>> studies) {

    private List<List<Point>> points() {
      return studies.stream()
          .map(s -> s.stream().flatMap(g -> g.points().stream()).toList())
          .toList();
    }

    Clustered inside() {
      return Clustered.mean(points(), (Point p) -> p.inside() ? 1 : 0);
    }

    /** The part of the judgements that is held least often, by region or by kind and region. */
    private Part least(boolean byKind) {
      return parts(byKind).stream()
          .min(Comparator.comparingDouble(p -> p.inside.value()))
          .orElseThrow();
    }

    private List<Part> parts(boolean byKind) {
      List<List<Point>> all = points();
      List<String> kinds =
          byKind
              ? all.stream().flatMap(List::stream).map(Point::kind).distinct().sorted().toList()
              : List.of("");
      return kinds.stream()
          .flatMap(k -> Arrays.stream(Region.values()).map(r -> Part.of(all, k, r)))
          .toList();
    }

    Part leastRegion() {
      return least(false);
    }

    Part leastOfAKind() {
      return least(true);
    }

    Clustered rms(Region region, boolean offset) {
      return Clustered.mean(
              only(points(), "", region),
              (Point p) -> {
                double errorDb = offset ? p.offsetErrorDb() : p.errorDb();
                return errorDb * errorDb;
              })
          .squareRoot();
    }

    Optional<Clustered> whole() {
      boolean known =
          studies.stream().flatMap(List::stream).allMatch(g -> g.wholeInside().isPresent());
      return known
          ? Optional.of(Clustered.mean(studies, (Judged g) -> g.wholeInside().get() ? 1 : 0))
          : Optional.empty();
    }

    double largestFalseStepDb() {
      return studies.stream()
          .flatMap(List::stream)
          .mapToDouble(Judged::falseStepDb)
          .max()
          .orElseThrow();
    }
  }

  /** A region, or a kind's region, and the share inside there. */
  record Part(String name, Clustered inside) {
    private static Part of(List<List<Point>> all, String kind, Region region) {
      return new Part(
          (kind + " " + region.word()).strip(),
          Clustered.mean(only(all, kind, region), (Point p) -> p.inside() ? 1 : 0));
    }
  }

  private static List<List<Point>> only(List<List<Point>> all, String kind, Region region) {
    return all.stream()
        .map(
            s ->
                s.stream()
                    .filter(p -> p.region() == region && (kind.isEmpty() || p.kind().equals(kind)))
                    .toList())
        .toList();
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (Lab lab : List.of(new ChainLab(harness), new CurveLab(harness.seed()))) {
      for (int units : unitsPerKind) {
        rows.addAll(rows(harness, lab, units));
      }
    }
    List<String> order = Happening.ALL.stream().map(Happening::word).toList();
    return rows.stream().sorted(Comparator.comparingInt(r -> order.indexOf(r.situation))).toList();
  }

  /** Every situation on one simulator, as far as it is tried with so many units. */
  List<Row> rows(Harness harness, Lab lab, int units) {
    List<Row> rows = new ArrayList<>();
    for (OfStudy what : OfStudy.values()) {
      if (what == OfStudy.USUAL || units < MANY_UNITS) {
        rows.addAll(rows(harness, lab, units, what));
      }
    }
    return rows;
  }

  /** What shares its studies is judged on them at once. */
  private List<Row> rows(Harness harness, Lab lab, int units, OfStudy what) {
    List<Happening> happenings = Happening.ALL.stream().filter(h -> h.study() == what).toList();
    List<List<List<Judged>>> studies =
        harness.each(
            lab.word() + ", " + units + " units per kind, " + happenings.get(0).word(),
            study -> judged(new Draw(lab, harness.seed(), units, study), happenings));
    return happenings.stream()
        .map(
            h ->
                new Row(
                    h.word(),
                    lab.word(),
                    units,
                    studies.stream().map(s -> s.get(happenings.indexOf(h))).toList()))
        .toList();
  }

  private List<List<Judged>> judged(Draw draw, List<Happening> happenings) {
    Reexpressed study =
        Reexpressed.of(
            draw.lab().hz(), Harness.inForce(), Happening.units(happenings.get(0).study(), draw));
    return happenings.stream()
        .map(h -> h.newGraphs(draw, graphsPerKind).stream().map(study::judge).toList())
        .toList();
  }

  @Override
  public Table<Row> table() {
    Table<Row> table =
        new Table<Row>()
            .text("situation", Row::situation)
            .text("simulator", Row::simulator)
            .count("units", Row::units)
            .count("studies", r -> r.studies.size())
            .count("new_graphs", r -> r.studies.stream().mapToInt(List::size).sum())
            .figure("inside", "", Row::inside)
            .number("half_db", r -> Clustered.mean(r.points(), Point::halfDb).value())
            .text("least_region", r -> r.leastRegion().name)
            .figure("inside_least_region", "", r -> r.leastRegion().inside)
            .text("least_of_a_kind", r -> r.leastOfAKind().name)
            .figure("inside_least_of_a_kind", "", r -> r.leastOfAKind().inside)
            .figure(
                "graphs_inside_at_every_band",
                "",
                r -> Clustered.mean(r.studies, (Judged g) -> g.insideAtEveryPoint() ? 1 : 0))
            .maybe("graphs_inside_whole", r -> r.whole().map(Clustered::value))
            .maybe("graphs_inside_whole_mc_se", r -> r.whole().map(Clustered::se));
    for (Region region : Region.values()) {
      table =
          table
              .figure("rms_" + region.word(), "_db", r -> r.rms(region, false))
              .figure("rms_offset_" + region.word(), "_db", r -> r.rms(region, true));
    }
    return table
        .figure(
            "outside_the_study",
            "",
            r -> Clustered.mean(r.studies, (Judged g) -> g.outside() ? 1 : 0))
        .figure("false_step", "_db", r -> Clustered.mean(r.studies, Judged::falseStepDb))
        .figure(
            "false_step_offset", "_db", r -> Clustered.mean(r.studies, Judged::offsetFalseStepDb))
        .number("largest_false_step_db", Row::largestFalseStepDb)
        .figure("largest_step", "_db", r -> Clustered.mean(r.studies, Judged::saidStepDb));
  }

  @Override
  public List<String> broken(Row row) {
    if (!row.situation.equals(Happening.ALL.get(0).word())) {
      return List.of();
    }
    List<String> broken = new ArrayList<>();
    Clustered inside = row.inside();
    if (inside.value() < LEAST || inside.value() > MOST) {
      broken.add(IntervalProof.sentence(inside, inside.value() < LEAST ? LEAST : MOST));
    }
    Part least = row.leastRegion();
    if (least.inside.value() < LEAST_IN_A_REGION) {
      broken.add(least.name + ": " + IntervalProof.sentence(least.inside, LEAST_IN_A_REGION));
    }
    return broken;
  }
}
