package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.response.Anchor;

/** Against unit means, pooled variances and harmonic means computed in exact rationals. */
class PairingTest {

  @Test
  void meansAndPooledScatterAreThoseComputedExactly() {
    List<Map<String, String>> rows = ReferenceTable.rows("seating_pooled_variance.csv");
    Set<String> names = new LinkedHashSet<>();
    List<CaptureEntry> entries = new ArrayList<>();
    List<Capture> captures = new ArrayList<>();
    for (Map<String, String> row : rows) {
      names.add(row.get("unit"));
      CaptureEntry entry =
          new CaptureEntry(
              row.get("unit"),
              row.get("fixture"),
              Side.M,
              Integer.parseInt(row.get("seating")),
              "file",
              "",
              "",
              "",
              "",
              1);
      double db = Double.parseDouble(row.get("level_db"));
      entries.add(entry);
      captures.add(
          new Capture(entry, Dense.curve(new double[] {100, 9000}, new double[] {db, db}), "x"));
    }
    Settings settings =
        Settings.defaults()
            .with(Setting.BANDS, new Bands(1, 1000, 2000))
            .with(Setting.ANCHOR, new Anchor.None());
    Study study =
        new Study(
            Path.of("."),
            "seatings",
            new Fixture("A", "A", "", 20, 20_000),
            new Fixture("B", "B", "", 20, 20_000),
            names.stream().map(n -> new Unit(n, "kind", Unit.Role.FIT, "", "", 1)).toList(),
            entries,
            List.of(),
            Optional.empty(),
            settings,
            Path.of("."),
            List.of(),
            Map.of());
    PairedUnits paired =
        new Pairing(study)
            .pair(Anchoring.of(settings, 1).apply(captures).value(), Unit.Role.FIT)
            .get(0);
    assertEquals(List.of("u1", "u2", "u3", "u4", "u5"), paired.units());
    BandSample sample = paired.at(0);
    double[] d = {1.98333333333, 1.1, 2.8, 0.85, 3.26666666667};
    double[] v = {0.268784722222, 0.235572916667, 0.415277777778, 0.41109375, 0.212916666667};
    for (int i = 0; i < 5; i++) {
      assertEquals(d[i], sample.differencesDb()[i], 1e-10);
      assertEquals(v[i], sample.variances()[i], 1e-10);
    }
    assertEquals(0.303541666667, sample.from().variance().orElseThrow(), 1e-10);
    assertEquals(0.335208333333, sample.to().variance().orElseThrow(), 1e-10);
    assertEquals(2.06896551724, sample.from().harmonicMean(), 1e-10);
    assertEquals(2.06896551724, sample.to().harmonicMean(), 1e-10);
  }
}
