package org.twinrig.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;

class ResponseTest {
  private final double[] hz = {100, 200, 400};
  private final double[] db = {60, 66, 60};

  @Test
  void changingTheSourceArraysChangesNothing() {
    Response response = Response.copyOf(hz, db);
    hz[0] = 1;
    db[0] = 1;
    assertEquals(100, response.frequencyHz(0));
    assertEquals(60, response.levelDb(0));
  }

  @Test
  void levelsAreLinearInLogFrequency() {
    Response response = Response.copyOf(new double[] {100, 121, 144}, new double[] {60, 66, 60});
    assertEquals(63, response.levelAt(110).orElseThrow(), 1e-12);
    assertEquals(66, response.levelAt(121).orElseThrow());
    assertTrue(response.levelAt(99.9).isEmpty());
    assertTrue(response.levelAt(144.1).isEmpty());
  }

  @Test
  void comparesByContent() {
    assertEquals(Response.copyOf(hz, db), Response.copyOf(hz, db));
    assertEquals(Response.copyOf(hz, db).hashCode(), Response.copyOf(hz, db).hashCode());
    assertNotEquals(Response.copyOf(hz, db), Response.copyOf(hz, db).plus(1));
  }

  @Test
  void nonsenseIsRefused() {
    assertEquals(
        "frequencies must rise, but 200.0 Hz follows 200.0 Hz",
        assertThrows(
                IllegalArgumentException.class,
                () -> Response.copyOf(new double[] {200, 200}, new double[] {1, 2}))
            .getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () -> Response.copyOf(new double[] {100}, new double[] {1}));
    assertThrows(
        IllegalArgumentException.class,
        () -> Response.copyOf(new double[] {100, 200}, new double[] {1, Double.NaN}));
    assertThrows(
        IllegalArgumentException.class,
        () -> Response.copyOf(new double[] {0, 200}, new double[] {1, 2}));
    assertThrows(
        IllegalArgumentException.class,
        () -> Response.copyOf(new double[] {1, 200}, new double[] {1, 2, 3}));
  }

  @Test
  void missingLevelsStayMissing() {
    BandGrid grid = BandGrid.covering(1000, 4000, 1);
    Levels some = Levels.copyOf(grid, new double[] {1, Double.NaN, 3});
    Levels all = Levels.copyOf(grid, new double[] {1, 1, 1});
    assertEquals(2, some.minus(all).present());
    assertTrue(all.minus(some).level(1).isEmpty());
    assertEquals(6, some.map(l -> 2 * l).db(2));
    assertThrows(
        IllegalArgumentException.class,
        () -> Levels.copyOf(grid, new double[] {1, Double.POSITIVE_INFINITY, 3}));
    assertThrows(
        IllegalArgumentException.class,
        () -> some.minus(Levels.copyOf(BandGrid.covering(1000, 2000, 1), new double[] {1, 2})));
  }
}
