package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.reliability.Resonance.Shape;
import org.twinrig.response.Levels;

class ResonanceTest {
  private static final int PER_OCTAVE = 48;

  /** IEC 61260-1:2014: one band of 1/48 octave, in octaves of base two. */
  private static final double BAND_OCTAVES = 0.3 / PER_OCTAVE / Math.log10(2);

  private static Levels curve(double... db) {
    List<Band> bands =
        java.util.stream.IntStream.range(0, db.length)
            .mapToObj(b -> Band.ofIndex(b, PER_OCTAVE))
            .toList();
    return Levels.copyOf(new BandGrid(bands), db);
  }

  private static double place(Levels curve, Resonance found) {
    return PER_OCTAVE * Math.log10(found.hz() / curve.grid().band(0).midHz()) / 0.3;
  }

  /** scipy.signal and numpy.polyfit: see the source lines of the table. */
  @Test
  void isTheMostProminentPeakOfAReferenceLibrary() {
    for (Map<String, String> row : ReferenceTable.rows("resonance_peaks.csv")) {
      double[] db = new double[30];
      Arrays.setAll(db, b -> Double.parseDouble(row.get("b" + b)));
      Levels curve = curve(db);
      Shape shape = Shape.valueOf(row.get("shape"));
      Resonance found = Resonance.strongest(curve, shape, 0).orElseThrow();
      assertEquals(Double.parseDouble(row.get("place")), place(curve, found), 1e-9);
      double prominenceDb = Double.parseDouble(row.get("prominence_db"));
      assertEquals(prominenceDb, found.prominenceDb(), 1e-9);
      double bands = Double.parseDouble(row.get("width_bands"));
      assertEquals(bands * BAND_OCTAVES, found.widthOctaves(), 1e-9);
      assertTrue(Resonance.strongest(curve, shape, prominenceDb - 1e-6).isPresent());
      assertEquals(Optional.empty(), Resonance.strongest(curve, shape, prominenceDb + 1e-6));
    }
  }

  /** Straight flanks, so that place, depth and width are read off the drawing. */
  @ParameterizedTest
  @CsvSource({
    // The lower shoulder counts: 4 dB; half of it is 2 bands down the left flank, 1 on the right.
    "'4 3 2 1 0 2 4 6', 3.833333, 4, 3",
    // A bottom of two equal bands lies between them.
    "'3 0 0 3', 1.5, 3, 2",
    // Of two alike the lower in frequency.
    "'3 0 3 0 3', 1, 3, 1",
    // The dip on the flank of a deeper one is not the strongest.
    "'9 5 6 0 9', 2.9, 9, 1.25",
    // A bottom at an end is where the search stopped; a dip reaches up to where the curve falls
    // below.
    "'0 5 3 5 1', 2, 2, 1",
    "'0 5 4 8', 1.7, 1, 0.625"
  })
  void aNotchIsReadOffItsDrawing(String levels, double place, double depthDb, double widthBands) {
    double[] db = Arrays.stream(levels.split(" ")).mapToDouble(Double::parseDouble).toArray();
    Levels curve = curve(db);
    Resonance notch = Resonance.strongest(curve, Shape.NOTCH, depthDb).orElseThrow();
    assertEquals(place, place(curve, notch), 1e-6);
    assertEquals(depthDb, notch.prominenceDb(), 1e-12);
    assertEquals(widthBands * BAND_OCTAVES, notch.widthOctaves(), 1e-6);
    double[] upsideDown = Arrays.stream(db).map(v -> 2 - v).toArray();
    assertEquals(notch, Resonance.strongest(curve(upsideDown), Shape.PEAK, depthDb).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource({"'1 2 3 4'", "'4 3 2 1'", "'2 2 2 2'", "'1 0'", "'3 2 2 1'"})
  void aCurveThatOnlyRisesOrFallsHasNone(String levels) {
    Levels curve =
        curve(Arrays.stream(levels.split(" ")).mapToDouble(Double::parseDouble).toArray());
    assertEquals(Optional.empty(), Resonance.strongest(curve, Shape.NOTCH, 0));
    assertEquals(Optional.empty(), Resonance.strongest(curve, Shape.PEAK, 0));
  }

  @Test
  void aCurveWithAGapIsNotJudged() {
    assertTrue(Resonance.strongest(curve(3, 0, 3, 3), Shape.NOTCH, 0).isPresent());
    assertTrue(Resonance.strongest(curve(3, 0, 3, Double.NaN), Shape.NOTCH, 0).isEmpty());
  }
}
