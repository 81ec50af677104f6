package org.twinrig.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
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
 * Holds plans to their promise on simulated studies: a small study is planned zone by zone, then a
 * fresh study of the planned size is drawn from the same simulator, and its half-width in the zone,
 * root mean square over the bands, compared with the tolerance.
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

  /** One plan of one zone, and what a study made after it found. */
  private record Trial(String kind, boolean assured, Design design, double ratio) {
    boolean within(double factor) {
      return ratio <= factor;
    }
  }

  private static void add(List<PlanProofRow> rows, String kind, List<List<Trial>> studies) {
    for (boolean assured : new boolean[] {true, false}) {
      List<List<Trial>> chosen =
          studies.stream().map(s -> s.stream().filter(t -> t.assured == assured).toList()).toList();
      long zones = chosen.stream().mapToLong(List::size).sum();
      if (zones > 0) {
        rows.add(
            new PlanProofRow(
                kind,
                assured,
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
    Plan plan =
        Plan.of(
            pilot.paired(),
            pilot.estimate(),
            pilot.zones(),
            trials.limits(),
            settings.confidence());
    Map<Design, KindEstimate> fresh = new HashMap<>();
    List<Trial> tried = new ArrayList<>();
    for (ZonePlan zone : plan.zones()) {
      zone.assured()
          .ifPresent(
              d -> tried.add(trial(kind, zone, new Choice(true, d), fresh(fresh, kind, study, d))));
      zone.evenChance()
          .ifPresent(
              d ->
                  tried.add(trial(kind, zone, new Choice(false, d), fresh(fresh, kind, study, d))));
    }
    return tried;
  }

  private record Choice(boolean assured, Design design) {}

  private static Trial trial(SimulatedKind kind, ZonePlan zone, Choice choice, KindEstimate fresh) {
    double meanSquare =
        fresh.bands().stream()
            .filter(b -> b.band().midHz() > zone.fromHz() && b.band().midHz() < zone.toHz())
            .filter(BandOutcome.Fitted.class::isInstance)
            .mapToDouble(b -> ((BandOutcome.Fitted) b).prediction().halfDb())
            .map(half -> half * half)
            .average()
            .orElseThrow();
    return new Trial(
        kind.label(), choice.assured, choice.design, Math.sqrt(meanSquare) / zone.toleranceDb());
  }

  private KindOutcome analysed(SimulatedStudy drawn) {
    try {
      return Analysis.of(drawn.declared(settings), drawn.captures(), "proof", 1).kinds().get(0);
    } catch (UnusableInput e) {
      throw new IllegalStateException("a simulated study must give a result", e);
    }
  }

  private KindEstimate fresh(
      Map<Design, KindEstimate> known, SimulatedKind kind, int study, Design design) {
    return known.computeIfAbsent(
        design,
        d -> {
          int seatings = Math.max(d.seatingsFrom(), d.seatingsTo());
          return estimate(trials.fresh(kind, study, d.units(), seatings).draw(), d);
        });
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
