package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.reliability.Resonance.Shape;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** Units with notches of known place: positions in bands of 1/48 octave, worked out by hand. */
class ResonanceWanderTest {
  private static final BandGrid FINE = BandGrid.covering(1000, 8000, 48);

  /** IEC 61260-1:2014: one band of 1/48 octave, in octaves of base two. */
  private static final double BAND = 0.3 / 48 / Math.log10(2);

  /** A notch with straight flanks over {@code reach} bands on either side: half as deep there. */
  private static Levels notch(int band, int reach) {
    double[] db = new double[FINE.size()];
    Arrays.setAll(db, b -> -6.0 * Math.max(0, 2 * reach - Math.abs(b - band)) / (2 * reach));
    return Levels.copyOf(FINE, db);
  }

  private static Levels flat() {
    return Levels.copyOf(FINE, new double[FINE.size()]);
  }

  private static PairedUnits units(List<Levels> from, List<Levels> to) {
    List<String> names = new ArrayList<>();
    from.forEach(l -> names.add("Alder " + (names.size() + 1)));
    return new PairedUnits("in-ear", FINE, names, onFixture(from), onFixture(to));
  }

  private static PairedUnits.OnFixture onFixture(List<Levels> means) {
    double[] unknown = new double[FINE.size()];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(means.size(), Collections.nCopies(FINE.size(), 1)),
        Levels.copyOf(FINE, unknown),
        means.stream().map(List::of).toList());
  }

  private static Optional<ResonanceWander> found(PairedUnits units) {
    return ResonanceWander.of(units, Shape.NOTCH, 5, 0.95);
  }

  private static List<Levels> notches(int reach, int... bands) {
    return Arrays.stream(bands).mapToObj(b -> notch(b, reach)).toList();
  }

  private static double hz(double band) {
    return FINE.band(0).midHz() * Math.pow(10, 0.3 * band / 48);
  }

  /**
   * Shifts of 0, 2, 4 and 10 bands: mean 4, standard deviation √(56/3). Quantiles on 3 degrees of
   * freedom as handbooks print them: t 3.18245, chi-squared 0.215795 and 9.34840.
   */
  @Test
  void shiftsAreSummarisedWithTheirIntervals() {
    ResonanceWander wander =
        found(units(notches(3, 40, 40, 40, 40), notches(3, 40, 42, 44, 50))).orElseThrow();
    double sd = Math.sqrt(56.0 / 3) * BAND;
    assertEquals(4 * BAND, wander.meanShiftOctaves(), 1e-12);
    assertEquals(sd, wander.sdOctaves(), 1e-12);
    assertEquals(3.18245 * sd / 2, wander.meanHalfOctaves(), 1e-6);
    assertEquals(sd * Math.sqrt(3 / 9.34840), wander.sdLowOctaves(), 1e-6);
    assertEquals(sd * Math.sqrt(3 / 0.215795), wander.sdHighOctaves(), 1e-6);
    assertEquals(10 * BAND, wander.positions().get(3).shiftOctaves(), 1e-12);
    assertEquals("Alder 4", wander.positions().get(3).unit());
    assertEquals(FINE.lowerHz(), wander.searched().fromHz());
    assertEquals(FINE.upperHz(), wander.searched().toHz());
  }

  /**
   * On the old fixture all notches lie at band 40, on the new one at 40 to 50: mean 44, twice the
   * standard deviation 8.64 bands. A notch 2·6 bands wide reaches 6 below 40, further than 44 -
   * 8.64.
   */
  @ParameterizedTest
  @CsvSource({"3, 3, 35.359, 52.641", "6, 3, 34, 52.641", "3, 6, 34, 52.641", "12, 12, 28, 56"})
  void theZoneHoldsTwoStandardDeviationsAndTheFeature(
      int reachOld, int reachNew, double fromBand, double toBand) {
    FrequencyRange zone =
        found(units(notches(reachOld, 40, 40, 40, 40), notches(reachNew, 40, 42, 44, 50)))
            .orElseThrow()
            .zone()
            .orElseThrow();
    assertEquals(hz(fromBand), zone.fromHz(), 0.05);
    assertEquals(hz(toBand), zone.toHz(), 0.05);
    FrequencyRange back =
        found(units(notches(reachNew, 40, 42, 44, 50), notches(reachOld, 40, 40, 40, 40)))
            .orElseThrow()
            .zone()
            .orElseThrow();
    assertEquals(zone.fromHz(), back.fromHz(), 1e-9, "the other way round the zone is the same");
    assertEquals(zone.toHz(), back.toHz(), 1e-9);
  }

  @Test
  void theZoneEndsWhereTheSearchDoes() {
    FrequencyRange low =
        found(units(notches(3, 8, 8, 8), notches(3, 8, 14, 24))).orElseThrow().zone().orElseThrow();
    assertEquals(FINE.lowerHz(), low.fromHz());
    int top = FINE.size() - 9;
    FrequencyRange high =
        found(units(notches(3, top, top, top), notches(3, top, top - 6, top - 16)))
            .orElseThrow()
            .zone()
            .orElseThrow();
    assertEquals(FINE.upperHz(), high.toHz());
  }

  /** One twelfth of an octave is 4.014 bands of 1/48 octave: base ten against base two. */
  @ParameterizedTest
  @CsvSource({"0, 4, 8, false", "0, 3, 7, false", "0, 4, 9, true", "20, 20, 20, false"})
  void aShiftThatScattersByATwelfthOfAnOctaveIsSteady(
      int first, int second, int third, boolean wanders) {
    PairedUnits shifted =
        units(notches(3, 40, 40, 40), notches(3, 40 + first, 40 + second, 40 + third));
    assertEquals(wanders, found(shifted).orElseThrow().zone().isPresent());
  }

  @Test
  void onlyUnitsThatShowItOnBothFixturesCount() {
    List<Levels> from = new ArrayList<>(notches(3, 40, 41, 42));
    List<Levels> to = new ArrayList<>(notches(3, 50, 51, 52));
    from.addAll(List.of(flat(), notch(40, 3)));
    to.addAll(List.of(notch(50, 3), flat()));
    ResonanceWander three = found(units(from, to)).orElseThrow();
    assertEquals(
        List.of("Alder 1", "Alder 2", "Alder 3"),
        three.positions().stream().map(ResonanceWander.Position::unit).toList());
    assertTrue(found(units(from.subList(1, 5), to.subList(1, 5))).isEmpty(), "two say nothing");
    assertTrue(ResonanceWander.of(units(from, to), Shape.NOTCH, 6.1, 0.95).isEmpty());
    assertTrue(ResonanceWander.of(units(from, to), Shape.PEAK, 1, 0.95).isEmpty());
  }
}
