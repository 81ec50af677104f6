package org.twinrig.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.response.Levels;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * Tries {@link FixtureFeatures}: how often a planted feature is found in its place, and how often
 * one is claimed that is not there. Studies are anchored and paired like any other; nothing is
 * screened, since nothing goes wrong in them.
 *
 * <p>The promise: with 12 or more units, a planted feature is found in 95 % of studies or more, and
 * nothing false is claimed in 95 % of studies or more as far as the count of studies can tell.
 *
 * @param unitsPerKind how many units of each kind enter; one or more different numbers
 * @param fixtures on which pairs of fixtures, each once
 * @param kinds which kinds, each once; with cups, so that canal entrances matter
 * @param seatings of every unit on each fixture, 1 or more
 */
record FeatureProof(
    List<Integer> unitsPerKind, List<FixturePair> fixtures, List<SimulatedKind> kinds, int seatings)
    implements Proof<FeatureProof.Row> {
  private static final double CONFIDENCE = 0.95;
  private static final Settings SETTINGS = Settings.defaults();

  /** Fine enough to show what a 1/12-octave band holds. */
  private static final int POINTS = 240;

  /** What is planted stands between these, Hz. */
  private static final double FROM_HZ = 7000;

  private static final double TO_HZ = 10_000;

  private static final double NEAR_OCTAVES = 1.0 / 12;

  private static final double PROMISED_SHARE = 0.95;

  private static final int PROMISED_FROM_UNITS = 12;

  /**
   * What many studies of one kind found on one pair of fixtures. All shares are shares of studies,
   * which are independent of each other.
   *
   * @param clean studies that claimed nothing false: no feature against the sign of the true mean
   *     transfer minus its own octave, and none at all where that is 0
   * @param claimsPerStudy mean number of features of the mean transfer
   * @param planted what became of the planted feature; nothing where none was planted
   */
  record Row(
      int units,
      String fixtures,
      String kind,
      ClopperPearson clean,
      double claimsPerStudy,
      Optional<Planted> planted) {}

  /**
   * What became of a planted feature.
   *
   * @param placeHz where the true mean transfer, minus its own octave, has its peak
   * @param heightDb how high it stands there
   * @param found studies that claim a peak within 1/12 octave of the place
   * @param centreHeld of the studies that found it, those whose interval of the centre holds the
   *     place; nothing when none found it
   * @param heightHeld likewise those whose interval of the height holds the true height
   */
  record Planted(
      double placeHz,
      double heightDb,
      ClopperPearson found,
      Optional<ClopperPearson> centreHeld,
      Optional<ClopperPearson> heightHeld) {}

  /** The published proof, with so many units of each kind. */
  static FeatureProof of(Integer... unitsPerKind) {
    return new FeatureProof(
        List.of(unitsPerKind),
        List.of(FixturePair.values()),
        List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR),
        5);
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (FixturePair pair : fixtures) {
      Harness there = harness.in(Situation.on(pair));
      Map<String, Optional<Levels>> truths = truths(there, pair);
      for (int units : unitsPerKind) {
        List<Map<String, List<FixtureFeature>>> found =
            there.each(
                units + " units per kind, fixtures " + pair.word(),
                study -> features(draw(there, units, study)));
        for (SimulatedKind kind : kinds) {
          List<List<FixtureFeature>> studies =
              found.stream().map(f -> f.get(kind.label())).toList();
          rows.add(row(units, pair, kind, studies, truths.get(kind.label())));
        }
      }
    }
    return rows;
  }

  /** One study. */
  SimulatedStudy draw(Harness harness, int units, int study) {
    return harness.draw(harness.plan(POINTS, kinds, units, seatings, units, study));
  }

  /** The true mean transfer of each kind minus its own octave; nothing where it is 0 everywhere. */
  private Map<String, Optional<Levels>> truths(Harness there, FixturePair pair) {
    SimulatedStudy any = draw(there, Settings.FEWEST_UNITS, 0);
    return kinds.stream()
        .collect(
            Collectors.toMap(
                SimulatedKind::label,
                kind ->
                    pair == FixturePair.ALIKE
                        ? Optional.empty()
                        : Optional.of(
                            FixtureFeatures.contrast(
                                any.trueMeanTransfer(kind, SETTINGS.grid(), SETTINGS.anchor())))));
  }

  /** The features of the mean transfer of every kind in a study. */
  static Map<String, List<FixtureFeature>> features(SimulatedStudy drawn) {
    return Harness.paired(drawn.declared(SETTINGS), drawn.captures()).stream()
        .collect(Collectors.toMap(PairedUnits::kind, FeatureProof::features));
  }

  private static List<FixtureFeature> features(PairedUnits paired) {
    return new FixtureFeatures(CONFIDENCE, 1, 1)
        .of(paired)
        .of(FixtureFeature.Curve.TRANSFER)
        .features();
  }

  private static Row row(
      int units,
      FixturePair pair,
      SimulatedKind kind,
      List<List<FixtureFeature>> studies,
      Optional<Levels> truth) {
    return new Row(
        units,
        pair.word(),
        kind.label(),
        share(
            studies,
            found -> found.stream().allMatch(f -> truth.isPresent() && agrees(f, truth.get()))),
        studies.stream().mapToInt(List::size).average().orElseThrow(),
        truth.map(t -> planted(studies, t)));
  }

  /** Whether the truth has a feature's sign at the band of its centre. */
  private static boolean agrees(FixtureFeature feature, Levels truth) {
    int band =
        IntStream.range(0, truth.grid().size())
            .filter(b -> truth.grid().band(b).upperHz() > feature.centre().value())
            .findFirst()
            .orElseThrow();
    return feature.height().value() * truth.db(band) > 0;
  }

  private static Planted planted(List<List<FixtureFeature>> studies, Levels truth) {
    int band = highest(truth);
    double placeHz = placeHz(truth, band);
    Function<List<FixtureFeature>, Optional<FixtureFeature>> near =
        features -> features.stream().filter(f -> isNear(f, placeHz)).findFirst();
    List<FixtureFeature> hits = studies.stream().map(near).flatMap(Optional::stream).toList();
    double heightDb = truth.db(band);
    return new Planted(
        placeHz,
        heightDb,
        share(studies, features -> near.apply(features).isPresent()),
        shareOf(hits, f -> f.centre().low() <= placeHz && placeHz <= f.centre().high()),
        shareOf(hits, f -> Math.abs(f.height().value() - heightDb) <= f.simultaneousHalfDb()));
  }

  /** Whether a feature is a peak within 1/12 octave of a place. */
  static boolean isNear(FixtureFeature feature, double hz) {
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

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .count("units", Row::units)
        .text("fixtures", Row::fixtures)
        .text("kind", Row::kind)
        .count("studies", r -> r.clean.trials())
        .share("clean", r -> Optional.of(r.clean))
        .number("claims_per_study", Row::claimsPerStudy)
        .hz("place_hz", r -> r.planted.map(Planted::placeHz))
        .maybe("height_db", r -> r.planted.map(Planted::heightDb))
        .share("found", r -> r.planted.map(Planted::found))
        .maybe(
            "centre_held", r -> r.planted.flatMap(Planted::centreHeld).map(ClopperPearson::share))
        .maybe(
            "height_held", r -> r.planted.flatMap(Planted::heightHeld).map(ClopperPearson::share));
  }

  @Override
  public List<String> broken(Row row) {
    List<String> broken = new ArrayList<>();
    if (row.clean.high() < PROMISED_SHARE) {
      broken.add("nothing false is claimed in " + tooFew(row.clean));
    }
    row.planted
        .map(Planted::found)
        .filter(f -> row.units >= PROMISED_FROM_UNITS && f.share() < PROMISED_SHARE)
        .ifPresent(f -> broken.add("the planted feature is found in " + tooFew(f)));
    return broken;
  }

  private static String tooFew(ClopperPearson share) {
    return share.hits() + " of " + share.trials() + " studies, but in 95 % is promised";
  }
}
