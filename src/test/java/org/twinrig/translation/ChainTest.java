package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.StudentT;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.Bands;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;

/** Ways over several fixtures, and there and back. */
class ChainTest {
  private static SmallStudy first;
  private static SmallStudy back;
  private static SmallStudy others;

  @BeforeAll
  static void analyse() throws UnusableInput {
    first = SmallStudy.of(14, 21, Settings.defaults());
    back = SmallStudy.of(14, 22, Settings.defaults()).reversed();
    others = SmallStudy.of(14, 23, Settings.defaults());
  }

  private static GraphFiles.OldGraphFile graph(Response curve) {
    CatalogueEntry entry = CatalogueEntry.raw("a", "in-ear", 1);
    return new GraphFiles.OldGraphFile(entry, curve, curve, Optional.empty(), "");
  }

  private static Chain chain(Translation... legs) throws UnusableInput {
    return Chain.of(
        Stream.of(legs).map(Chain.Link::of).toList(),
        Stream.of(legs).map(leg -> Path.of(leg.origin().to())).toList());
  }

  private static TranslatedGraph through(Response curve, Translation... legs) throws UnusableInput {
    return chain(legs).translate(graph(curve)).given();
  }

  /** There by one study, back by the reverse of another: the original lies in its interval. */
  @Test
  void theRoundTripHoldsTheOriginal() throws UnusableInput {
    int held = 0;
    int judged = 0;
    for (Response curve : others.old()) {
      TranslatedGraph round = through(curve, first.translation(), back.translation());
      for (TranslatedBand band : round.bands()) {
        TranslatedBand.Predicted p = band.predicted().orElseThrow();
        double original = band.fromDb().orElseThrow();
        judged++;
        held += p.lowDb() <= original && original <= p.highDb() ? 1 : 0;
      }
    }
    double share = (double) held / judged;
    assertTrue(share >= 0.95, "held: " + share);
  }

  /** The reverse is fitted anew: it is no mirror image of the study where windows predict. */
  @Test
  void theReverseIsFittedAnew() throws UnusableInput {
    Translation there = first.translation();
    Translation mirrored = first.reversed().translation();
    assertEquals(there.origin().from(), mirrored.origin().to());
    assertEquals(there.origin().to(), mirrored.origin().from());
    Response curve = first.old().get(0);
    TranslatedGraph round = through(curve, there, mirrored);
    double largest = 0;
    for (TranslatedBand band : round.bands()) {
      largest =
          Math.max(
              largest,
              Math.abs(band.predicted().orElseThrow().toDb() - band.fromDb().orElseThrow()));
    }
    assertTrue(largest > 0.1, "largest: " + largest);
  }

  /** With offsets alone the standard uncertainties add in squares, JCGM 100:2008, 5.1.2. */
  @Test
  void uncertaintiesOfLegsAddInSquares() throws UnusableInput {
    Settings plain = Settings.defaults().with(Setting.MODEL, PredictionModel.OFFSET);
    Translation a = SmallStudy.of(8, 31, plain).translation();
    Translation b = SmallStudy.of(12, 32, plain).reversed().translation();
    Response curve = first.old().get(3);
    CatalogueEntry many = CatalogueEntry.raw("a", "in-ear", 3);
    TranslatedGraph leg = new Translator(a).apply(many, curve);
    TranslatedGraph chain =
        chain(a, b)
            .translate(new GraphFiles.OldGraphFile(many, curve, curve, Optional.empty(), ""))
            .given();
    for (int k = 0; k < chain.bands().size(); k++) {
      TranslatedBand.Predicted one = leg.bands().get(k).predicted().orElseThrow();
      TranslatedBand.Predicted both = chain.bands().get(k).predicted().orElseThrow();
      BandOutcome.Errors own = errors(a, k);
      BandOutcome.Errors next = errors(b, k);
      combined(
          one.own(),
          new Uncertainty(Math.sqrt(next.varianceDb2()), next.degreesOfFreedom()),
          both.own(),
          0.95);
      assertEquals(own.degreesOfFreedom(), one.own().degreesOfFreedom());
      combined(
          one.whole(),
          new Uncertainty(Math.sqrt(next.wholeVarianceDb2()), 11),
          both.whole(),
          1 - 0.05 / chain.bands().size());
      assertEquals(leg.bands().get(k).fromDb(), chain.bands().get(k).fromDb());
    }
  }

  /** JCGM 100:2008, G.4.1, cut to whole degrees of freedom. */
  private static void combined(
      TranslatedBand.Reach first, Uncertainty next, TranslatedBand.Reach both, double confidence) {
    double u1 = first.halfDb() / StudentT.twoSided(confidence, first.degreesOfFreedom());
    double u2 = next.standardDb();
    double squares = u1 * u1 + u2 * u2;
    double freedom =
        squares
            * squares
            / (Math.pow(u1, 4) / first.degreesOfFreedom()
                + Math.pow(u2, 4) / next.degreesOfFreedom());
    assertEquals(Math.floor(freedom + 1e-9), both.degreesOfFreedom());
    assertEquals(
        StudentT.twoSided(confidence, both.degreesOfFreedom()) * Math.sqrt(squares),
        both.halfDb(),
        1e-9);
  }

  private static BandOutcome.Errors errors(Translation translation, int band) {
    return ((BandOutcome.Fitted) translation.kinds().get(0).bands().get(band).outcome())
        .prediction()
        .errors();
  }

  /** What lowered a mark on the first leg for another cause than width lowers it at the end. */
  @Test
  void causesOfTheFirstLegStay() throws UnusableInput {
    Response curve = others.old().get(5);
    TranslatedGraph leg = through(curve, first.translation());
    TranslatedGraph chain = through(curve, first.translation(), back.translation());
    int outside = 0;
    for (int k = 0; k < chain.bands().size(); k++) {
      if (leg.bands().get(k).reasons().contains(Reason.OUTSIDE_USABLE_RANGE)) {
        outside++;
        assertTrue(chain.bands().get(k).reasons().contains(Reason.OUTSIDE_USABLE_RANGE));
        assertFalse(chain.bands().get(k).mark() == Mark.RELIABLE);
      }
    }
    assertTrue(outside > 2, "bands: " + outside);
  }

  @Test
  void legsMustShareBandsAndConfidence() throws UnusableInput {
    Translation other =
        SmallStudy.of(6, 1, Settings.defaults().with(Setting.CONFIDENCE, 0.9)).translation();
    Translation coarse =
        SmallStudy.of(6, 1, Settings.defaults().with(Setting.BANDS, new Bands(12, 200, 8000)))
            .translation();
    String place = other.origin().to();
    assertEquals(
        place
            + ": the study has another confidence than the one before it; set the same"
            + " `confidence` in both and run them again",
        refusal(first.translation(), other));
    assertEquals(
        place
            + ": the study has other bands than the one before it; set the same `bands` in both"
            + " and run them again",
        refusal(first.translation(), coarse));
  }

  @Test
  void legsMeetOnOneFixture() {
    String from = first.translation().origin().from();
    String to = first.translation().origin().to();
    assertEquals(
        to
            + ": the study starts from `"
            + from
            + "`, but the one before it ends on `"
            + to
            + "`; give studies that meet on one fixture, with the same label in both",
        refusal(first.translation(), first.translation()));
  }

  private static String refusal(Translation... legs) {
    return assertThrows(UnusableInput.class, () -> chain(legs)).problems().get(0).text();
  }

  @Test
  void theWholeNamesEveryLeg() throws UnusableInput {
    Translation whole = chain(first.translation(), back.translation()).whole();
    assertEquals(first.translation().origin().from(), whole.origin().from());
    assertEquals(back.translation().origin().to(), whole.origin().to());
    assertEquals("none + none", whole.origin().fingerprint());
    assertEquals(Smoothing.NONE, whole.handling().captureSmoothing());
  }
}
