package org.twinrig.band;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.ReferenceTable;

/** Against the formulas of IEC 61260-1:2014 computed with 40 digits, and ISO 266:1997 nominals. */
class BandTest {

  @ParameterizedTest
  @CsvSource({
    "bands_octave.csv, 1",
    "bands_third_octave.csv, 3",
    "bands_sixth_octave.csv, 6",
    "bands_twelfth_octave.csv, 12",
    "bands_twenty_fourth_octave.csv, 24"
  })
  void edgesMidsAndNominalsAreThoseOfTheStandards(String file, int perOctave) {
    for (Map<String, String> row : ReferenceTable.rows(file)) {
      Band band = Band.ofIndex(Integer.parseInt(row.get("x")), perOctave);
      double mid = Double.parseDouble(row.get("mid_exact_hz"));
      assertEquals(mid, band.midHz(), 2e-14 * mid);
      assertEquals(
          Double.parseDouble(row.get("lower_edge_hz")), band.lowerHz(), 2e-14 * band.lowerHz());
      assertEquals(
          Double.parseDouble(row.get("upper_edge_hz")), band.upperHz(), 2e-14 * band.upperHz());
      if (row.containsKey("nominal_hz")) {
        assertEquals(Double.parseDouble(row.get("nominal_hz")), NominalFrequencies.of(band), 1e-9);
      }
    }
  }

  @Test
  void gridsHoldTheBandsTheMembershipRuleGives() {
    for (Map<String, String> row : ReferenceTable.rows("bands_grid_counts.csv")) {
      BandGrid grid =
          BandGrid.covering(
              Double.parseDouble(row.get("from_hz")),
              Double.parseDouble(row.get("to_hz")),
              Integer.parseInt(row.get("bands_per_octave")));
      assertEquals(Integer.parseInt(row.get("count")), grid.size(), row.toString());
      assertEquals(Integer.parseInt(row.get("first_x")), grid.band(0).index(), row.toString());
      assertEquals(
          Integer.parseInt(row.get("last_x")), grid.band(grid.size() - 1).index(), row.toString());
    }
  }

  @Property
  void neighboursMeetExactly(
      @ForAll @IntRange(min = -300, max = 300) int index,
      @ForAll @IntRange(min = 1, max = 48) int n) {
    assertEquals(Band.ofIndex(index, n).upperHz(), Band.ofIndex(index + 1, n).lowerHz());
  }

  @Property
  void theMidFrequencyFindsItsBandAgain(
      @ForAll @IntRange(min = -300, max = 300) int index,
      @ForAll @IntRange(min = 1, max = 48) int n) {
    assertEquals(index, Band.ofMidFrequency(Band.ofIndex(index, n).midHz(), n).index());
  }

  @Test
  void labelsAreThoseReadersExpect() {
    assertEquals("31.5 Hz", NominalFrequencies.label(Band.ofMidFrequency(31.5, 3)));
    assertEquals("1.25 kHz", NominalFrequencies.label(Band.ofMidFrequency(1250, 3)));
    // IEC 61260-1:2014, E.3.4: 41.567 becomes 41.6 and 8785.2 becomes 8800.
    assertEquals(41.6, NominalFrequencies.of(new Band(12, 0, 40, 41.567, 43)));
    assertEquals(8800, NominalFrequencies.of(new Band(12, 0, 8500, 8785.2, 9000)));
  }

  @Test
  void nonsenseIsRefusedAtBirth() {
    assertEquals(
        "band edges must satisfy 0 < lower < mid < upper, but are 200.0 Hz, 150.0 Hz and 100.0 Hz",
        assertThrows(IllegalArgumentException.class, () -> new Band(3, 0, 200, 150, 100))
            .getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Band(3, 0, Double.NaN, 150, 200));
    assertThrows(IllegalArgumentException.class, () -> Band.ofMidFrequency(0, 3));
    assertThrows(IllegalArgumentException.class, () -> BandGrid.covering(100, 100, 3));
    assertThrows(IllegalArgumentException.class, () -> BandGrid.covering(100, Double.NaN, 3));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 2, 5, 13, 96})
  void onlySupportedWidthsMakeAGrid(int perOctave) {
    assertThrows(IllegalArgumentException.class, () -> BandGrid.covering(20, 20_000, perOctave));
  }
}
