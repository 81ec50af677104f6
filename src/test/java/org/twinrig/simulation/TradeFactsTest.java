package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What anyone who measures headphones would expect to see. Common practice, no source. */
class TradeFactsTest {
  private static final Map<SimulatedKind, KindFigures> FIGURES = new EnumMap<>(SimulatedKind.class);

  @BeforeAll
  static void measure() {
    for (SimulatedKind kind : SimulatedKind.values()) {
      FIGURES.put(kind, KindFigures.of(SimulationPlan.standard(), kind, 60));
    }
  }

  /**
   * Common practice, no source. The zone of the canal-entrance notch, 6 to 10 kHz, stands apart.
   */
  @TestFactory
  List<DynamicTest> fixturesDifferMostInTheBassAndAbove10kHz() {
    return each(
        (kind, figures) -> {
          double middle = KindFigures.rms(figures.meanDb(), 200, 6000);
          double bass = KindFigures.rms(figures.meanDb(), 20, 200);
          double top = KindFigures.rms(figures.meanDb(), 10_000, 20_000);
          assertTrue(bass > 1.3 * middle, () -> kind + " bass " + bass + " middle " + middle);
          assertTrue(top > 1.3 * middle, () -> kind + " top " + top + " middle " + middle);
        });
  }

  /** Common practice, no source: a source of low impedance hardly cares what it plays into. */
  @Test
  void openOverEarDependsLeastOnTheLoad() {
    double open = KindFigures.rms(FIGURES.get(SimulatedKind.OPEN_OVER_EAR).meanDb(), 20, 200);
    for (SimulatedKind kind : SimulatedKind.values()) {
      if (kind != SimulatedKind.OPEN_OVER_EAR) {
        double other = KindFigures.rms(FIGURES.get(kind).meanDb(), 20, 200);
        assertTrue(open < 0.5 * other, () -> kind + " " + other + " against open " + open);
      }
    }
    assertTrue(open < 1.5, () -> "open " + open);
  }

  /** Common practice, no source. */
  @TestFactory
  List<DynamicTest> unitsDisagreeByTenthsInTheMiddleAndByDecibelsAtTheTop() {
    return each(
        (kind, figures) -> {
          within(kind + " middle", KindFigures.rms(figures.unitSdDb(), 200, 4000), 0.15, 1.0);
          within(kind + " top", KindFigures.rms(figures.unitSdDb(), 10_000, 20_000), 1.5, 5.0);
        });
  }

  /** Common practice, no source: the canal behind a tip resonates between 5 and 10 kHz. */
  @Test
  void inEarsDisagreeBySeveralDecibelsWhereTheCanalResonates() {
    within(
        "in-ear 4-10 kHz",
        KindFigures.rms(FIGURES.get(SimulatedKind.IN_EAR).unitSdDb(), 4000, 10_000),
        1.8,
        4.0);
  }

  /** Common practice, no source. */
  @TestFactory
  List<DynamicTest> seatingsScatterByTenthsInTheMiddleAndByDecibelsAtTheEnds() {
    return each(
        (kind, figures) -> {
          within(
              kind + " head middle", KindFigures.rms(figures.seatSdToDb(), 200, 4000), 0.15, 0.7);
          within(
              kind + " head top", KindFigures.rms(figures.seatSdToDb(), 10_000, 20_000), 0.8, 3.0);
          within(
              kind + " plate middle", KindFigures.rms(figures.seatSdFromDb(), 200, 4000), 0.1, 0.5);
        });
  }

  /** Common practice, no source: a hard plate seals more easily than a soft head. */
  @TestFactory
  List<DynamicTest> seatingsOnTheHeadScatterMoreInTheBass() {
    return each(
        (kind, figures) -> {
          double plate = KindFigures.rms(figures.seatSdFromDb(), 20, 60);
          double head = KindFigures.rms(figures.seatSdToDb(), 20, 60);
          assertTrue(head > 2 * plate, () -> kind + " head " + head + " plate " + plate);
        });
  }

  /**
   * Common practice, no source: under cups the new fixture shows more near 8 kHz, on most units.
   */
  @Test
  void cupsShowMoreEnergyNear8kHzOnTheHead() {
    for (SimulatedKind kind : SimulatedKind.values()) {
      if (!kind.ranges().inserted()) {
        double share = FIGURES.get(kind).shareAbove(8000, 1.5);
        assertTrue(share > 0.75, () -> kind + " share " + share);
      }
    }
  }

  /** Common practice, no source: leakier units lose more bass, and differ more, on the head. */
  @Test
  void inEarDifferencesFollowTheUnitsOwnProperties() {
    KindFigures figures = FIGURES.get(SimulatedKind.IN_EAR);
    double correlation = figures.correlationWithLogLeak(25);
    assertTrue(correlation > 0.4, () -> "correlation " + correlation);
  }

  /**
   * A resonance that shows on the old fixture moves in a lawful way: what in-ears do on the old
   * fixture near 7 kHz predicts much of their own difference there.
   */
  @Test
  void resonancesMoveLawfullyBetweenFixtures() {
    double explained =
        FIGURES.get(SimulatedKind.IN_EAR).explainedByOldFixture(8000, new int[] {-4, -2, 0, 2, 4});
    assertTrue(explained > 0.5, () -> "explained share of variance " + explained);
  }

  private interface Fact {
    void check(SimulatedKind kind, KindFigures figures);
  }

  private static List<DynamicTest> each(Fact fact) {
    return Arrays.stream(SimulatedKind.values())
        .map(
            kind ->
                DynamicTest.dynamicTest(kind.label(), () -> fact.check(kind, FIGURES.get(kind))))
        .toList();
  }

  private static void within(String name, double value, double low, double high) {
    assertTrue(value >= low && value <= high, () -> name + ": " + value);
  }
}
