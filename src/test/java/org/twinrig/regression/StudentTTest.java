package org.twinrig.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class StudentTTest {
  /** scipy 1.17.1, scipy.stats.t: ppf and sf; whole degrees of freedom as handbooks print them. */
  @Test
  void quantilesAndTailsAreThoseOfTables() {
    assertEquals(2.228138851986, StudentT.twoSided(0.95, 10), 1e-9);
    assertEquals(2.015048373333, StudentT.oneSided(0.95, 5), 1e-9);
    assertEquals(1.730250928807, StudentT.oneSided(0.9, 2.5), 1e-9);
    assertEquals(0.025, StudentT.upperTail(2.228138851986, 10), 1e-12);
    assertEquals(0.975, StudentT.upperTail(-2.228138851986, 10), 1e-12);
    assertEquals(0.002455487463, StudentT.upperTail(7.5, 3), 1e-12);
    assertEquals(0, StudentT.upperTail(Double.POSITIVE_INFINITY, 3));
    assertEquals(1, StudentT.upperTail(Double.NEGATIVE_INFINITY, 3));
  }
}
