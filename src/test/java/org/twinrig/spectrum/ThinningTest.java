package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

class ThinningTest {
  @Property(tries = 200)
  void noPointMovesByMoreThanTheTolerance(
      @ForAll @IntRange(min = 2, max = 2000) int size,
      @ForAll @DoubleRange(min = 0, max = 0.1) double roughDb,
      @ForAll @DoubleRange(min = 0.1, max = 1.2) double stepHz,
      @ForAll long seed) {
    Random random = new Random(seed);
    double[] hz = new double[size];
    double[] db = new double[size];
    Arrays.setAll(hz, i -> 5 + stepHz * i);
    Arrays.setAll(db, i -> 20 * Math.sin(hz[i] / 90) + roughDb * random.nextGaussian());
    Response thin = Thinning.of(hz, db);
    assertEquals(hz[0], thin.fromHz());
    assertEquals(hz[size - 1], thin.toHz());
    for (int i = 0; i < size; i++) {
      assertEquals(db[i], thin.levelAt(hz[i]).orElseThrow(), Thinning.TOLERANCE_DB + 1e-9);
    }
    // Points left out were measured: what stays is no further apart than they were, or 1/48 octave.
    for (int p = 1; p < thin.size(); p++) {
      int measured = Arrays.binarySearch(hz, thin.frequencyHz(p));
      assertTrue(
          thin.frequencyHz(p - 1) == hz[measured - 1]
              || thin.frequencyHz(p) / thin.frequencyHz(p - 1)
                  <= Math.pow(2, 1 / 48.0) * (1 + 1e-9));
    }
  }

  /** A hundred thousand points of a smooth curve become few and keep their band levels. */
  @Test
  void bandLevelsStay() {
    double[] hz = new double[100_000];
    double[] db = new double[hz.length];
    Arrays.setAll(hz, i -> 5 + 0.23 * i);
    Arrays.setAll(db, i -> 10 * Math.sin(9 * Math.log(hz[i])) - 12 / (1 + hz[i] / 30));
    Response thin = Thinning.of(hz, db);
    assertTrue(thin.size() < 1500, thin.toString());
    BandGrid grid = BandGrid.covering(20, 20_000, 48);
    Levels all = Levels.of(Response.copyOf(hz, db), grid);
    Levels few = Levels.of(thin, grid);
    for (int b = 0; b < grid.size(); b++) {
      assertEquals(all.db(b), few.db(b), Thinning.TOLERANCE_DB);
    }
  }
}
