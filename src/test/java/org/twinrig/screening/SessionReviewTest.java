package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.SessionStudy;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.Anchoring;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** On a made-up study whose drift is known. */
class SessionReviewTest {
  @TempDir private Path folder;

  private record Reviewed(Study study, List<Capture> corrected, SessionReview review) {}

  private Reviewed review(int sessions, String yaml) throws Exception {
    return review(SessionStudy.write(folder, sessions, "check_unit: Oak 1\n" + yaml));
  }

  private static Reviewed review(Path written) throws Exception {
    Study study = StudyReader.read(written).value();
    List<Capture> corrected = study.corrected(CaptureReading.read(study, 2).value());
    Screening screening =
        Screening.of(study, Anchoring.of(study.settings(), 2).apply(corrected).value());
    return new Reviewed(
        study, corrected, SessionReview.of(study, corrected, screening).orElseThrow());
  }

  private static List<String> out(FixtureDrift fixture) {
    return fixture.outOfControl().stream().map(FixtureDrift.OutOfControl::session).toList();
  }

  @Test
  void theDriftingSessionsAreFoundAndTheirCapturesDoubtedButNotLeftOut() throws Exception {
    Reviewed r = review(10, "");
    List<FixtureDrift> fixtures = r.review.fixtures();
    assertEquals(List.of("plate", "head"), fixtures.stream().map(FixtureDrift::fixture).toList());
    assertEquals(List.of("plate-04"), out(fixtures.get(0)));
    assertEquals(List.of("head-07"), out(fixtures.get(1)));
    // A gain shows in the level; a microphone that loses the top shows in the upper octaves alone.
    FixtureDrift.OutOfControl plate = fixtures.get(0).outOfControl().get(0);
    assertEquals(Optional.empty(), plate.charts().get(0).band());
    assertEquals(0.8, plate.departureDb(), 0.15);
    FixtureDrift.OutOfControl head = fixtures.get(1).outOfControl().get(0);
    assertTrue(head.charts().stream().allMatch(c -> c.midHz().orElse(0) > 1900));
    assertEquals(1.5 * 16 / 17, head.departureDb(), 0.2);
    List<Verdict> verdicts = r.review.verdicts(r.study.captures());
    assertEquals(
        List.of("head-07", "plate-04"),
        verdicts.stream().map(v -> v.capture().session()).distinct().sorted().toList());
    assertEquals(
        r.study.captures().stream()
            .filter(c -> List.of("head-07", "plate-04").contains(c.session()))
            .toList(),
        verdicts.stream().map(Verdict::capture).toList());
    assertTrue(verdicts.stream().noneMatch(Verdict::excluded));
    assertTrue(
        verdicts
            .get(0)
            .sentence()
            .startsWith(
                "drifting session: the check unit's departure from its middle, in the level, is 0."));
    assertEquals(Optional.empty(), r.review.correction());
    assertEquals(List.of(), r.review.notes());
  }

  /** Every session of the last third is named, not only the first after the step. */
  @Test
  void aStepIsFoundInEverySessionAfterItAndTakenOut() throws Exception {
    Reviewed r =
        review(
            SessionStudy.write(
                folder, 9, "check_unit: Oak 1\ndrift: correct", SessionStudy::stepDb));
    assertEquals(List.of("plate-07", "plate-08", "plate-09"), out(r.review.fixtures().get(0)));
    assertEquals(List.of(), out(r.review.fixtures().get(1)));
    for (DriftCorrection.Taken taken : r.review.correction().orElseThrow().taken()) {
      double step = SessionStudy.stepDb(taken.session(), taken.midHz());
      double shared = taken.fixture().equals("plate") ? 1.5 * 3 / 9 : 0;
      assertEquals(step - shared, taken.departureDb(), 0.25, taken.toString());
    }
    assertEquals(2 * 9 * 10, r.review.correction().orElseThrow().taken().size());
  }

  /** Charts follow the dates, in whatever order the rows of the table stand. */
  @Test
  void sessionsAreChartedInTheOrderOfTime() throws Exception {
    Path study = SessionStudy.write(folder, 10, "check_unit: Oak 1");
    List<DriftChart.Point> inOrder = review(study).review.fixtures().get(1).level().points();
    Path table = study.resolve("sessions.csv");
    List<String> rows = new ArrayList<>(Files.readAllLines(table));
    Collections.reverse(rows.subList(1, rows.size()));
    Files.write(table, rows);
    assertEquals(inOrder, review(study).review.fixtures().get(1).level().points());
    // One date that is not understood: the order of the rows of its fixture, and only of that.
    rows.replaceAll(row -> row.replace("head-03,2026-03-13", "head-03,13th of March"));
    Files.write(table, rows);
    List<FixtureDrift> fixtures = review(study).review.fixtures();
    assertEquals("head-10", fixtures.get(1).level().points().get(0).session());
    assertEquals("plate-01", fixtures.get(0).level().points().get(0).session());
  }

  /** A leak of the check unit is no drift of the chain, also where the study only suggests. */
  @Test
  void aLeakOfTheCheckUnitIsNotTakenForDrift() throws Exception {
    Study study = review(10, "").study;
    List<CaptureEntry> plate =
        study.captures().stream()
            .filter(c -> c.unit().equals(SessionStudy.OAK) && c.session().equals("plate-02"))
            .toList();
    List<Capture> captures = CaptureReading.read(study, 2).value();
    assertEquals(
        List.of("plate-02"), without(study, captures, plate, Finding.LOST_SEAL), "all leak");
    // Every seating of the session odd: that is what a drift of shape looks like.
    assertEquals(List.of(), without(study, captures, plate, Finding.ODD_SEATING));
    CheckCaptures one =
        new CheckCaptures(
            study, captures, List.of(Verdict.of(plate.get(0), Finding.ODD_SEATING, 3, 1, "")));
    assertEquals(2, one.on("plate").get(1).seatings());
    assertEquals(3, one.on("plate").get(2).seatings());
  }

  private static List<String> without(
      Study study, List<Capture> captures, List<CaptureEntry> entries, Finding finding) {
    List<Verdict> verdicts = entries.stream().map(e -> Verdict.of(e, finding, 3, 1, "")).toList();
    return FixtureDrift.of(
            "plate",
            "plate",
            new CheckCaptures(study, captures, verdicts).on("plate"),
            study.sessions())
        .without();
  }

  /** The level is charted before the anchor, which would have taken the gain away. */
  @Test
  void anAnchorWouldHaveHiddenTheGain() throws Exception {
    DriftChart level = review(10, "").review.fixtures().get(0).level();
    double odd = level.points().get(3).valueDb();
    assertEquals(0.8, odd - level.limits().orElseThrow().centreDb(), 0.15);
  }

  @Test
  void withFiveSessionsNothingIsJudged() throws Exception {
    SessionReview review = review(5, "").review;
    for (FixtureDrift fixture : review.fixtures()) {
      assertEquals(5, fixture.level().points().size());
      assertTrue(fixture.charts().stream().allMatch(c -> c.limits().isEmpty()));
      assertEquals(List.of(), fixture.outOfControl());
    }
  }

  @Test
  void theCorrectionTakesTheDriftOut() throws Exception {
    Reviewed r = review(10, "drift: correct");
    List<Capture> after = r.review.correction().orElseThrow().apply(r.corrected);
    assertEquals(r.corrected.size(), after.size());
    Map<Boolean, Double> worst =
        IntStream.range(0, after.size())
            .boxed()
            .collect(
                Collectors.toMap(
                    i -> drifting(r.corrected.get(i)),
                    i -> residual(r.corrected.get(i), after.get(i)),
                    Math::max));
    // The mean over ten sessions holds a tenth of the drift; the rest is seating of the check unit.
    assertTrue(worst.get(true) < 0.25, worst.toString());
    assertTrue(worst.get(false) < 0.25, worst.toString());
  }

  /** What the correction misses the known drift by, against the uncertainty stated for it. */
  @Test
  void theStatedUncertaintyIsTheSizeOfTheErrors() throws Exception {
    Reviewed r = review(10, "anchor: none\ndrift: correct");
    DriftCorrection correction = r.review.correction().orElseThrow();
    List<Capture> after = correction.apply(r.corrected);
    double errors = 0;
    double stated = 0;
    for (double hz : new double[] {63, 125, 250, 500, 1000, 2000, 4000, 8000}) {
      for (int i = 0; i < after.size(); i++) {
        // One capture of each session; all of a session get the same correction.
        boolean first = r.corrected.get(i).entry().seating() % 3 == 1;
        if (first && r.corrected.get(i).entry().unit().equals(SessionStudy.OAK)) {
          double miss = miss(r.corrected.get(i), after.get(i), hz);
          errors += miss * miss / 10;
        }
      }
      // The sum over both fixtures, ten sessions each.
      stated += correction.uncertainty(hz).orElseThrow().variance();
    }
    double ratio = errors / stated;
    assertTrue(ratio > 0.5 && ratio < 2, () -> "mean square error over stated variance " + ratio);
  }

  private static boolean drifting(Capture c) {
    return List.of("plate-04", "head-07").contains(c.entry().session());
  }

  /** How far what was taken out is from the drift less its mean over the sessions, dB. */
  private static double residual(Capture before, Capture after) {
    double worst = 0;
    for (double hz : new double[] {40, 100, 400, 1000, 2000, 4000, 8000, 16_000}) {
      worst = Math.max(worst, Math.abs(miss(before, after, hz)));
    }
    return worst;
  }

  private static double miss(Capture before, Capture after, double hz) {
    String mate = before.entry().fixture().equals("plate") ? "plate-04" : "head-07";
    double taken =
        before.response().levelAt(hz).orElseThrow() - after.response().levelAt(hz).orElseThrow();
    double mean = SessionStudy.driftDb(mate, hz) / 10;
    return taken - (SessionStudy.driftDb(before.entry().session(), hz) - mean);
  }

  /** By hand: two sessions of two seatings, octaves of one value each. */
  @Test
  void theUncertaintyIsThatOfADepartureFromTheMean() {
    List<CheckSession> seen =
        List.of(session("a", 1.0, 3.0), session("b", 5.0, 6.0), session("c", 2.0, 2.0));
    // Within: (2 + 0.5 + 0) / 3 degrees of freedom; two seatings; three sessions.
    double expected = 2.5 / 3 / 2 * (1 - 1 / 3.0);
    DriftUncertainty found = DriftUncertainty.of(seen, new Anchor.None()).orElseThrow();
    assertEquals(expected, found.at(1000).variance(), 1e-12);
    assertEquals(3, found.at(1000).degreesOfFreedom());
    // The octaves move with the level: relative to it they do not scatter.
    assertEquals(
        0,
        DriftUncertainty.of(seen, new Anchor.Range(300, 1000)).orElseThrow().at(50).variance(),
        1e-12);
    // Seated once a session: the sessions' own variance stands in, (16 + 1 + 9)/3 here.
    List<CheckSession> once = List.of(session("a", 1), session("b", 5), session("c", 3));
    DriftUncertainty wide = DriftUncertainty.of(once, new Anchor.None()).orElseThrow();
    assertEquals(4.0 * (1 - 1 / 3.0), wide.at(1000).variance(), 1e-12);
    assertEquals(2, wide.degreesOfFreedom());
    assertEquals(Optional.empty(), DriftUncertainty.of(seen.subList(0, 1), new Anchor.None()));
    assertTrue(
        DriftCorrection.OnFixture.of("head", seen.subList(0, 1), new Anchor.None())
            .departures()
            .isEmpty());
  }

  private static CheckSession session(String name, double... levels) {
    List<Double> all = Arrays.stream(levels).boxed().toList();
    return new CheckSession(
        name,
        all,
        all.stream()
            .map(
                l -> {
                  double[] octaves = new double[CheckCaptures.OCTAVES.size()];
                  Arrays.fill(octaves, l);
                  return Levels.copyOf(CheckCaptures.OCTAVES, octaves);
                })
            .toList());
  }

  @Test
  void aDepartureRunsStraightBetweenOctavesAndStaysBeyondThem() {
    OctaveCurve curve = new OctaveCurve(new TreeMap<>(Map.of(1000.0, 1.0, 4000.0, 3.0)));
    assertEquals(1, curve.at(20));
    assertEquals(2, curve.at(2000), 1e-12);
    assertEquals(3, curve.at(20_000));
    assertFalse(curve.equals(new OctaveCurve(new TreeMap<>(Map.of(1000.0, 1.0)))));
  }

  @Test
  void aSessionWithAnotherSideIsNotCompared() throws Exception {
    Path study = SessionStudy.write(folder, 10, "check_unit: Oak 1\ndrift: correct");
    Path table = study.resolve("captures.csv");
    Files.write(
        table,
        Files.readAllLines(table).stream()
            .map(l -> l.startsWith("Oak 1") && l.endsWith("head-03") ? l.replace(",M,", ",L,") : l)
            .toList());
    Study read = StudyReader.read(study).value();
    List<Capture> corrected = read.corrected(CaptureReading.read(read, 2).value());
    Screening screening =
        Screening.of(read, Anchoring.of(read.settings(), 2).apply(corrected).value());
    SessionReview review = SessionReview.of(read, corrected, screening).orElseThrow();
    assertEquals(List.of("head-03"), review.fixtures().get(1).without());
    assertEquals(9, review.fixtures().get(1).level().points().size());
  }

  @Test
  void sidesAreComparedThatMostSessionsShare() {
    Set<Side> left = Set.of(Side.L);
    Set<Side> both = Set.of(Side.L, Side.R);
    assertEquals(both, CheckCaptures.shared(List.of(both, both, Set.of())));
    assertEquals(left, CheckCaptures.shared(List.of(both, left, both)));
    assertEquals(left, CheckCaptures.shared(List.of(left, Set.of(Side.R))));
    assertEquals(
        Set.of(Side.M), CheckCaptures.shared(List.of(left, Set.of(Side.M), Set.of(Side.M))));
    assertEquals(Set.of(), CheckCaptures.shared(List.of()));
  }

  @Test
  void aSessionWithoutTheCheckUnitIsNamedAndLeftAsItIs() throws Exception {
    Path study = SessionStudy.write(folder, 10, "check_unit: Oak 1\ndrift: correct");
    Path table = study.resolve("captures.csv");
    Files.write(
        table,
        Files.readAllLines(table).stream()
            .filter(l -> !(l.startsWith("Oak 1") && l.endsWith("head-03")))
            .toList());
    Study read = StudyReader.read(study).value();
    List<Capture> corrected = read.corrected(CaptureReading.read(read, 2).value());
    Screening screening =
        Screening.of(read, Anchoring.of(read.settings(), 2).apply(corrected).value());
    SessionReview review = SessionReview.of(read, corrected, screening).orElseThrow();
    assertEquals(
        List.of(
            "study.yaml: the check unit `Oak 1` has no capture that counts on `head` in head-03 (or only"
                + " of another side): these sessions are not corrected for drift; capture it in every"
                + " session, on the same side or sides"),
        review.notes().stream().map(p -> p.text()).toList());
    List<Capture> after = review.correction().orElseThrow().apply(corrected);
    for (int i = 0; i < after.size(); i++) {
      boolean same = after.get(i).response().equals(corrected.get(i).response());
      assertEquals(corrected.get(i).entry().session().equals("head-03"), same);
    }
    assertEquals(OptionalDouble.empty(), review.fixtures().get(0).level().midHz());
  }
}
