package org.twinrig.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.twinrig.internal.Parallel;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;

/** Tries prediction intervals on simulated studies; see {@link UnseenUnits} for one study. */
public final class IntervalProof {
  private final ProofPlan plan;

  private IntervalProof(ProofPlan plan) {
    this.plan = plan;
  }

  /** Told how far a proof is; called from several threads at once. */
  @FunctionalInterface
  public interface Watcher {
    /**
     * Told after every study.
     *
     * @param units of each kind in the studies at hand
     * @param done how many of these studies are done
     */
    void done(int units, int done);
  }

  /**
   * Draws, analyses and judges all studies of a plan.
   *
   * @param plan what to try
   * @param threads how many threads to work on; the outcome does not depend on it
   * @param watcher is told how far it is
   * @return errors and coverage
   */
  public static ProofOutcome run(ProofPlan plan, int threads, Watcher watcher) {
    return new IntervalProof(plan).run(threads, watcher);
  }

  private ProofOutcome run(int threads, Watcher watcher) {
    List<ProofRow> rows = new ArrayList<>();
    for (int units : plan.unitsPerKind()) {
      AtomicInteger done = new AtomicInteger();
      List<Integer> studies = IntStream.range(0, plan.studies()).boxed().toList();
      List<StudyTally> tallies =
          Parallel.map(
              studies,
              threads,
              study -> {
                StudyTally tally = tally(units, study);
                watcher.done(units, done.incrementAndGet());
                return tally;
              });
      rows.addAll(rows(new Gathering(units, tallies)));
    }
    return new ProofOutcome(plan, Settings.defaults().confidence(), rows);
  }

  private StudyTally tally(int units, int study) {
    SimulatedStudy drawn = plan.simulation(units, study).draw();
    return new StudyTally(sums(drawn, PredictionModel.OFFSET), sums(drawn, plan.model()));
  }

  private Map<StudyTally.Cell, StudyTally.Sums> sums(SimulatedStudy drawn, PredictionModel model) {
    UnseenUnits unseen = UnseenUnits.of(drawn, model);
    return StudyTally.sums(
        plan.graphSeatings().stream().flatMap(m -> unseen.judge(m).stream()).toList());
  }

  private List<ProofRow> rows(Gathering gathering) {
    List<ProofRow> rows = new ArrayList<>();
    for (int graphSeatings : plan.graphSeatings()) {
      for (SimulatedKind kind : plan.kinds()) {
        rows.addAll(gathering.rows(kind.label(), graphSeatings));
      }
    }
    return rows;
  }
}
