package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.simulation.SimulatedKind;

/** The committed table says what is promised of plans, and a small run of the same agrees. */
class PublishedPlanProofTest {
  private static final Path TABLE = Path.of("studies", "plan-proof", "plans.csv");

  private static List<String[]> rows() throws IOException {
    return Files.readAllLines(TABLE).stream().skip(1).map(line -> line.split(",", -1)).toList();
  }

  @Test
  void ninetyOfAHundredPromisedZonesComeWithinTenPercent() throws IOException {
    List<String[]> promised = rows().stream().filter(r -> r[4].equals("promised")).toList();
    assertEquals(
        List.of("closed over-ear", "in-ear", "all kinds"),
        promised.stream().map(r -> r[3]).toList());
    for (String[] row : promised) {
      assertEquals("8", row[0]);
      assertEquals("2", row[1]);
      assertEquals("2.000000", row[2]);
      assertTrue(Integer.parseInt(row[5]) >= 100, "enough studies");
      assertTrue(Double.parseDouble(row[8]) >= 0.90, String.join(",", row));
    }
  }

  /** Of octaves that the small studies did not meet, told apart: they are few, in both tables. */
  @Test
  void soDoThoseThatOnlyAPlanBringsWithinReach() throws IOException {
    double zones = 0;
    double within = 0;
    for (Path table : List.of(TABLE, TABLE.resolveSibling("plans-16.csv"))) {
      for (Map<String, String> row : ReferenceTable.rows(table)) {
        if (row.get("kind").equals("all kinds") && row.get("claim").equals("newly promised")) {
          double here = Double.parseDouble(row.get("zones"));
          zones += here;
          within += here * Double.parseDouble(row.get("within_ten_percent"));
        }
      }
    }
    // What the README of the proof says.
    assertEquals(28, zones);
    assertEquals(27, within, 0.01);
    assertTrue(within / zones >= 0.90);
  }

  @Test
  void thePlainVariancesAloneDoNotKeepIt() throws IOException {
    String[] even =
        rows().stream()
            .filter(r -> r[3].equals("all kinds") && r[4].equals("even chance"))
            .findFirst()
            .orElseThrow();
    double within = Double.parseDouble(even[10]);
    // What "about every other study" says.
    assertTrue(within > 0.4 && within < 0.6, String.join(",", even));
    assertTrue(Double.parseDouble(even[8]) < 0.90, String.join(",", even));
  }

  /** Few studies let anything be promised, so that a small run looks at what is expected. */
  @Test
  void aSmallRunComesOutAsExpected() {
    PlanProof proof = new PlanProof(8, 2, List.of(SimulatedKind.IN_EAR));
    List<PlanProof.Row> rows = proof.rows(Small.harness(4, 5, 2));
    PlanProof.Row even =
        rows.stream()
            .filter(r -> r.kind().equals(PlanProof.ALL_KINDS))
            .filter(r -> r.claim() == PlanProof.Claim.EVEN_CHANCE)
            .findFirst()
            .orElseThrow();
    assertTrue(even.zones() >= 3, even::toString);
    assertTrue(even.ratio().value() > 0.6 && even.ratio().value() < 1.6, even::toString);
    assertTrue(even.units().value() > proof.units(), even::toString);
    rows.forEach(row -> assertEquals(List.of(), proof.broken(row)));
    String csv = proof.table().csv(rows);
    assertTrue(csv.contains("\n8,2,2.000000,in-ear,even chance,4,"), csv);
    assertEquals(csv, proof.table().csv(proof.rows(Small.harness(4, 5, 1))));
  }
}
