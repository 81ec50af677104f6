package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.study.Settings;
import org.twinrig.translation.Treatment.SmoothingMatch;

/** Compensated and smoothed graphs on their way to the new fixture. */
class ChainFormsTest {
  private static SmallStudy study;
  private static Translation translation;
  private static Response graph;

  @BeforeAll
  static void analyse() throws UnusableInput {
    study = SmallStudy.of(10, 5, Settings.defaults());
    translation = study.translation();
    graph = study.old().get(4);
  }

  private static CatalogueEntry entry(Optional<Smoothing> smoothing) {
    return new CatalogueEntry(
        "a",
        "a",
        "in-ear",
        "a.csv",
        CatalogueEntry.Averaged.overSeatings(3),
        Optional.empty(),
        smoothing,
        Optional.empty(),
        "",
        "",
        2);
  }

  private static GraphFiles.OldGraphFile raw(Response curve, Smoothing smoothing) {
    return new GraphFiles.OldGraphFile(
        entry(Optional.of(smoothing)), curve, curve, Optional.empty(), "");
  }

  private static ReferenceCurve curve(String file, double... db) {
    double[] hz = new double[db.length];
    for (int k = 0; k < hz.length; k++) {
      hz[k] = 15 * Math.pow(22_000.0 / 15, k / (hz.length - 1.0));
    }
    return new ReferenceCurve(file, Optional.of(new Smoothing(2)), Dense.curve(hz, db));
  }

  /** A compensated graph as the lab would have made it from the raw one. */
  private static GraphFiles.OldGraphFile compensated(Response raw, ReferenceCurve reference) {
    Response pinned = pinned(reference.curve());
    Response negative = negative(pinned);
    Response published = raw.plus(negative).orElseThrow();
    return new GraphFiles.OldGraphFile(
        entry(Optional.of(Smoothing.NONE)),
        published,
        published.plus(pinned).orElseThrow(),
        Optional.of(reference),
        "");
  }

  private static Response pinned(Response curve) {
    return curve.plus(-translation.anchor().levelOf(curve, 12).orElseThrow());
  }

  private static Response negative(Response curve) {
    double[] hz = new double[curve.size()];
    double[] db = new double[curve.size()];
    for (int k = 0; k < hz.length; k++) {
      hz[k] = curve.frequencyHz(k);
      db[k] = -curve.levelDb(k);
    }
    return Response.copyOf(hz, db);
  }

  private static Chain chain(Translation only) {
    return Chain.of(Chain.Link.of(only));
  }

  private static Translation with(ReferenceCurve newReference) {
    return translation.withHandling(translation.handling().withNewReference(newReference));
  }

  @Test
  void compensatedByZeroIsRaw() {
    ReferenceCurve zero = curve("zero.csv", 0, 0, 0, 0);
    TranslatedGraph given = chain(with(zero)).translate(compensated(graph, zero)).given();
    TranslatedGraph plain = chain(translation).translate(raw(graph, Smoothing.NONE)).given();
    for (int b = 0; b < plain.bands().size(); b++) {
      TranslatedBand x = plain.bands().get(b);
      TranslatedBand y = given.bands().get(b);
      assertEquals(x.mark(), y.mark());
      assertEquals(x.reasons(), y.reasons());
      assertEquals(x.missing(), y.missing());
      if (x.predicted().isPresent()) {
        assertEquals(x.fromDb().orElseThrow(), y.fromDb().orElseThrow(), 1e-9);
        assertEquals(x.predicted().get().toDb(), y.predicted().orElseThrow().toDb(), 1e-9);
        assertEquals(x.predicted().get().halfDb(), y.predicted().get().halfDb(), 1e-9);
      }
    }
  }

  /** What readers see moves by the fixture and by the references, each by itself. */
  @Test
  void theChangeIsTheFixturesAndTheReferences() {
    ReferenceCurve before = curve("old.csv", 3, 0, -1, 6, -9);
    ReferenceCurve now = curve("new.csv", 5, 1, 0, 8, -4);
    Chain.Result result = chain(with(now)).translate(compensated(graph, before));
    Levels oldReference =
        translation.anchor().pinnedLevels(before.curve(), translation.grid()).orElseThrow();
    Levels newReference =
        translation.anchor().pinnedLevels(now.curve(), translation.grid()).orElseThrow();
    TranslatedGraph plain = chain(translation).translate(raw(graph, Smoothing.NONE)).given();
    for (int b = 0; b < plain.bands().size(); b++) {
      TranslatedBand band = result.given().bands().get(b);
      double fixture =
          plain.bands().get(b).predicted().orElseThrow().toDb()
              - plain.bands().get(b).fromDb().orElseThrow();
      double references = oldReference.db(b) - newReference.db(b);
      double seen = band.predicted().orElseThrow().toDb() - band.fromDb().orElseThrow();
      // Band averages of a sum and the sum of band averages differ where curves are steep.
      assertEquals(fixture + references, seen, 0.05);
    }
    assertEquals(
        new Treatment(
            SmoothingMatch.ALIKE,
            OptionalDouble.empty(),
            Optional.of(new Treatment.Reference("old.csv", Optional.of(new Smoothing(2)))),
            Optional.of(new Treatment.Reference("new.csv", Optional.of(new Smoothing(2)))),
            false),
        result.given().treatment());
  }

  @Test
  void withoutANewReferenceACompensatedGraphIsGivenRaw() {
    ReferenceCurve before = curve("old.csv", 3, 0, -1, 6, -9);
    Chain.Result result = chain(translation).translate(compensated(graph, before));
    assertEquals(result.raw(), result.given());
    assertEquals(Optional.empty(), result.given().treatment().now());
    TranslatedGraph plain = chain(translation).translate(raw(graph, Smoothing.NONE)).given();
    assertEquals(
        plain.bands().get(70).predicted().orElseThrow().toDb(),
        result.given().bands().get(70).predicted().orElseThrow().toDb(),
        1e-9);
  }

  /** Where the new reference ends, nothing can be given. */
  @Test
  void aShortNewReferenceLeavesBandsWithoutALevel() {
    ReferenceCurve before = curve("old.csv", 0, 0, 0);
    ReferenceCurve brief =
        new ReferenceCurve(
            "brief.csv",
            Optional.empty(),
            Dense.curve(new double[] {100, 9000}, new double[] {1, 2}));
    TranslatedGraph given = chain(with(brief)).translate(compensated(graph, before)).given();
    TranslatedBand last = given.bands().get(given.bands().size() - 1);
    assertTrue(last.predicted().isEmpty());
    assertEquals(List.of(Reason.NO_DATA), last.reasons());
    assertTrue(given.bands().get(60).predicted().isPresent());
  }

  @Test
  void aGraphSmoothedMoreIsMarkedWhenTheCapturesAreNotAtHand() {
    TranslatedGraph wide = chain(translation).translate(raw(graph, new Smoothing(3))).given();
    assertEquals(SmoothingMatch.MARKED, wide.treatment().smoothing());
    for (TranslatedBand band : wide.bands()) {
      assertTrue(band.reasons().contains(Reason.SMOOTHED_MORE));
      assertFalse(band.mark() == Mark.RELIABLE);
    }
    TranslatedGraph fine = chain(translation).translate(raw(graph, new Smoothing(24))).given();
    assertEquals(SmoothingMatch.FINER_THAN_BANDS, fine.treatment().smoothing());
    assertFalse(fine.reasons().contains(Reason.SMOOTHED_MORE));
  }

  /** What was smoothed as far in another domain cannot be made alike, captures at hand or not. */
  @Test
  void aGraphSmoothedInAnotherDomainIsMarked() {
    Smoothing decibels = new Smoothing(6, Smoothing.Domain.DB);
    Translation.Handling plain = translation.handling();
    Translation power =
        translation.withHandling(
            new Translation.Handling(
                new Smoothing(6), 1, plain.publishing(), Optional.empty(), Optional.empty()));
    TranslatedGraph given = chain(power).translate(raw(graph, decibels)).given();
    assertEquals(SmoothingMatch.OTHER_DOMAIN, given.treatment().smoothing());
    for (TranslatedBand band : given.bands()) {
      assertTrue(band.reasons().contains(Reason.SMOOTHED_OTHERWISE));
      assertFalse(band.mark() == Mark.RELIABLE);
    }
    assertEquals(
        SmoothingMatch.GRAPH_SMOOTHED,
        chain(power)
            .translate(raw(graph, new Smoothing(12, Smoothing.Domain.DB)))
            .given()
            .treatment()
            .smoothing());
  }

  /** Graphs smoothed in decibels meet captures smoothed in decibels. */
  @Test
  void theStudyIsSmoothedInTheDomainOfTheGraph() {
    Smoothing decibels = new Smoothing(3, Smoothing.Domain.DB);
    Chain chain = Chain.of(study.outcome().link(2)).refitted(List.of(decibels, new Smoothing(3)));
    TranslatedGraph given = chain.translate(raw(decibels.apply(graph), decibels)).given();
    assertEquals(SmoothingMatch.STUDY_SMOOTHED, given.treatment().smoothing());
    assertEquals(
        new Translator(study.outcome().smoothed(decibels, 1))
            .apply(entry(Optional.of(decibels)), decibels.apply(graph))
            .bands(),
        given.bands());
    TranslatedGraph power = chain.translate(raw(decibels.apply(graph), new Smoothing(3))).given();
    assertFalse(power.bands().equals(given.bands()));
  }

  /** A study whose captures came smoothed is the study whose captures were smoothed here. */
  @Test
  void theStudyIsSmoothedAlikeBeforeTheFit() throws UnusableInput {
    Smoothing third = new Smoothing(3);
    Chain.Link link = study.outcome().link(2);
    Translation alike = link.captures().orElseThrow().refit(third);
    Chain chain = Chain.of(link).refitted(List.of(third));
    Response smooth = third.apply(graph);
    TranslatedGraph given = chain.translate(raw(smooth, third)).given();
    assertEquals(SmoothingMatch.STUDY_SMOOTHED, given.treatment().smoothing());
    assertEquals(
        new Translator(alike).apply(entry(Optional.of(third)), smooth).bands(), given.bands());
    assertEquals(study.outcome().smoothed(third, 1).kinds(), alike.kinds(), "on one thread");
  }

  /**
   * Smoothed graphs are predicted better by the study smoothed alike than by the study as it is:
   * the units' own smoothed curves on the new fixture are the truth.
   */
  @Test
  void smoothingAlikePredictsSmoothedGraphsBetter() throws UnusableInput {
    SmallStudy large = SmallStudy.of(16, 8, Settings.defaults());
    Smoothing half = new Smoothing(2);
    Translation alike = large.outcome().smoothed(half, 2);
    SmallStudy others = SmallStudy.of(16, 9, Settings.defaults());
    List<Response> old = others.old();
    List<Response> now = others.reversed().old();
    double asItIs = 0;
    double smoothed = 0;
    for (int k = 0; k < old.size(); k++) {
      Response graph = half.apply(old.get(k));
      Levels truth = Levels.of(half.apply(now.get(k)), translation.grid());
      asItIs +=
          error(new Translator(large.translation()).apply(entry(Optional.empty()), graph), truth);
      smoothed += error(new Translator(alike).apply(entry(Optional.empty()), graph), truth);
    }
    assertTrue(smoothed < asItIs, smoothed + " against " + asItIs);
  }

  /** Mean square error from 4 to 10 kHz, both sides pinned from 300 Hz to 1 kHz. */
  private static double error(TranslatedGraph graph, Levels truth) {
    double pin = 0;
    int pins = 0;
    double sum = 0;
    for (int b = 0; b < truth.grid().size(); b++) {
      double hz = truth.grid().band(b).midHz();
      if (hz >= 300 && hz <= 1000) {
        pin += truth.db(b) - graph.bands().get(b).predicted().orElseThrow().toDb();
        pins++;
      }
    }
    for (int b = 0; b < truth.grid().size(); b++) {
      double hz = truth.grid().band(b).midHz();
      if (hz >= 4000 && hz <= 10_000) {
        double off =
            truth.db(b) - graph.bands().get(b).predicted().orElseThrow().toDb() - pin / pins;
        sum += off * off;
      }
    }
    return sum;
  }

  /** Captures that came smoothed: an unsmoothed graph is smoothed as they were. */
  @Test
  void aGraphSmoothedLessIsSmoothedAsTheCaptures() throws UnusableInput {
    Smoothing sixth = new Smoothing(6);
    Translation coarse =
        translation.withHandling(
            new Translation.Handling(
                sixth, 1, translation.handling().publishing(), Optional.empty(), Optional.empty()));
    TranslatedGraph given = chain(coarse).translate(raw(graph, Smoothing.NONE)).given();
    assertEquals(SmoothingMatch.GRAPH_SMOOTHED, given.treatment().smoothing());
    assertEquals(
        new Translator(coarse).apply(entry(Optional.empty()), sixth.apply(graph)).bands(),
        given.bands());
    OptionalDouble level = given.bands().get(80).fromDb();
    assertEquals(Levels.of(sixth.apply(graph), coarse.grid()).level(80), level);
  }
}
