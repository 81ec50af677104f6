package org.twinrig.proof;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Holds plans to their promise: a small study is planned for 2 dB, then gone on with to the planned
 * size, with further units and further seatings of the present ones from the same simulator, and
 * its half-width in every zone of which the plan says that it will be met, root mean square over
 * the bands, compared with the tolerance.
 *
 * <p>The promise: of the zones a plan promises, {@link Plan#CHANCE} or more come within {@link
 * Plan#SLACK} of the tolerance, for every kind.
 *
 * @param units of each kind in a small study, as many as a study asks for or more
 * @param seatings of every unit on each fixture in a small study, 2 or more
 * @param kinds which kinds, each once
 */
record PlanProof(int units, int seatings, List<SimulatedKind> kinds)
    implements Proof<PlanProof.Row> {
  private static final Settings SETTINGS = Settings.defaults();
  private static final int POINTS = 120;
  private static final double TOLERANCE_DB = 2;

  /** The most a plan may ask for. */
  private static final int UNITS_MAX = 40;

  private static final int SEATINGS_MAX = 10;

  /** Stands for every kind. */
  static final String ALL_KINDS = "all kinds";

  /** What a plan says of a zone. */
  enum Claim {
    /** A study of the planned size meets the tolerance at the limits of the variances. */
    PROMISED,
    /** The same of a zone that the small study itself does not meet. */
    NEWLY_PROMISED,
    /** A study of the size that the variances ask for as they stand is expected to meet it. */
    EVEN_CHANCE;

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** One zone under one design, and the half-width reached over the tolerance. */
  private record Trial(String kind, Set<Claim> claims, Design design, double ratio) {
    double within(double factor) {
      return ratio <= factor ? 1 : 0;
    }
  }

  /**
   * How plans of one kind fared.
   *
   * @param kind the kind, or {@link #ALL_KINDS}
   * @param drawn how many small studies were drawn
   * @param studies in how many of them a plan made the claim of any zone
   * @param zones of how many zones it was made, all studies together
   * @param withinSlack share of them that came to no more than the tolerance and its slack
   * @param withinTolerance share that came to no more than the tolerance
   * @param ratio mean of the half-width reached over the tolerance
   * @param units mean number of units of the designs
   * @param seatings mean number of seatings of the designs, in all
   */
  record Row(
      String kind,
      Claim claim,
      int drawn,
      int studies,
      long zones,
      Clustered withinSlack,
      Clustered withinTolerance,
      Clustered ratio,
      Clustered units,
      Clustered seatings) {}

  /** The published proof from small studies of this size. */
  static PlanProof of(int units, int seatings) {
    return new PlanProof(
        units,
        seatings,
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR, SimulatedKind.IN_EAR));
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<List<Trial>> studies =
        harness.each(
            units + " units",
            s -> kinds.stream().flatMap(kind -> trials(harness, kind, s).stream()).toList());
    List<Row> rows = new ArrayList<>();
    for (SimulatedKind kind : kinds) {
      rows.addAll(rows(kind.label(), chosen(studies, t -> t.kind.equals(kind.label()))));
    }
    rows.addAll(rows(ALL_KINDS, studies));
    return rows;
  }

  private static List<Row> rows(String kind, List<List<Trial>> studies) {
    List<Row> rows = new ArrayList<>();
    for (Claim claim : Claim.values()) {
      List<List<Trial>> made = chosen(studies, t -> t.claims.contains(claim));
      long zones = made.stream().mapToLong(List::size).sum();
      if (zones > 0) {
        rows.add(
            new Row(
                kind,
                claim,
                studies.size(),
                (int) made.stream().filter(s -> !s.isEmpty()).count(),
                zones,
                Clustered.mean(made, t -> t.within(1 + Plan.SLACK)),
                Clustered.mean(made, t -> t.within(1)),
                Clustered.mean(made, Trial::ratio),
                Clustered.mean(made, t -> t.design.units()),
                Clustered.mean(made, t -> t.design.seatings())));
      }
    }
    return rows;
  }

  private static List<List<Trial>> chosen(List<List<Trial>> studies, Predicate<Trial> which) {
    return studies.stream().map(s -> s.stream().filter(which).toList()).toList();
  }

  private List<Trial> trials(Harness harness, SimulatedKind kind, int study) {
    SimulationPlan small =
        harness.plan(POINTS, List.of(kind), units, seatings, study, kind.label().hashCode());
    SimulatedStudy drawn = harness.draw(small);
    KindOutcome pilot = Harness.analysed(drawn.declared(SETTINGS), drawn.captures()).kinds().get(0);
    Plan plan = Plan.of(pilot.paired(), pilot.estimate(), limits(), SETTINGS.confidence());
    Map<Design, KindEstimate> done = new HashMap<>();
    Function<Design, KindEstimate> continued =
        design -> done.computeIfAbsent(design, d -> continued(harness, small, d));
    List<Trial> tried = new ArrayList<>();
    for (ZonePlan zone : plan.zones()) {
      BiFunction<Set<Claim>, Design, Trial> trial =
          (claims, d) -> new Trial(kind.label(), claims, d, ratio(zone, continued.apply(d)));
      plan.whole()
          .filter(zone::meetsCautiously)
          .ifPresent(d -> tried.add(trial.apply(claims(zone), d)));
      zone.evenChance().ifPresent(d -> tried.add(trial.apply(EnumSet.of(Claim.EVEN_CHANCE), d)));
    }
    return tried;
  }

  private static PlanLimits limits() {
    return new PlanLimits(
        DbLimit.everywhere(TOLERANCE_DB),
        SETTINGS.tolerance().equivalenceDb(),
        SETTINGS.minUnits(),
        UNITS_MAX,
        SEATINGS_MAX);
  }

  private static Set<Claim> claims(ZonePlan zone) {
    return zone.outlook() == ZonePlan.Outlook.MET
        ? EnumSet.of(Claim.PROMISED)
        : EnumSet.of(Claim.PROMISED, Claim.NEWLY_PROMISED);
  }

  private static double ratio(ZonePlan zone, KindEstimate continued) {
    double meanSquare =
        continued.bands().stream()
            .filter(b -> b.band().midHz() > zone.fromHz() && b.band().midHz() < zone.toHz())
            .filter(BandOutcome.Fitted.class::isInstance)
            .mapToDouble(b -> ((BandOutcome.Fitted) b).prediction().halfDb())
            .map(half -> half * half)
            .average()
            .orElseThrow();
    return Math.sqrt(meanSquare) / zone.toleranceDb();
  }

  /**
   * The small study gone on with: the same units with further seatings, and further units. Draws
   * depend on what they are for, so that what was captured stays as it is. Only the estimate is
   * made: nothing else of the analysis touches the half-widths.
   */
  private static KindEstimate continued(Harness harness, SimulationPlan small, Design design) {
    SimulatedStudy drawn =
        harness.draw(
            small
                .withUnitsPerKind(design.units())
                .withSeatings(Math.max(design.seatingsFrom(), design.seatingsTo())));
    Study study = drawn.declared(SETTINGS);
    List<Capture> seated = drawn.captures().stream().filter(c -> counts(c, study, design)).toList();
    return new TransferEstimator(SETTINGS.confidence(), SETTINGS.get(Setting.MODEL), 1)
        .fit(Harness.paired(study, seated).get(0));
  }

  private static boolean counts(Capture capture, Study study, Design design) {
    boolean old = capture.entry().fixture().equals(study.from().name());
    return capture.entry().seating() <= (old ? design.seatingsFrom() : design.seatingsTo());
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .count("pilot_units", r -> units)
        .count("pilot_seatings", r -> seatings)
        .number("tolerance_db", r -> TOLERANCE_DB)
        .text("kind", Row::kind)
        .text("claim", r -> r.claim.word())
        .count("trials", Row::drawn)
        .count("studies", Row::studies)
        .count("zones", Row::zones)
        .figure("within_ten_percent", "", Row::withinSlack)
        .figure("within_tolerance", "", Row::withinTolerance)
        .figure("ratio", "", Row::ratio)
        .number("mean_units", r -> r.units.value())
        .number("mean_seatings", r -> r.seatings.value());
  }

  @Override
  public List<String> broken(Row row) {
    return row.claim != Claim.PROMISED || row.withinSlack.value() >= Plan.CHANCE
        ? List.of()
        : List.of("fewer than 90 % came within 10 % of the tolerance");
  }
}
