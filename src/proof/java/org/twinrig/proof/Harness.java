package org.twinrig.proof;

import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Reason;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;

/**
 * Draws simulated studies for a proof and works on them in parallel. Equal studies, seed and
 * situation give equal figures on any number of threads.
 *
 * @param studies how many studies to draw for each case, 2 or more: errors are taken between them
 * @param seed of everything random
 * @param threads how many threads to work on
 * @param situation what is other than usual
 * @param watcher told how far it is, from several threads
 */
record Harness(int studies, long seed, int threads, Situation situation, Consumer<String> watcher) {
  private static final int PROGRESS_STEPS = 10;

  /** The least number of studies a standard error between studies can be taken from. */
  static final int FEWEST_STUDIES = 2;

  Harness {
    if (studies < FEWEST_STUDIES) {
      throw new IllegalArgumentException("studies must be 2 or more, but is " + studies);
    }
  }

  /** The same studies in another situation. */
  Harness in(Situation other) {
    return new Harness(studies, seed, threads, other, watcher);
  }

  /**
   * A clean study to be drawn, or to be changed first.
   *
   * @param points of the frequency axis; every band of the default grid lies wholly inside
   * @param draw numbers that tell this draw from the others of the seed
   */
  SimulationPlan plan(
      int points, List<SimulatedKind> kinds, int units, int seatings, long... draw) {
    long mixed = Chance.mixed(seed);
    for (long number : draw) {
      mixed = Chance.mixed(mixed ^ number);
    }
    return SimulationPlan.standard()
        .withKinds(kinds.toArray(SimulatedKind[]::new))
        .withUnitsPerKind(units)
        .withSeatings(seatings)
        .withAxis(new SimulationPlan.Axis(points, 10, 22_000))
        .withSeed(mixed);
  }

  SimulatedStudy draw(SimulationPlan plan) {
    return situation.draw().apply(plan);
  }

  /** What the work gives for every study, in their order; the watcher hears of every tenth. */
  <T> List<T> each(String what, IntFunction<T> work) {
    AtomicInteger count = new AtomicInteger();
    return Parallel.map(
        IntStream.range(0, studies).boxed().toList(),
        threads,
        study -> {
          T result = work.apply(study);
          int done = count.incrementAndGet();
          if (done * PROGRESS_STEPS / studies > (done - 1) * PROGRESS_STEPS / studies) {
            watcher.accept(what + ": " + done + " of " + studies + " studies.");
          }
          return result;
        });
  }

  /** The whole way of a study. */
  static StudyOutcome analysed(Study study, List<Capture> captures) {
    try {
      return Analysis.of(study, captures, "proof", 1);
    } catch (UnusableInput e) {
      throw new IllegalStateException("a simulated study must give a result", e);
    }
  }

  /** As settings are when a lab says nothing, but for the model: the one the proofs try. */
  static Settings inForce() {
    return Settings.defaults().with(Setting.MODEL, PredictionModel.AVERAGE);
  }

  /** Whether the program says of a graph that the study has no unit like this one. */
  static boolean calledOutside(TranslatedGraph graph) {
    return graph.reasons().contains(Reason.OUTSIDE_THE_STUDY);
  }

  /** Half-width of the interval that holds the whole curve, dB; nothing where there is no level. */
  static OptionalDouble wholeHalfDb(TranslatedBand band) {
    return band.predicted().stream().mapToDouble(p -> p.whole().halfDb()).findFirst();
  }

  /** The fitting units, kind by kind, of captures in which nothing goes wrong: none is screened. */
  static List<PairedUnits> paired(Study study, List<Capture> captures) {
    return new Pairing(study)
        .pair(Anchoring.of(study.settings(), 1).apply(captures).value(), Unit.Role.FIT);
  }
}
