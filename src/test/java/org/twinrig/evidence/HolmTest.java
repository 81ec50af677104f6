package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.RandomEffects;
import org.twinrig.response.Anchor;

/** Holm's adjustment against R, and regions tested as a whole. */
class HolmTest {
  private static final BandGrid GRID = BandGrid.covering(63, 8000, 1);

  /** R 4.2.2, {@code p.adjust(p, method = "holm")}; reference/holm.R. */
  @Test
  void adjustedValuesAreThoseOfR() {
    Map<String, List<Map<String, String>>> cases =
        ReferenceTable.rows("holm.csv").stream().collect(Collectors.groupingBy(r -> r.get("case")));
    assertEquals(5, cases.size());
    for (List<Map<String, String>> rows : cases.values()) {
      assertArrayEquals(
          ReferenceTable.column(rows, "adjusted"),
          RegionEquivalence.holm(ReferenceTable.column(rows, "p")),
          1e-15);
    }
  }

  /** Benjamini and Hochberg 1995, their fifteen p values; and a textbook example of four. */
  @Test
  void publishedExamplesAreReproduced() {
    List<Map<String, String>> fifteen = ReferenceTable.rows("multiple_testing_15_p_values.csv");
    assertArrayEquals(
        ReferenceTable.column(fifteen, "holm"),
        RegionEquivalence.holm(ReferenceTable.column(fifteen, "p")),
        1e-9);
    List<Map<String, String>> four = ReferenceTable.rows("multiple_testing_holm_4_p_values.csv");
    assertArrayEquals(
        ReferenceTable.column(four, "holm"),
        RegionEquivalence.holm(ReferenceTable.column(four, "p")),
        1e-12);
  }

  @Test
  void whatIsNoProbabilityIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> RegionEquivalence.holm(0.2, 1.1));
    assertThrows(IllegalArgumentException.class, () -> RegionEquivalence.holm(Double.NaN));
    assertEquals(0, RegionEquivalence.holm().length);
  }

  private static Equivalence kind(String name, double... p) {
    List<Optional<Equivalence.Verdict>> bands = new ArrayList<>();
    for (int b = 0; b < GRID.size(); b++) {
      bands.add(
          Double.isNaN(p[b])
              ? Optional.empty()
              : Optional.of(
                  new Equivalence.Verdict(
                      GRID.band(b),
                      new RandomEffects.Result(0, 0.1, 0, 6, 0.95, 0.2),
                      p[b],
                      0.2,
                      0.3,
                      true,
                      true)));
    }
    return new Equivalence(name, new Anchor.None(), 0.5, 0.95, bands);
  }

  /** A region is as sure as its least sure band; one with a band unknown is not tested. */
  @Test
  void aRegionNeedsAllOfItsBands() {
    // 63 125 | 250 500 1k 2k 4k (3981 Hz) | 8k
    List<RegionEquivalence> regions =
        RegionEquivalence.of(
            List.of(
                kind("open", 0.3, 0.01, 0.001, 0.002, 0.004, 0.003, 0.2, 0.01),
                kind("in-ear", 0.02, 0.001, 0.03, Double.NaN, 0.01, 0.01, 0.001, 0.002)),
            List.of(GRID, GRID));
    assertEquals(
        List.of(
            new RegionEquivalence("open", Region.BASS, 2, 0.3, 0.4, false),
            new RegionEquivalence("open", Region.MIDDLE, 5, 0.2, 0.4, false),
            new RegionEquivalence("open", Region.RESONANCES, 1, 0.01, 0.04, true),
            new RegionEquivalence("in-ear", Region.BASS, 2, 0.02, 0.06, false),
            new RegionEquivalence("in-ear", Region.RESONANCES, 1, 0.002, 0.01, true)),
        regions);
  }
}
