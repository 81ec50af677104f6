package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Quantiles against the tables (values as R's qnorm prints them, from memory). */
class NormalQuantileTest {
  @Test
  void quantilesAreThoseOfTheTables() {
    assertEquals(0, NormalQuantile.of(0.5));
    assertEquals(0.2533471, NormalQuantile.of(0.6), 1e-6);
    assertEquals(1.2815516, NormalQuantile.of(0.9), 1e-6);
    assertEquals(1.9599640, NormalQuantile.of(0.975), 1e-6);
    assertEquals(-2.3263479, NormalQuantile.of(0.01), 1e-6);
    assertEquals(3.0902323, NormalQuantile.of(0.999), 1e-6);
    assertEquals(-4.2648908, NormalQuantile.of(1e-5), 1e-5);
    // Beyond e^-25 the far polynomial serves.
    assertEquals(-7.0344838, NormalQuantile.of(1e-12), 1e-5);
  }
}
