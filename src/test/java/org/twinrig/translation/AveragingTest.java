package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.translation.CatalogueEntry.Averaging;

/** Old graphs that average several seatings otherwise than the study, or are of a unit's state. */
class AveragingTest {
  private static Translation translation;
  private static Response graph;

  @BeforeAll
  static void analyse() throws UnusableInput {
    SmallStudy study =
        SmallStudy.of(9, 12, Settings.defaults().with(Setting.MODEL, PredictionModel.OFFSET));
    translation = study.translation();
    graph = study.old().get(2);
  }

  private static CatalogueEntry entry(String kind, OptionalInt seatings, Averaging how) {
    return new CatalogueEntry(
        "a",
        "a",
        kind,
        "a.csv",
        new CatalogueEntry.Averaged(seatings, OptionalInt.empty(), how),
        Optional.empty(),
        Optional.of(Smoothing.NONE),
        Optional.empty(),
        "",
        "",
        2);
  }

  private static CatalogueEntry entry(int seatings, Averaging how) {
    return entry("in-ear", OptionalInt.of(seatings), how);
  }

  private static BandOutcome.Fitted fitted(int band) {
    return (BandOutcome.Fitted) translation.kinds().get(0).bands().get(band).outcome();
  }

  private static double seatingVariance(int band) {
    return fitted(band).scatter().seatVarianceFrom().orElseThrow();
  }

  /** numpy: see the source lines of the table. */
  @Test
  void powerReadsHigherAsAMonteCarloRunSays() {
    for (Map<String, String> row : ReferenceTable.rows("power_mean_bias.csv")) {
      int seatings = Integer.parseInt(row.get("seatings"));
      double sd = Double.parseDouble(row.get("sd_db"));
      Levels above =
          OldGraph.abovePowerMean(entry(seatings, Averaging.POWER), translation).orElseThrow();
      double found = above.db(20) / seatingVariance(20) * sd * sd;
      double over = found - Double.parseDouble(row.get("bias_db"));
      assertTrue(over > -0.001 && over < (sd > 2 ? 0.05 : 0.02), row + ": " + over);
    }
  }

  /** {@code to = from - (ln 10/20)·s2_A·(1 - 1/3) + δ̂}, and the old graph is shown as it came. */
  @Test
  void whatPowerAddsIsTakenOffBandByBand() {
    Translator translator = new Translator(translation);
    TranslatedGraph power = translator.apply(entry(3, Averaging.POWER), graph);
    TranslatedGraph decibels = translator.apply(entry(3, Averaging.DB), graph);
    for (int b = 0; b < power.bands().size(); b++) {
      TranslatedBand band = power.bands().get(b);
      assertEquals(decibels.bands().get(b).fromDb(), band.fromDb());
      assertEquals(
          decibels.bands().get(b).predicted().orElseThrow().toDb()
              - Math.log(10) / 20 * seatingVariance(b) * 2 / 3,
          band.predicted().orElseThrow().toDb(),
          1e-9);
      assertEquals(
          decibels.bands().get(b).predicted().orElseThrow().halfDb(),
          band.predicted().orElseThrow().halfDb());
    }
    assertEquals("power corrected", done(entry(3, Averaging.POWER)));
    assertEquals("db", done(entry(3, Averaging.DB)));
  }

  /** One side of a study of one scatters as it says; two of them half as much. */
  @Test
  void sidesCount() {
    CatalogueEntry two =
        new CatalogueEntry(
            "a",
            "a",
            "in-ear",
            "a.csv",
            new CatalogueEntry.Averaged(OptionalInt.of(4), OptionalInt.of(2), Averaging.POWER),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "",
            "",
            2);
    assertEquals(
        Math.log(10)
            / 20
            * seatingVariance(10)
            * translation.handling().sidesPerSeating()
            / 2
            * 3
            / 4,
        OldGraph.abovePowerMean(two, translation).orElseThrow().db(10),
        1e-12);
  }

  @Test
  void whereSeatingsOrKindAreNotKnownNothingIsTakenOff() {
    for (CatalogueEntry entry :
        List.of(
            entry("in-ear", OptionalInt.empty(), Averaging.POWER),
            entry("unknown", OptionalInt.of(3), Averaging.POWER))) {
      assertEquals("power not corrected", done(entry));
      assertEquals(
          new Translator(translation)
              .apply(entry(entry.kind(), entry.averaged().seatings(), Averaging.DB), graph)
              .bands(),
          new Translator(translation).apply(entry, graph).bands());
    }
  }

  /** The pinned graph that windows look at loses what the anchor gained, too. */
  @Test
  void aPinnedGraphStaysPinned() {
    CatalogueEntry entry = entry(3, Averaging.POWER);
    OldGraph old = OldGraph.of(graph, translation);
    Levels above = OldGraph.abovePowerMean(entry, translation).orElseThrow();
    Levels pinned = old.meanOfDecibels(entry, translation).pinned().orElseThrow();
    double gained = 0;
    int bands = 0;
    double after = 0;
    double before = 0;
    for (int b = 0; b < above.grid().size(); b++) {
      if (translation.anchor().linesUp(above.grid().band(b))) {
        gained += above.db(b);
        after += pinned.db(b);
        before += old.pinned().orElseThrow().db(b);
        bands++;
      }
    }
    assertTrue(bands > 0);
    assertEquals(before / bands, after / bands, 1e-9);
    assertEquals(
        old.pinned().orElseThrow().db(5) - above.db(5) + gained / bands, pinned.db(5), 1e-9);
  }

  @Test
  void theBestSealCountsAsOneSeatingAndItsBassIsMarkedWhereSealsScatter() {
    // Of the variance of a graph of one seating, s² + S_A·(1 - 1/3), S_A is a quarter where it is
    // s²/(4 - 2/3): just above in even bands, just below in odd ones.
    List<MarkedBand> bands = new ArrayList<>();
    for (int b = 0; b < translation.grid().size(); b++) {
      double quarter = fitted(b).prediction().offset().varianceDb2() / (4 - 2.0 / 3);
      bands.add(seated(b, quarter * (b % 2 == 0 ? 1.001 : 0.999)));
    }
    TransferFunction kind = translation.kinds().get(0);
    Translator translator =
        new Translator(
            translation.withKinds(
                List.of(new TransferFunction("in-ear", kind.unitNames(), kind.grid(), bands))));
    TranslatedGraph best = translator.apply(entry(5, Averaging.BEST_SEAL), graph);
    TranslatedGraph one = translator.apply(entry(1, Averaging.DB), graph);
    for (int b = 0; b < bands.size(); b++) {
      TranslatedBand band = best.bands().get(b);
      assertEquals(one.bands().get(b).predicted(), band.predicted());
      boolean misled = band.band().midHz() < 300 && b % 2 == 0;
      assertEquals(misled, band.reasons().contains(Reason.BEST_SEAL), "band " + b);
      assertFalse(misled && band.mark() == Mark.RELIABLE);
    }
    assertEquals("best seal", done(entry(5, Averaging.BEST_SEAL)));
  }

  /** A band with another variance between seatings on the old fixture, of three each. */
  private static MarkedBand seated(int band, double variance) {
    BandOutcome.Fitted own = fitted(band);
    MarkedBand marked = translation.kinds().get(0).bands().get(band);
    BandOutcome.Scatter scatter =
        new BandOutcome.Scatter(
            own.scatter().seatingVariance(),
            OptionalDouble.of(variance),
            own.scatter().seatVarianceTo(),
            3);
    return new MarkedBand(
        new BandOutcome.Fitted(
            own.band(),
            own.mean(),
            own.simultaneousHalfDb(),
            own.prediction(),
            scatter,
            own.unitSpread()),
        marked.mark(),
        marked.reasons());
  }

  @Test
  void aGraphOfAnAdaptiveUnitIsNeverTranslated() {
    CatalogueEntry adaptive = entry("in-ear, adaptive", OptionalInt.of(3), Averaging.DB);
    Translation study =
        translation.withKinds(List.of(renamed(translation.kinds().get(0), "in-ear, adaptive")));
    TranslatedGraph given = new Translator(study).apply(adaptive, graph);
    for (TranslatedBand band : given.bands()) {
      assertEquals(Optional.empty(), band.predicted());
      assertEquals(List.of(Reason.ADAPTIVE), band.reasons());
    }
    assertEquals(Decision.RE_MEASURE, Decision.of(given, translation.handling().publishing()));
    assertEquals(List.of(), study.candidatesForUnknown());
    CatalogueReader.Catalogue catalogue =
        new CatalogueReader.Catalogue("catalogue.csv", 2, List.of(adaptive, adaptive));
    assertEquals(
        List.of(
            "catalogue.csv:2: units of kind `in-ear, adaptive` adapt to what they are worn on and so"
                + " correct for the fixture; 2 graphs of it are not translated and must be measured"
                + " again"),
        CatalogueNames.notes(catalogue, List.of(translation)).stream().map(Problem::text).toList());
  }

  private static TransferFunction renamed(TransferFunction kind, String name) {
    return new TransferFunction(name, kind.unitNames(), kind.grid(), kind.bands());
  }

  private static String done(CatalogueEntry entry) {
    Chain.Result result =
        Chain.of(Chain.Link.of(translation))
            .translate(new GraphFiles.OldGraphFile(entry, graph, graph, Optional.empty(), ""));
    return result.given().treatment().averaging(entry.averaged().how());
  }
}
