package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.study.PairedUnits;

/**
 * How many units and seatings a kind needs so that its prediction intervals meet a tolerance, zone
 * by zone, and where no number of them is enough.
 *
 * <p>What is planned is the half-width that transfer.csv will give, {@code t_ν·s} (see {@code
 * regression.ErrorVariance}), for graphs and re-captures averaged over the seatings of the design;
 * {@code ν} less the units' own {@code n-1} stays what it is. At a band, a study of {@code n} units
 * with {@code m_A} and {@code m_B} seatings is expected to find
 *
 * <p>{@code s² = (r + a/m_A + s2_B/m_B)·n/(n-1-p)},
 *
 * <p>with {@code a = cᵀ S_A c} where a window predicts and {@code s2_A} where the offset does;
 * {@code p = Σ wᵢᵀ(WᵀW+λI)⁻¹wᵢ} the coefficients the window spends (0 for the offset, whose factor
 * {@code n/(n-1)} is that of a unit left out, {@code 1 + 1/(n-1)}); and {@code r = max(0,
 * s₀²·(n₀-1-p)/n₀ - a/ñ_A - s2_B/ñ_B)} from the study at hand with its {@code n₀} units. A zone's
 * half-width is the root mean square over its bands. As {@code n} and {@code m} grow it goes to
 * {@code z·√mean(r)}: what units differ by beyond what the rule says of them, which no plan cures.
 *
 * <p>Zones are octaves of base ten (IEC 61260-1), cut where the tolerance has a step (less than
 * half an octave at an end of the grid joins its neighbour), and not the zones of the study's
 * marks: those are drawn around what this study's few units happened to show, and a narrow zone
 * that is nearly good enough is so partly by luck. When plans for marked zones were tried on
 * simulated studies, about half of them failed.
 *
 * <p>A plan goes on with the study: its units stay and get further seatings, further units join
 * them. The variances it is made from are estimates, often from few units, and so will those of the
 * finished study be. A plan made from them as they stand is met by about every other study ({@link
 * ZonePlan#evenChance}). {@link ZonePlan#cautious} therefore takes the {@link #LIMIT} limit of what
 * the finished study will find. With {@code E} the expected mean square of the design, {@code W}
 * what the study has found by {@code s₀²} on the same scale, {@code q = E/W} (at most 1), {@code φ
 * = (n-n₀)/(n-1)} the share of degrees of freedom that is added and {@code κ = 1-φ} the one that is
 * kept,
 *
 * <p>{@code U = E + √((φ·E·f(n-n₀))² + (κ·E·f(n₀-1))²·(1-q²) + ((φ+κ(1-q²))·W·g)² + Σ_g
 * (C_g·h_g)²)},
 *
 * <p>{@code f(ν) = χ²_{ν;0.95}/ν - 1} for the scatter of what is new, {@code g = ν₀/χ²_{ν₀;0.05} -
 * 1} with {@code ν₀ = n₀-1} for the error of what was found, {@code C_g} what changing the seatings
 * on a fixture changes and {@code h_g} the same for its seating variance. The root of the sum of
 * squares joins the limits as the modified large-sample method does.
 *
 * <p>The factors of the kept units: seated again, a unit's mean difference has the squared
 * correlation {@code q} with its earlier one, because the earlier seatings are part of the later
 * mean. Given the earlier ones, the variance of the later ones over {@code ν₀} degrees of freedom
 * is a noncentral χ² with mean {@code E} and the relative variance {@code 2(1-q²)/ν₀}; the
 * derivative of its mean by {@code W}, what was found being held, is {@code 1-q²}. Where no seating
 * is added ({@code q = 1}) the kept units are what they are. With {@code q = 0} and one design as
 * large as the other, {@code U/E} is near the quantile of F that is exact for two studies.
 *
 * <p>A design is cautious when it is expected to meet the tolerance and its limit exceeds it by no
 * more than {@link #SLACK}. The limit is one of 95 % before the study at hand is seen. An octave is
 * said to come within reach most readily where the study's variance came out too small, so that
 * less than 95 % of such octaves keep it; that {@link #CHANCE} of them do is tried on simulated
 * studies by {@code org.twinrig.proof.PlanProof}. With limits of 90 %, 81 of 95 octaves came within
 * the slack that 8 units had not met already (500 studies of three kinds).
 *
 * <p>Beside it, {@link ZonePlan#unitsToShow} says how many units show a mean difference of a given
 * size: the mean is known long before single units are predicted well.
 *
 * <p>Assumed: new units come from the same population as the present ones, and seatings scatter as
 * they did; differences are near normal; the rule of every band stays what the study chose. With
 * more units the program may find a better rule, so that a plan can be met earlier, and a zone that
 * no plan cures under the present rule may still gain. Wandering resonances, the range of an ear
 * simulator and declared zones keep a mark at caution whatever the half-width is.
 *
 * <p>Sources: Kupper and Hafner 1989, Am. Stat. 43:101 (a sample size for the width of an interval
 * needs the chance of reaching it); Graybill and Wang 1980, J. Am. Stat. Assoc. 75:869, and Ting et
 * al. 1990, J. Stat. Comput. Simul. 35:135 (limits of sums and differences of variances). All from
 * memory.
 *
 * @param present the design of the study at hand, its seatings rounded
 * @param zones the octaves that have an estimate, rising in frequency
 * @param bands every band that has an estimate
 * @param evenWhole the cheapest design that is expected to meet all zones for which one is, and to
 *     keep those that are met; nothing where there is no such zone or no such design
 * @param whole the cheapest design that meets all zones that are {@linkplain
 *     ZonePlan.Outlook#PLANNED planned}, and keeps those that are met; nothing when there is none
 */
public record Plan(
    String kind,
    Design present,
    int presentSeatings,
    List<ZonePlan> zones,
    List<BandPlan> bands,
    Optional<Design> evenWhole,
    Optional<Design> whole) {

  /** How likely a new study meets a cautious design. */
  public static final double CHANCE = 0.9;

  /**
   * Where the limits of the variances are taken: higher than {@link #CHANCE}, because designs are
   * chosen where the study's variance came out small.
   */
  static final double LIMIT = 0.95;

  /** By how much of the tolerance it may then still exceed it. */
  public static final double SLACK = 0.1;

  private static final double OCTAVE_LG = 0.3;

  public Plan {
    zones = List.copyOf(zones);
    bands = List.copyOf(bands);
  }

  /**
   * One band under a plan: the half-width to be reached, that of the study, that expected of {@link
   * Plan#evenWhole} (of the study where there is none), and the one no number of units and seatings
   * goes below; all in dB.
   */
  public record BandPlan(
      Band band,
      double toleranceDb,
      double presentHalfDb,
      double plannedHalfDb,
      double neverBelowDb) {
    public BandPlan {
      Checks.positive(toleranceDb, "a tolerance in dB");
      Checks.notNegative(presentHalfDb, "a half-width in dB");
      Checks.notNegative(plannedHalfDb, "a half-width in dB");
      Checks.notNegative(neverBelowDb, "a half-width in dB");
    }

    /** Whether units and seatings can bring the band to its tolerance. */
    public boolean curable() {
      return neverBelowDb <= toleranceDb;
    }
  }

  /** Plans a kind, with prediction intervals at a confidence. */
  public static Plan of(
      PairedUnits paired, KindEstimate estimate, PlanLimits limits, double confidence) {
    return new Planner(paired, estimate, limits, confidence).plan();
  }

  private record Planner(
      PairedUnits paired, KindEstimate estimate, PlanLimits limits, double confidence) {

    Plan plan() {
      List<ZonePlan> plans = zones().stream().map(this::plan).toList();
      Optional<Design> even =
          whole(plans, p -> p.evenChance().isPresent(), (p, design) -> p.expects(design));
      Optional<Design> whole =
          whole(plans, p -> p.cautious().isPresent(), (p, design) -> p.meetsCautiously(design));
      int seatings = count(paired.from()) + count(paired.to());
      return new Plan(paired.kind(), present(), seatings, plans, bands(even), even, whole);
    }

    /** The cheapest design that serves all zones that can be served, and keeps those met. */
    private Optional<Design> whole(
        List<ZonePlan> plans, Predicate<ZonePlan> servable, BiPredicate<ZonePlan, Design> serves) {
      List<ZonePlan> wanted = plans.stream().filter(servable).toList();
      List<ZonePlan> kept =
          plans.stream().filter(p -> p.outlook() == ZonePlan.Outlook.MET).toList();
      return wanted.isEmpty()
          ? Optional.empty()
          : cheapest(
              plans,
              d ->
                  wanted.stream().allMatch(p -> serves.test(p, d))
                      && kept.stream().allMatch(p -> p.expects(d)));
    }

    private Design present() {
      int units = paired.units().size();
      return new Design(
          units,
          (int) Math.max(1, Math.round((double) count(paired.from()) / units)),
          (int) Math.max(1, Math.round((double) count(paired.to()) / units)));
    }

    private static int count(PairedUnits.OnFixture fixture) {
      return fixture.curves().stream().mapToInt(List::size).sum();
    }

    /** The bands that have an estimate, octave by octave, cut where the tolerance has a step. */
    private List<List<BandOutcome.Fitted>> zones() {
      List<List<BandOutcome.Fitted>> zones = new ArrayList<>();
      BandOutcome.Fitted last = null;
      for (BandOutcome outcome : estimate.bands()) {
        if (outcome instanceof BandOutcome.Fitted fitted) {
          if (last == null
              || octave(last) != octave(fitted)
              || toleranceDb(last) != toleranceDb(fitted)) {
            zones.add(new ArrayList<>());
          }
          zones.get(zones.size() - 1).add(fitted);
          last = fitted;
        }
      }
      joinEdges(zones);
      return zones;
    }

    /** At the ends of the grid less than half an octave joins its neighbour. */
    private void joinEdges(List<List<BandOutcome.Fitted>> zones) {
      if (zones.size() > 1 && joins(zones.get(0), zones.get(1))) {
        zones.get(1).addAll(0, zones.remove(0));
      }
      int last = zones.size() - 1;
      if (last > 0 && joins(zones.get(last), zones.get(last - 1))) {
        zones.get(last - 1).addAll(zones.remove(last));
      }
    }

    private boolean joins(List<BandOutcome.Fitted> edge, List<BandOutcome.Fitted> neighbour) {
      return 2 * edge.size() < estimate.grid().perOctave()
          && toleranceDb(edge.get(0)) == toleranceDb(neighbour.get(0));
    }

    private static long octave(BandOutcome.Fitted band) {
      // A hair upwards, so that a band that lies on an edge belongs to the upper octave everywhere.
      return Math.round(Math.log10(band.band().midHz() / 1000) / OCTAVE_LG + 1e-9);
    }

    private double toleranceDb(BandOutcome.Fitted band) {
      return limits.tolerance().atHz(band.band().midHz());
    }

    private ZonePlan plan(List<BandOutcome.Fitted> bands) {
      ZoneVariance variance =
          new ZoneVariance(bands.stream().map(this::variance).toList(), confidence);
      ZonePlan open =
          new ZonePlan(
              bands.get(0).band().lowerHz(),
              bands.get(bands.size() - 1).band().upperHz(),
              toleranceDb(bands.get(0)),
              variance.units() >= limits.unitsMin(),
              variance,
              Optional.empty(),
              Optional.empty());
      return open.outlook() == ZonePlan.Outlook.MET || open.outlook() == ZonePlan.Outlook.NEVER
          ? open
          : open.with(
              cheapest(List.of(open), open::expects),
              cheapest(List.of(open), open::meetsCautiously));
    }

    private BandVariance variance(BandOutcome.Fitted fitted) {
      return BandVariance.of(paired, estimate.bands().indexOf(fitted), fitted);
    }

    /** The seatings that may be planned; as they are where their scatter is not known. */
    private List<Integer> seatings(List<ZonePlan> zones, boolean old) {
      int now = old ? present().seatingsFrom() : present().seatingsTo();
      int fewest = Math.max(now, PlanLimits.FEWEST_SEATINGS);
      return zones.stream().allMatch(z -> z.variance().seatingKnown(old))
              && fewest <= limits.seatingsMax()
          ? IntStream.rangeClosed(fewest, limits.seatingsMax()).boxed().toList()
          : List.of(now);
    }

    /** The fewest seatings in all; of equal ones the fewest units, then the fewest on the old. */
    private Optional<Design> cheapest(List<ZonePlan> zones, Predicate<Design> serves) {
      int fewest = zones.stream().mapToInt(z -> z.variance().units()).max().orElseThrow();
      List<Integer> old = seatings(zones, true);
      List<Integer> now = seatings(zones, false);
      List<Design> designs = new ArrayList<>();
      for (int n = Math.max(fewest, limits.unitsMin()); n <= limits.unitsMax(); n++) {
        for (int from : old) {
          for (int to : now) {
            designs.add(new Design(n, from, to));
          }
        }
      }
      return designs.stream()
          .sorted(
              Comparator.comparingInt(Design::seatings)
                  .thenComparingInt(Design::units)
                  .thenComparingInt(Design::seatingsFrom))
          .filter(serves)
          .findFirst();
    }

    private List<BandPlan> bands(Optional<Design> planned) {
      List<BandPlan> plans = new ArrayList<>();
      for (BandOutcome outcome : estimate.bands()) {
        if (outcome instanceof BandOutcome.Fitted fitted) {
          ZoneVariance alone = new ZoneVariance(List.of(variance(fitted)), confidence);
          double present = alone.presentHalfDb();
          plans.add(
              new BandPlan(
                  fitted.band(),
                  toleranceDb(fitted),
                  present,
                  planned.map(alone::halfDb).orElse(present),
                  alone.neverBelowDb()));
        }
      }
      return plans;
    }
  }
}
