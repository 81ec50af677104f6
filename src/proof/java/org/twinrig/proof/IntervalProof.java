package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.IntervalTally.Figures;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PredictionModel;

/**
 * Whether 95 % prediction intervals hold units that a study never saw, under the plain offset and
 * under another model; see {@link UnseenUnits} for one study.
 *
 * <p>The promise: for every number of units, kind and sort of old graph, unseen units lie inside 93
 * % to 97 % of the time averaged over the bands, and no less than 90 % of the time in any region.
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

  /** So many standard errors from the bound, chance alone is a poor explanation. */
  private static final double CHANCE = 2;

  /**
   * What a row is about.
   *
   * @param units of the kind that entered each fit
   * @param graphSeatings how many seatings the old graphs average
   * @param span a region's word, {@link #ALL_BANDS} or {@link #MEAN_OF_REGIONS}
   */
  record Case(int units, String kind, int graphSeatings, String span) {
    Optional<Region> region() {
      return Arrays.stream(Region.values()).filter(r -> r.word().equals(span)).findFirst();
    }
  }

  /**
   * What many studies gave.
   *
   * @param judgements how many bands of units were judged, under each model
   */
  record Row(Case of, int studies, long judgements, Figures offset, Figures tried) {}

  /** A bound that a row breaks under one model. */
  record Breach(Case of, PredictionModel model, Clustered coverage, double bound) {
    boolean below() {
      return coverage.value() < bound;
    }

    /** Whether the bound lies so near that more studies must tell. */
    boolean perhapsChance() {
      return Math.abs(coverage.value() - bound) <= CHANCE * coverage.se();
    }

    String text() {
      return of.units
          + " units, "
          + of.kind
          + ", old graphs of "
          + Numbers.count(of.graphSeatings, "seating", "seatings")
          + ", "
          + of.span
          + ", "
          + word(model)
          + ": "
          + sameSide()
          + " ± "
          + Numbers.fixed(coverage.se() * 100, 1)
          + (below() ? " % inside, but at least " : " % inside, but at most ")
          + Numbers.fixed(bound * 100, 0)
          + " % is promised"
          + (perhapsChance() ? " (within two standard errors: more studies must tell)." : ".");
    }

    /** Per cent on the same side of the printed bound as the share is of the bound. */
    private String sameSide() {
      int sign = below() ? -1 : 1; // what is above a lower bound, mirrored, is below
      return Numbers.against(sign * coverage.value() * 100, sign * bound * 100, 1).replace("-", "");
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
        harness
            .plan(POINTS, kinds, units, seatings, units, study)
            .withHoldoutsPerKind(unseenPerKind));
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (int units : unitsPerKind) {
      List<IntervalTally> studies =
          harness.each(units + " units per kind", study -> tally(draw(harness, units, study)));
      for (int seatingsOfGraph : graphSeatings()) {
        for (SimulatedKind kind : kinds) {
          rows.addAll(IntervalTally.rows(units, studies, kind.label(), seatingsOfGraph));
        }
      }
    }
    return rows;
  }

  private IntervalTally tally(SimulatedStudy drawn) {
    return new IntervalTally(sums(drawn, PredictionModel.OFFSET), sums(drawn, tried));
  }

  private Map<IntervalTally.Cell, IntervalTally.Sums> sums(
      SimulatedStudy drawn, PredictionModel model) {
    UnseenUnits unseen = UnseenUnits.of(drawn, model);
    return IntervalTally.sums(
        graphSeatings().stream().flatMap(m -> unseen.judge(m).stream()).toList());
  }

  @Override
  public Table<Row> table() {
    String model = word(tried);
    return new Table<Row>()
        .count("units", r -> r.of.units)
        .text("kind", r -> r.of.kind)
        .count("graph_seatings", r -> r.of.graphSeatings)
        .text("region", r -> r.of.span)
        .hz("from_hz", r -> Optional.of(r.of.region().orElse(Region.BASS).fromHz()))
        .hz("to_hz", r -> Optional.of(r.of.region().orElse(Region.TOP).toHz()))
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
    return breaches(row).stream().map(Breach::text).toList();
  }

  /** Under either model. */
  List<Breach> breaches(Row row) {
    return Stream.of(
            breach(row.of, PredictionModel.OFFSET, row.offset.coverage()),
            breach(row.of, tried, row.tried.coverage()))
        .flatMap(Optional::stream)
        .toList();
  }

  private static Optional<Breach> breach(Case of, PredictionModel model, Clustered coverage) {
    double share = coverage.value();
    if (of.span.equals(MEAN_OF_REGIONS)) {
      return Optional.empty(); // nothing is promised of it
    }
    double least = of.span.equals(ALL_BANDS) ? LEAST : LEAST_IN_A_REGION;
    if (share < least) {
      return Optional.of(new Breach(of, model, coverage, least));
    }
    return of.span.equals(ALL_BANDS) && share > MOST
        ? Optional.of(new Breach(of, model, coverage, MOST))
        : Optional.empty();
  }

  private static String word(PredictionModel model) {
    return model.name().toLowerCase(Locale.ROOT);
  }
}
