package org.twinrig.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.internal.Parallel;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.response.Levels;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Tries {@link FixtureFeatures} on simulated studies: how often a planted feature is found in its
 * place, and how often one is claimed that is not there.
 *
 * <p>Studies are drawn on every {@link FixturePair}, anchored and paired like any other; nothing is
 * screened, since nothing goes wrong in them.
 */
public final class FeatureProof {
  private static final double CONFIDENCE = 0.95;
  private static final Settings SETTINGS = Settings.defaults();

  /** What is planted stands between these, Hz. */
  private static final double FROM_HZ = 7000;

  private static final double TO_HZ = 10_000;

  private static final double NEAR_OCTAVES = 1.0 / 12;

  private final FeaturePlan plan;
  private final int threads;

  private FeatureProof(FeaturePlan plan, int threads) {
    this.plan = plan;
    this.threads = threads;
  }

  /**
   * Draws and looks through all studies of a plan.
   *
   * @param plan what to try
   * @param threads how many threads to work on; the outcome does not depend on it
   * @param watcher told after every number of units on every pair of fixtures
   * @return one row per number of units, pair of fixtures and kind
   */
  public static List<FeatureRow> run(FeaturePlan plan, int threads, Watcher watcher) {
    return new FeatureProof(plan, threads).run(watcher);
  }

  /** Told how far a proof is. */
  @FunctionalInterface
  public interface Watcher {
    /**
     * Told when the studies of one number of units on one pair of fixtures are done.
     *
     * @param units of each kind
     * @param fixtures the pair
     */
    void done(int units, FixturePair fixtures);
  }

  private List<FeatureRow> run(Watcher watcher) {
    List<FeatureRow> rows = new ArrayList<>();
    for (FixturePair fixtures : plan.fixtures()) {
      Map<String, Levels> truths = truths(fixtures);
      for (int units : plan.unitsPerKind()) {
        rows.addAll(rows(fixtures, units, truths));
        watcher.done(units, fixtures);
      }
    }
    return rows;
  }

  /** The true mean transfer of each kind minus its own octave; 0 where the fixtures are alike. */
  private Map<String, Levels> truths(FixturePair fixtures) {
    SimulatedStudy any = plan.draw(fixtures, Settings.FEWEST_UNITS, 0);
    return plan.kinds().stream()
        .collect(
            Collectors.toMap(
                SimulatedKind::label,
                kind ->
                    fixtures == FixturePair.ALIKE
                        ? Levels.copyOf(SETTINGS.grid(), new double[SETTINGS.grid().size()])
                        : FixtureFeatures.contrast(
                            any.trueMeanTransfer(kind, SETTINGS.grid(), SETTINGS.anchor()))));
  }

  private List<FeatureRow> rows(FixturePair fixtures, int units, Map<String, Levels> truths) {
    List<Map<String, List<FixtureFeature>>> found =
        Parallel.map(
            IntStream.range(0, plan.studies()).boxed().toList(),
            threads,
            study -> features(plan.draw(fixtures, units, study)));
    List<FeatureRow> rows = new ArrayList<>();
    for (SimulatedKind kind : plan.kinds()) {
      List<List<FixtureFeature>> studies = found.stream().map(f -> f.get(kind.label())).toList();
      Levels truth = truths.get(kind.label());
      rows.add(
          new FeatureRow(
              units,
              fixtures,
              kind.label(),
              share(studies, features -> features.stream().allMatch(f -> agrees(f, truth))),
              studies.stream().mapToInt(List::size).average().orElseThrow(),
              fixtures == FixturePair.ALIKE
                  ? Optional.empty()
                  : Optional.of(planted(studies, truth))));
    }
    return rows;
  }

  /** The features of the mean transfer of every kind in a study. */
  static Map<String, List<FixtureFeature>> features(SimulatedStudy drawn) {
    Study study = drawn.declared(SETTINGS);
    return new Pairing(study)
        .pair(Anchoring.of(SETTINGS, 1).apply(drawn.captures()).value(), Unit.Role.FIT).stream()
            .collect(Collectors.toMap(PairedUnits::kind, FeatureProof::features));
  }

  private static List<FixtureFeature> features(PairedUnits paired) {
    return FixtureFeatures.withDefaults()
        .withConfidence(CONFIDENCE)
        .of(paired)
        .of(FixtureFeature.Curve.TRANSFER)
        .features();
  }

  /** Whether the truth has a feature's sign at the band of its centre. */
  private static boolean agrees(FixtureFeature feature, Levels truth) {
    return feature.height().value() * truth.db(nearest(truth, feature.centre().value())) > 0;
  }

  private static int nearest(Levels truth, double hz) {
    return IntStream.range(0, truth.grid().size())
        .filter(b -> truth.grid().band(b).upperHz() > hz)
        .findFirst()
        .orElseThrow();
  }

  private static FeatureRow.Planted planted(List<List<FixtureFeature>> studies, Levels truth) {
    int band = highest(truth);
    double placeHz = placeHz(truth, band);
    Function<List<FixtureFeature>, Optional<FixtureFeature>> near =
        features -> features.stream().filter(f -> isNear(f, placeHz)).findFirst();
    List<FixtureFeature> hits = studies.stream().map(near).flatMap(Optional::stream).toList();
    double heightDb = truth.db(band);
    return new FeatureRow.Planted(
        placeHz,
        heightDb,
        share(studies, features -> near.apply(features).isPresent()),
        shareOf(hits, f -> f.centre().low() <= placeHz && placeHz <= f.centre().high()),
        shareOf(hits, f -> Math.abs(f.height().value() - heightDb) <= f.simultaneousHalfDb()));
  }

  private static boolean isNear(FixtureFeature feature, double hz) {
    return feature.height().value() > 0
        && Math.abs(Math.log(feature.centre().value() / hz)) <= NEAR_OCTAVES * Math.log(2);
  }

  /** The band in which the truth stands highest where something was planted. */
  private static int highest(Levels truth) {
    return IntStream.range(0, truth.grid().size())
        .filter(b -> truth.grid().band(b).midHz() >= FROM_HZ)
        .filter(b -> truth.grid().band(b).midHz() <= TO_HZ)
        .boxed()
        .max((a, b) -> Double.compare(truth.db(a), truth.db(b)))
        .orElseThrow();
  }

  /** Vertex of the parabola through three bands in (lg f, dB). */
  private static double placeHz(Levels truth, int band) {
    double left = truth.db(band - 1) - truth.db(band);
    double right = truth.db(band + 1) - truth.db(band);
    double shift = 0.5 * (left - right) / (left + right);
    return truth.grid().band(band).midHz() * Math.pow(10, 0.3 * shift / truth.grid().perOctave());
  }

  private static <T> ClopperPearson share(List<T> all, Predicate<T> holds) {
    int hits = (int) all.stream().filter(holds).count();
    return ClopperPearson.of(hits, all.size(), CONFIDENCE);
  }

  private static <T> Optional<ClopperPearson> shareOf(List<T> some, Predicate<T> holds) {
    return some.isEmpty() ? Optional.empty() : Optional.of(share(some, holds));
  }
}
