package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Fixture;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.study.DbLimit;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;

/** Reliable to 1.5 dB, caution to 3 dB, five units asked for. */
class MarkRuleTest {
  private static final BandGrid GRID = BandGrid.covering(100, 10_000, 3);
  private static final Band ONE_KILOHERTZ = Band.ofMidFrequency(1000, 3);

  private static final BandOutcome.Errors ERRORS = new BandOutcome.Errors(0.5, 0.25, 4, 0.25);

  private static BandOutcome.Fitted fitted(
      Band band, int units, double halfDb, double seating, double between) {
    return new BandOutcome.Fitted(
        band,
        new RandomEffects.Result(0, 0.1, between, units, 0.95, 0.3),
        0.5,
        new BandOutcome.Prediction(Optional.empty(), halfDb, ERRORS, ERRORS),
        new BandOutcome.Scatter(seating, OptionalDouble.empty(), OptionalDouble.empty(), 1),
        new BandOutcome.UnitSpread(0, 1, 0));
  }

  private static MarkedBand marked(MarkRule rule, BandOutcome outcome) {
    return rule.mark(List.of(outcome)).get(0);
  }

  private static MarkRule plain(DeclaredZone... zones) {
    return RedrawnKind.rule(RedrawnKind.settings(GRID, 5, List.of(zones)), List.of());
  }

  @ParameterizedTest
  @CsvSource({
    "5, 0, 0.3, 0.7, RELIABLE, ''",
    "5, 1.5, 0.3, 0.7, RELIABLE, ''",
    "5, 1.5001, 0.3, 0.7, CAUTION, wide prediction; units disagree",
    "5, 3, 0.7, 0.3, CAUTION, wide prediction; seating scatter",
    "5, 3.0001, 0.7, 0.3, UNRELIABLE, wide prediction; seating scatter",
    "5, 9, 0.5, 0.5, UNRELIABLE, wide prediction",
    "4, 0.2, 0.3, 0.7, UNRELIABLE, few units",
    "4, 2, 0.3, 0.7, UNRELIABLE, few units; wide prediction; units disagree"
  })
  void widthAndUnitsDecide(
      int units, double halfDb, double seating, double between, Mark mark, String reasons) {
    MarkedBand band = marked(plain(), fitted(ONE_KILOHERTZ, units, halfDb, seating, between));
    assertEquals(mark, band.mark());
    assertEquals(reasons, Reason.join(band.reasons()));
  }

  @Test
  void withoutAnEstimateNothingIsReliable() {
    MarkedBand none =
        marked(plain(), new BandOutcome.NotFitted(ONE_KILOHERTZ, 0, BandOutcome.Why.NO_DATA));
    assertEquals(Mark.UNRELIABLE, none.mark());
    assertEquals(List.of(Reason.NO_DATA), none.reasons());
    assertEquals(ONE_KILOHERTZ, none.band());
    MarkedBand two =
        marked(
            plain(),
            new BandOutcome.NotFitted(ONE_KILOHERTZ, 2, BandOutcome.Why.FEWER_THAN_THREE_UNITS));
    assertEquals(Mark.UNRELIABLE, two.mark());
    assertEquals(List.of(Reason.FEW_UNITS), two.reasons());
  }

  /** The third-octave band at 1 kHz runs from 891 Hz to 1122 Hz (IEC 61260-1:2014). */
  @ParameterizedTest
  @CsvSource({
    "500, 891, RELIABLE",
    "500, 892, CAUTION",
    "950, 960, CAUTION",
    "1122, 2000, CAUTION",
    "1123, 2000, RELIABLE"
  })
  void aBandThatReachesIntoAZoneIsCapped(double fromHz, double toHz, Mark mark) {
    BandOutcome good = fitted(ONE_KILOHERTZ, 5, 1, 0.3, 0.7);
    MarkedBand declared = marked(plain(new DeclaredZone("leak", "head", fromHz, toHz)), good);
    assertEquals(mark, declared.mark());
    assertEquals(
        mark == Mark.RELIABLE ? List.of() : List.of(Reason.DECLARED_ZONE), declared.reasons());
    MarkRule wandering =
        RedrawnKind.rule(
            RedrawnKind.settings(GRID, 5, List.of()),
            List.of(new FrequencyRange(9000, 9500), new FrequencyRange(fromHz, toHz)));
    MarkedBand moved = marked(wandering, good);
    assertEquals(mark, moved.mark());
    assertEquals(
        mark == Mark.RELIABLE ? List.of() : List.of(Reason.RESONANCE_WANDERS), moved.reasons());
    assertEquals(
        Mark.UNRELIABLE,
        marked(wandering, fitted(ONE_KILOHERTZ, 5, 4, 0, 1)).mark(),
        "a cap never mends a mark");
  }

  /** A band belongs to a range when its mid-band frequency does, a quarter of a band allowed. */
  @ParameterizedTest
  @CsvSource({
    "100, 8000, RELIABLE",
    "100, 945, RELIABLE",
    "100, 943, CAUTION",
    "1060, 8000, CAUTION"
  })
  void outsideTheRangeOfAnEarSimulatorABandIsCapped(double fromHz, double toHz, Mark mark) {
    Settings settings = RedrawnKind.settings(GRID, 5, List.of());
    Fixture wide = new Fixture("plate", "Plate", "", 20, 20_000);
    Fixture narrow = new Fixture("head", "Head", "", fromHz, toHz);
    for (List<Fixture> fixtures : List.of(List.of(wide, narrow), List.of(narrow, wide))) {
      MarkedBand band =
          marked(
              new MarkRule(settings, fixtures, List.of(), Map.of()),
              fitted(ONE_KILOHERTZ, 5, 1, 0.3, 0.7));
      assertEquals(mark, band.mark());
      assertEquals(
          mark == Mark.RELIABLE ? List.of() : List.of(Reason.OUTSIDE_USABLE_RANGE), band.reasons());
    }
  }

  @Test
  void limitsMayStepOverFrequency() {
    Tolerance tolerance =
        new Tolerance(
            new DbLimit(List.of(new DbLimit.Step(0, 1), new DbLimit.Step(5000, 2))),
            DbLimit.everywhere(4),
            0.5);
    assertEquals(Mark.CAUTION, MarkRule.byWidth(tolerance, 4999, 2));
    assertEquals(Mark.RELIABLE, MarkRule.byWidth(tolerance, 5000, 2));
    assertEquals(Mark.UNRELIABLE, MarkRule.byWidth(tolerance, 5000, 4.1));
  }

  @Test
  void theWorseMarkAllowsLess() {
    Mark[] rising = {Mark.RELIABLE, Mark.CAUTION, Mark.UNRELIABLE};
    for (int a = 0; a < 3; a++) {
      for (int b = 0; b < 3; b++) {
        assertEquals(rising[Math.max(a, b)], rising[a].worse(rising[b]));
      }
    }
    assertEquals(
        List.of("reliable", "caution", "unreliable"),
        Arrays.stream(rising).map(Mark::word).toList());
  }

  @Test
  void reasonsAreJoinedOnceEachInOneOrder() {
    assertEquals(
        "few units; declared zone",
        Reason.join(List.of(Reason.DECLARED_ZONE, Reason.FEW_UNITS, Reason.DECLARED_ZONE)));
  }
}
