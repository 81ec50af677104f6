package org.twinrig.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Parallel;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Levels;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SealScore;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.SessionCorrection;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Tries the finding of lost seals on simulated studies in which it is known which seals were lost.
 *
 * <p>Every study is drawn twice from one seed, once with every seal good. What a lost seal cost is
 * the level of its capture below that of its good twin, and seatings scatter as the good ones do. A
 * lost seal counts when it cost at least 3 dB in the mean from 20 Hz to 100 Hz and more than three
 * standard deviations between good seatings of the kind on the fixture. Seals are lost on the new
 * fixture only.
 */
public final class SealProof {
  private static final double BASS_TO_HZ = 100;
  private static final double LEAST_COST_DB = 3;
  private static final double SIGMAS = 3;
  private static final double ERROR_TO_HZ = 200;
  private static final double[] FACTORS = {0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 2};

  private final SealPlan plan;

  private SealProof(SealPlan plan) {
    this.plan = plan;
  }

  /**
   * Draws and screens all studies of a plan.
   *
   * @param plan what to try
   * @param threads how many threads to work on; the outcome does not depend on it
   * @return one row per kind and limit, kinds in the order of their names, limits rising
   */
  public static List<SealRow> run(SealPlan plan, int threads) {
    SealProof proof = new SealProof(plan);
    List<Integer> studies = IntStream.range(0, plan.studies()).boxed().toList();
    Map<String, SealTally> tallies = new TreeMap<>();
    for (Map<String, SealTally> one : Parallel.map(studies, threads, proof::study)) {
      one.forEach((kind, tally) -> tallies.merge(kind, tally, SealTally::plus));
    }
    List<SealRow> rows = new ArrayList<>();
    tallies.forEach((kind, tally) -> rows.addAll(tally.rows(kind, FACTORS)));
    return rows;
  }

  private Map<String, SealTally> study(int index) {
    SimulatedStudy good = plan.sound(index).draw();
    SimulatedStudy leaking = plan.leaking(index).draw();
    Study study = good.declared(Settings.defaults().withModel(PredictionModel.OFFSET));
    List<Capture> captures = new ArrayList<>();
    List<Boolean> lost = new ArrayList<>();
    for (int k = 0; k < good.captures().size(); k++) {
      Capture sound = good.captures().get(k);
      Capture other = leaking.captures().get(k);
      boolean leaks =
          other.entry().excludedByLab() && sound.entry().fixture().equals(good.to().name());
      lost.add(leaks);
      captures.add(leaks ? sound.withResponse(other.response()) : sound);
    }
    Twins twins =
        new Twins(study, anchored(study, good.captures()), anchored(study, captures), lost);
    Map<String, SealTally> tallies = new HashMap<>();
    twins.count(tallies);
    errors(twins, good, tallies);
    return tallies;
  }

  private static List<AnchoredCapture> anchored(Study study, List<Capture> captures) {
    return Anchoring.of(study.settings(), 1)
        .apply(SessionCorrection.apply(captures, study))
        .value();
  }

  /** The same captures with every seal good, and with some lost. */
  private record Twins(
      Study study,
      List<AnchoredCapture> sound,
      List<AnchoredCapture> captures,
      List<Boolean> lost) {

    void count(Map<String, SealTally> tallies) {
      Map<String, String> kinds = new HashMap<>();
      for (Unit unit : study.units()) {
        kinds.put(unit.name(), unit.kind());
        tallies.computeIfAbsent(unit.kind(), k -> new SealTally(FACTORS));
      }
      Map<CaptureEntry, SealScore> scores = new HashMap<>();
      SealScore.of(study, captures).forEach(s -> scores.put(s.capture(), s));
      Map<String, Double> scatter = scatter(kinds);
      for (int k = 0; k < captures.size(); k++) {
        CaptureEntry entry = captures.get(k).capture().entry();
        SealScore score = scores.get(entry);
        if (score == null) {
          throw new IllegalStateException("a simulated capture reaches into the bass");
        }
        String kind = kinds.get(entry.unit());
        double costDb = bass(sound.get(k)) - bass(captures.get(k));
        boolean stands =
            costDb >= LEAST_COST_DB && costDb > SIGMAS * scatter.get(kind + "\n" + entry.fixture());
        SealTally tally = tallies.get(kind);
        if (!lost.get(k)) {
          tally.sound(score);
        } else if (stands) {
          tally.lost(score);
        } else {
          tally.slight(score);
        }
      }
    }

    /** Standard deviation between good seatings, pooled over units, by kind and fixture. */
    private Map<String, Double> scatter(Map<String, String> kinds) {
      Map<String, List<Double>> groups = new HashMap<>();
      Map<String, String> scale = new HashMap<>();
      for (AnchoredCapture c : sound) {
        CaptureEntry e = c.capture().entry();
        String group = e.unit() + "\n" + e.fixture() + "\n" + e.side();
        groups.computeIfAbsent(group, g -> new ArrayList<>()).add(bass(c));
        scale.put(group, kinds.get(e.unit()) + "\n" + e.fixture());
      }
      Map<String, double[]> sums = new HashMap<>();
      groups.forEach(
          (group, levels) -> {
            double mean = levels.stream().mapToDouble(l -> l).average().orElseThrow();
            double[] sum = sums.computeIfAbsent(scale.get(group), s -> new double[2]);
            levels.forEach(l -> sum[0] += (l - mean) * (l - mean));
            sum[1] += levels.size() - 1;
          });
      Map<String, Double> deviations = new HashMap<>();
      sums.forEach((s, sum) -> deviations.put(s, Math.sqrt(sum[0] / sum[1])));
      return deviations;
    }

    private static double bass(AnchoredCapture capture) {
      Levels levels = capture.levels();
      return IntStream.range(0, levels.grid().size())
          .filter(b -> levels.grid().band(b).midHz() < BASS_TO_HZ && levels.has(b))
          .mapToDouble(levels::db)
          .average()
          .orElseThrow();
    }
  }

  private static void errors(Twins twins, SimulatedStudy good, Map<String, SealTally> tallies) {
    Study exclude =
        twins.study.withSettings(twins.study.settings().withScreening(ScreeningMode.EXCLUDE));
    List<PairedUnits> all = paired(twins.study, twins.captures);
    List<PairedUnits> screened = paired(exclude, twins.captures);
    List<PairedUnits> sound = paired(twins.study, twins.sound);
    for (int k = 0; k < all.size(); k++) {
      Levels truth = truth(all.get(k), good, twins.study.settings());
      tallies
          .get(all.get(k).kind())
          .error(
              meanSquare(all.get(k), truth),
              meanSquare(screened.get(k), truth),
              meanSquare(sound.get(k), truth));
    }
  }

  private static List<PairedUnits> paired(Study study, List<AnchoredCapture> captures) {
    return new Pairing(study).pair(Screening.of(study, captures).accepted(), Unit.Role.FIT);
  }

  /** Mean over the study's own units of what each would show in expectation over good seatings. */
  private static Levels truth(PairedUnits kind, SimulatedStudy study, Settings settings) {
    double[] mean = new double[kind.grid().size()];
    for (String unit : kind.units()) {
      Levels own = study.trueUnitTransfer(unit, kind.grid(), settings.anchor());
      for (int b = 0; b < mean.length; b++) {
        mean[b] += own.level(b).orElse(Double.NaN) / kind.units().size();
      }
    }
    return Levels.copyOf(kind.grid(), mean);
  }

  private static double meanSquare(PairedUnits kind, Levels truth) {
    KindEstimate estimate =
        TransferEstimator.withDefaults().withModel(PredictionModel.OFFSET).fit(kind);
    double sum = 0;
    int count = 0;
    for (int b = 0; b < truth.grid().size(); b++) {
      OptionalDouble known = truth.level(b);
      if (truth.grid().band(b).midHz() < ERROR_TO_HZ
          && known.isPresent()
          && estimate.bands().get(b) instanceof BandOutcome.Fitted fitted) {
        double off = fitted.mean().meanDb() - known.getAsDouble();
        sum += off * off;
        count++;
      }
    }
    return sum / Math.max(1, count);
  }
}
