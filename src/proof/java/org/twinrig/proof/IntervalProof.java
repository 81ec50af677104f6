package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.twinrig.PlannedStudy;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.UnseenUnits.Judgement;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PredictionModel;

/**
 * Whether 95 % prediction intervals hold units that a study never saw, under the plain offset and
 * under another model; see {@link UnseenUnits} for one study.
 *
 * <p>The promise: for every number of units from eight on, kind and sort of old graph, unseen units
 * lie inside 93 % to 97 % of the time averaged over the bands, and no less than 90 % of the time in
 * any region.
 *
 * <p>A judgement is one band of one unit. Judgements of one study are dependent (neighbouring bands
 * share errors, all its units share one estimate), so that the Monte Carlo standard error of every
 * figure is taken between studies.
 *
 * @param unitsPerKind how many units of each kind enter the fit; one or more different numbers
 * @param kinds which kinds, each once
 * @param seatings of every unit on each fixture, 1 or more
 * @param unseenPerKind units of each kind that no fit sees, 1 or more
 * @param tried what is tried beside the plain offset
 */
record IntervalProof(
    List<Integer> unitsPerKind,
    List<SimulatedKind> kinds,
    int seatings,
    int unseenPerKind,
    PredictionModel tried)
    implements Proof<IntervalProof.Row> {

  /** All bands, each counting once: what the stated level is averaged over. */
  static final String ALL_BANDS = "all bands";

  /** The plain mean of the regions' figures, however many bands they have. */
  static final String MEAN_OF_REGIONS = "mean of regions";

  /** Coarse enough to be quick. */
  private static final int POINTS = 120;

  /** Averaged over the bands, at least and at most this share inside. */
  private static final double LEAST = 0.93;

  private static final double MOST = 0.97;

  private static final double LEAST_IN_A_REGION = 0.90;

  /** With fewer units it is said what was measured, and nothing is promised. */
  private static final int FEWEST_UNITS = 8;

  /** So many standard errors from the bound, chance alone is a poor explanation. */
  private static final double CHANCE = 2;

  /** The judgements of one study, under both models. */
  record Judged(List<Judgement> offset, List<Judgement> tried) {
    Judged {
      if (offset.size() != tried.size()) {
        throw new IllegalStateException("both models must be tried on the same units and bands");
      }
    }

    private Judged only(Predicate<Judgement> which) {
      return new Judged(
          offset.stream().filter(which).toList(), tried.stream().filter(which).toList());
    }
  }

  /**
   * Figures of many studies under one model.
   *
   * @param rmsDb root mean square error on unseen units, dB
   * @param coverage share of unseen units, band by band, inside their prediction interval
   * @param below share of re-captures that lie below the interval; with an even spread half of what
   *     is not inside
   * @param halfDb mean half-width of the prediction interval, dB
   */
  record Figures(Clustered rmsDb, Clustered coverage, Clustered below, Clustered halfDb) {
    private static Figures of(List<List<Judgement>> studies) {
      return new Figures(
          Clustered.mean(studies, (Judgement j) -> j.errorDb() * j.errorDb()).squareRoot(),
          Clustered.mean(studies, (Judgement j) -> j.inside() ? 1 : 0),
          Clustered.mean(studies, (Judgement j) -> j.below() ? 1 : 0),
          Clustered.mean(studies, Judgement::halfDb));
    }

    private static Figures average(List<Figures> parts) {
      return new Figures(
          Clustered.average(parts.stream().map(Figures::rmsDb).toList()),
          Clustered.average(parts.stream().map(Figures::coverage).toList()),
          Clustered.average(parts.stream().map(Figures::below).toList()),
          Clustered.average(parts.stream().map(Figures::halfDb).toList()));
    }
  }

  /**
   * What many studies gave.
   *
   * @param units of the kind that entered each fit
   * @param graphSeatings how many seatings the old graphs average
   * @param span a region's word, {@link #ALL_BANDS} or {@link #MEAN_OF_REGIONS}
   * @param judgements how many bands of units were judged, under each model
   */
  record Row(
      int units,
      String kind,
      int graphSeatings,
      String span,
      int studies,
      long judgements,
      Figures offset,
      Figures tried) {
    Optional<Region> region() {
      return Arrays.stream(Region.values()).filter(r -> r.word().equals(span)).findFirst();
    }
  }

  /** The published proof, with a model beside the offset. */
  static IntervalProof of(PredictionModel tried, Integer... unitsPerKind) {
    return new IntervalProof(
        List.of(unitsPerKind),
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR),
        5,
        4,
        tried);
  }

  /** How many seatings the old graphs average: as many as in the study, and once a single one. */
  List<Integer> graphSeatings() {
    return seatings == 1 ? List.of(1) : List.of(seatings, 1);
  }

  /** One study. */
  SimulatedStudy draw(Harness harness, int units, int study) {
    return harness.draw(
        PlannedStudy.heldOut(
            harness.plan(POINTS, kinds, units, seatings, units, study), unseenPerKind));
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (int units : unitsPerKind) {
      List<Judged> studies =
          harness.each(units + " units per kind", study -> judged(draw(harness, units, study)));
      for (int ofGraph : graphSeatings()) {
        for (SimulatedKind kind : kinds) {
          rows.addAll(rows(units, kind.label(), ofGraph, studies));
        }
      }
    }
    return rows;
  }

  private Judged judged(SimulatedStudy drawn) {
    return new Judged(judged(drawn, PredictionModel.OFFSET), judged(drawn, tried));
  }

  private List<Judgement> judged(SimulatedStudy drawn, PredictionModel model) {
    UnseenUnits unseen = UnseenUnits.of(drawn, model);
    return graphSeatings().stream().flatMap(m -> unseen.judge(m).stream()).toList();
  }

  /** Of one kind and sort of old graph: the regions, all bands, and the mean of the regions. */
  static List<Row> rows(int units, String kind, int graphSeatings, List<Judged> studies) {
    List<Judged> these =
        studies.stream()
            .map(s -> s.only(j -> j.kind().equals(kind) && j.graphSeatings() == graphSeatings))
            .toList();
    List<Row> rows = new ArrayList<>();
    for (Region region : Region.values()) {
      List<Judged> there = these.stream().map(s -> s.only(j -> j.region() == region)).toList();
      rows.add(row(units, kind, graphSeatings, region.word(), there));
    }
    Figures offset = Figures.average(rows.stream().map(Row::offset).toList());
    Figures tried = Figures.average(rows.stream().map(Row::tried).toList());
    Row all = row(units, kind, graphSeatings, ALL_BANDS, these);
    rows.add(all);
    rows.add(
        new Row(
            units,
            kind,
            graphSeatings,
            MEAN_OF_REGIONS,
            these.size(),
            all.judgements,
            offset,
            tried));
    return rows;
  }

  private static Row row(
      int units, String kind, int graphSeatings, String span, List<Judged> studies) {
    return new Row(
        units,
        kind,
        graphSeatings,
        span,
        studies.size(),
        studies.stream().mapToLong(s -> s.offset.size()).sum(),
        Figures.of(studies.stream().map(Judged::offset).toList()),
        Figures.of(studies.stream().map(Judged::tried).toList()));
  }

  @Override
  public Table<Row> table() {
    String model = word(tried);
    return new Table<Row>()
        .count("units", r -> r.units)
        .text("kind", r -> r.kind)
        .count("graph_seatings", r -> r.graphSeatings)
        .text("region", r -> r.span)
        .hz("from_hz", r -> Optional.of(r.region().orElse(Region.BASS).fromHz()))
        .hz("to_hz", r -> Optional.of(r.region().orElse(Region.TOP).toHz()))
        .count("studies", Row::studies)
        .count("judgements", Row::judgements)
        .figure("rms_offset", "_db", r -> r.offset.rmsDb())
        .figure("rms_" + model, "_db", r -> r.tried.rmsDb())
        .figure("ratio", "", r -> r.tried.rmsDb().over(r.offset.rmsDb()))
        .figure("coverage_offset", "", r -> r.offset.coverage())
        .figure("coverage_" + model, "", r -> r.tried.coverage())
        .number("half_offset_db", r -> r.offset.halfDb().value())
        .number("half_" + model + "_db", r -> r.tried.halfDb().value())
        .number("below_offset", r -> r.offset.below().value())
        .number("below_" + model, r -> r.tried.below().value());
  }

  @Override
  public List<String> broken(Row row) {
    List<String> broken = new ArrayList<>();
    if (row.units < FEWEST_UNITS) {
      return broken;
    }
    brokenBound(row.span, row.offset.coverage())
        .ifPresent(b -> broken.add("offset: " + sentence(row.offset.coverage(), b)));
    brokenBound(row.span, row.tried.coverage())
        .ifPresent(b -> broken.add(word(tried) + ": " + sentence(row.tried.coverage(), b)));
    return broken;
  }

  /** The bound that a coverage breaks; nothing is promised of the mean of regions. */
  static OptionalDouble brokenBound(String span, Clustered coverage) {
    if (span.equals(MEAN_OF_REGIONS)) {
      return OptionalDouble.empty();
    }
    double least = span.equals(ALL_BANDS) ? LEAST : LEAST_IN_A_REGION;
    if (coverage.value() < least) {
      return OptionalDouble.of(least);
    }
    return span.equals(ALL_BANDS) && coverage.value() > MOST
        ? OptionalDouble.of(MOST)
        : OptionalDouble.empty();
  }

  /** The share is printed on the same side of the printed bound as it is of the bound. */
  static String sentence(Clustered coverage, double bound) {
    boolean below = coverage.value() < bound;
    int sign = below ? -1 : 1; // what is above a lower bound, mirrored, is below
    String share = Numbers.against(sign * coverage.value() * 100, sign * bound * 100, 1);
    boolean chance = Math.abs(coverage.value() - bound) <= CHANCE * coverage.se();
    return share.replace("-", "")
        + " ± "
        + Numbers.fixed(coverage.se() * 100, 1)
        + (below ? " % inside, but at least " : " % inside, but at most ")
        + Numbers.fixed(bound * 100, 0)
        + " % is promised"
        + (chance ? " (within two standard errors: more studies must tell)" : "");
  }

  private static String word(PredictionModel model) {
    return model.name().toLowerCase(Locale.ROOT);
  }
}
