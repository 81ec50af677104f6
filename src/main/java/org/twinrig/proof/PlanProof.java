package org.twinrig.proof;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Holds plans to their promise on simulated studies: a small study is planned, then gone on with to
 * the planned size, with further units and further seatings of the present ones from the same
 * simulator, and its half-width in every zone of which the plan says that it will be met, root mean
 * square over the bands, compared with the tolerance.
 */
public final class PlanProof {
  private final PlanTrials trials;
  private final Settings settings = Settings.defaults();

  private PlanProof(PlanTrials trials) {
    this.trials = trials;
  }

  /** Told how far a proof is; called from several threads at once. */
  @FunctionalInterface
  public interface Watcher {
    /**
     * Told after every small study and all that was drawn for its plans.
     *
     * @param done how many are done
     */
    void done(int done);
  }

  /**
   * Draws, plans and tries.
   *
   * @param trials what to try
   * @param threads how many threads to work on; the outcome does not depend on it
   * @param watcher is told how far it is
   * @return one row per kind in which any zone was planned, and one for all kinds together
   */
  public static List<PlanProofRow> run(PlanTrials trials, int threads, Watcher watcher) {
    PlanProof proof = new PlanProof(trials);
    AtomicInteger done = new AtomicInteger();
    List<List<Trial>> studies =
        Parallel.map(
            IntStream.range(0, trials.studies()).boxed().toList(),
            threads,
            study -> {
              List<Trial> tried =
                  trials.kinds().stream().flatMap(k -> proof.trials(k, study).stream()).toList();
              watcher.done(done.incrementAndGet());
              return tried;
            });
    List<PlanProofRow> rows = new ArrayList<>();
    for (SimulatedKind kind : trials.kinds()) {
      add(
          rows,
          kind.label(),
          studies.stream()
              .map(s -> s.stream().filter(t -> t.kind.equals(kind.label())).toList())
              .toList());
    }
    add(rows, PlanProofRow.ALL_KINDS, studies);
    return rows;
  }

  /** One zone under one design, and what a study of that design found. */
  private record Trial(String kind, Set<PlanProofRow.Claim> claims, Design design, double ratio) {
    boolean within(double factor) {
      return ratio <= factor;
    }
  }

  private static void add(List<PlanProofRow> rows, String kind, List<List<Trial>> studies) {
    for (PlanProofRow.Claim claim : PlanProofRow.Claim.values()) {
      List<List<Trial>> chosen =
          studies.stream()
              .map(s -> s.stream().filter(t -> t.claims.contains(claim)).toList())
              .toList();
      long zones = chosen.stream().mapToLong(List::size).sum();
      if (zones > 0) {
        rows.add(
            new PlanProofRow(
                kind,
                claim,
                (int) chosen.stream().filter(s -> !s.isEmpty()).count(),
                zones,
                mean(chosen, t -> t.within(1 + Plan.SLACK) ? 1 : 0),
                mean(chosen, t -> t.within(1) ? 1 : 0),
                mean(chosen, Trial::ratio),
                mean(chosen, t -> t.design.units()).value(),
                mean(chosen, t -> t.design.seatings()).value()));
      }
    }
  }

  private static Figure mean(List<List<Trial>> studies, ToDoubleFunction<Trial> value) {
    double[] sums =
        studies.stream().mapToDouble(s -> s.stream().mapToDouble(value).sum()).toArray();
    double[] counts = studies.stream().mapToDouble(List::size).toArray();
    return Clustered.ratio(sums, counts).figure();
  }

  private List<Trial> trials(SimulatedKind kind, int study) {
    KindOutcome pilot = analysed(trials.pilot(kind, study).draw());
    Plan plan = Plan.of(pilot.paired(), pilot.estimate(), trials.limits(), settings.confidence());
    Map<Design, KindEstimate> drawn = new HashMap<>();
    Function<Design, KindEstimate> continued =
        d -> drawn.computeIfAbsent(d, design -> continued(kind, study, design));
    List<Trial> tried = new ArrayList<>();
    for (ZonePlan zone : plan.zones()) {
      plan.whole()
          .filter(zone::meetsCautiously)
          .ifPresent(
              d ->
                  tried.add(
                      new Trial(kind.label(), claims(zone), d, ratio(zone, continued.apply(d)))));
      zone.evenChance()
          .ifPresent(
              d ->
                  tried.add(
                      new Trial(
                          kind.label(),
                          EnumSet.of(PlanProofRow.Claim.EVEN_CHANCE),
                          d,
                          ratio(zone, continued.apply(d)))));
    }
    return tried;
  }

  private static Set<PlanProofRow.Claim> claims(ZonePlan zone) {
    return zone.outlook() == ZonePlan.Outlook.MET
        ? EnumSet.of(PlanProofRow.Claim.PROMISED)
        : EnumSet.of(PlanProofRow.Claim.PROMISED, PlanProofRow.Claim.NEWLY_PROMISED);
  }

  /** Half-width reached over the tolerance. */
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

  private KindOutcome analysed(SimulatedStudy drawn) {
    try {
      return Analysis.of(drawn.declared(settings), drawn.captures(), "proof", 1).kinds().get(0);
    } catch (UnusableInput e) {
      throw new IllegalStateException("a simulated study must give a result", e);
    }
  }

  private KindEstimate continued(SimulatedKind kind, int study, Design design) {
    int seatings = Math.max(design.seatingsFrom(), design.seatingsTo());
    return estimate(trials.continued(kind, study, design.units(), seatings).draw(), design);
  }

  /** The estimate alone: nothing else of the analysis touches the half-widths. */
  private KindEstimate estimate(SimulatedStudy drawn, Design design) {
    Study study = drawn.declared(settings);
    List<Capture> seated =
        drawn.captures().stream().filter(c -> counts(c.entry(), study, design)).toList();
    List<AnchoredCapture> anchored = Anchoring.of(settings, 1).apply(seated).value();
    return TransferEstimator.withDefaults()
        .withConfidence(settings.confidence())
        .withModel(settings.model())
        .fit(new Pairing(study).pair(anchored, Unit.Role.FIT).get(0));
  }

  private static boolean counts(CaptureEntry entry, Study study, Design design) {
    boolean old = entry.fixture().equals(study.from().name());
    return entry.seating() <= (old ? design.seatingsFrom() : design.seatingsTo());
  }
}
