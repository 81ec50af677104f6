package org.twinrig.regression;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.BandSample;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Digits reached on the one-way analyses of variance of NIST's Statistical Reference Datasets, with
 * what pairs seatings and estimates the variance between units. Each bound is the level reached,
 * less about half a digit.
 */
class StrdVarianceTest {
  private static final BandGrid ONE_BAND =
      new BandGrid(BandGrid.covering(1000, 2000, 1).bands().subList(0, 1));

  /**
   * Two things limit sets 4 to 9, whose values share 7 and 13 leading digits. Written as doubles
   * they keep 10 and 4 digits of the variances, whatever is computed then (found in exact
   * rationals). The rest goes in {@link Pairing}'s mean, one running sum: 2001 values near 10¹² add
   * up to 2·10¹⁵, where doubles lie 0.25 apart, so that a mean is off by 0.02 where cells differ by
   * 0.1. Nothing of F is left in set 9 but its size. Levels in dB share three leading digits at
   * most, so one sum is enough for them.
   */
  @ParameterizedTest
  @CsvSource({
    "SmLs01, 13.5",
    "SmLs02, 13.5",
    "SmLs03, 12",
    "SmLs04, 8",
    "SmLs05, 7.5",
    "SmLs06, 6",
    "SmLs07, 2.3",
    "SmLs08, 1.9",
    "SmLs09, 0.3"
  })
  void analysisOfVarianceByPairingAndRandomEffects(String set, double digits) {
    Map<String, String> certified =
        ReferenceTable.rows("nist_anova_smls_rules.csv").stream()
            .filter(r -> r.get("set").equals(set))
            .findFirst()
            .orElseThrow();
    int replicates = Integer.parseInt(certified.get("replicates_per_cell"));
    BandSample sample = paired(certified.get("constant_c"), replicates);
    double within = sample.to().variance().orElseThrow();
    RandomEffects.Result effects =
        new RandomEffects(0.95).fit(sample.differencesDb(), sample.variances());
    // With equal v, tau² + v is the variance of the cell means.
    double between = replicates * (effects.tauSquared() + sample.variances()[0]);
    double[] expected = {
      number(certified, "ss_within") / number(certified, "df_within"),
      number(certified, "ss_between") / number(certified, "df_between"),
      number(certified, "f")
    };
    StrdDigits.reach(digits, set, expected, within, between, between / within);
  }

  /** Each treatment is a unit, each replicate a seating on the new fixture; the old one reads 0. */
  private static BandSample paired(String constant, int replicates) {
    List<Unit> units = new ArrayList<>();
    List<AnchoredCapture> captures = new ArrayList<>();
    for (int cell = 1; cell <= 9; cell++) {
      String name = "cell " + cell;
      units.add(new Unit(name, "kind", Unit.Role.FIT, "", "", cell));
      captures.add(capture(name, "A", 1, 0));
      for (int k = 0; k < replicates; k++) {
        captures.add(capture(name, "B", k + 1, replicate(constant, cell, k)));
      }
    }
    Study study =
        new Study(
            Path.of("."),
            "SmLs",
            new Fixture("A", "A", "", 20, 20_000),
            new Fixture("B", "B", "", 20, 20_000),
            units,
            captures.stream().map(c -> c.capture().entry()).toList(),
            List.of(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    return new Pairing(study).pair(captures, Unit.Role.FIT).get(0).at(0);
  }

  /** The rule in the head of the table, in decimals, so that only the last step rounds. */
  private static double replicate(String constant, int cell, int k) {
    String base = cell == 1 ? "0.4" : cell % 2 == 0 ? "0.3" : "0.5";
    String step = k == 0 ? "0" : k % 2 == 1 ? "-0.1" : "0.1";
    return new BigDecimal(constant)
        .add(new BigDecimal(base))
        .add(new BigDecimal(step))
        .doubleValue();
  }

  private static AnchoredCapture capture(String unit, String fixture, int seating, double db) {
    CaptureEntry entry =
        new CaptureEntry(unit, fixture, Side.M, seating, "file", "", "", "", "", 1);
    Response unused = Response.copyOf(new double[] {100, 9000}, new double[] {0, 0});
    return new AnchoredCapture(
        new Capture(entry, unused, "x"), Levels.copyOf(ONE_BAND, new double[] {db}), 0);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
