package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code twinrig plan} through the program's own door. */
class PlanCommandTest {
  private static final String DEMO = Path.of("studies", "plate-to-head").toString();

  @TempDir private Path folder;

  @Test
  void theDemonstrationIsPlanned() throws IOException {
    Path out = folder.resolve("plan");
    Ran ran = Ran.of("plan", DEMO, "--out", out.toString());
    assertEquals(0, ran.status(), ran.err());
    assertEquals(
        Files.readString(Path.of("src/test/resources/approved/plan-demo.txt"))
            .replace("\r\n", "\n"),
        ran.out().replace(out.toString(), "OUT"));
    assertEquals(
        List.of(
            "figures/plan-closed_over-ear.png",
            "figures/plan-closed_over-ear.svg",
            "figures/plan-in-ear.png",
            "figures/plan-in-ear.svg",
            "figures/plan-on-ear.png",
            "figures/plan-on-ear.svg",
            "figures/plan-open_over-ear.png",
            "figures/plan-open_over-ear.svg",
            "manifest.sha256",
            "plan-bands.csv",
            "plan-curves.csv",
            "plan.csv",
            "run.json"),
        Ran.files(out));
    List<String> zones = Files.readAllLines(out.resolve("plan.csv"));
    assertEquals(
        "kind,from_hz,to_hz,tolerance_db,present_half_db,never_below_db,outlook,even_units,"
            + "even_seatings_from,even_seatings_to,even_seatings,even_half_db,cautious_units,"
            + "cautious_seatings_from,cautious_seatings_to,cautious_seatings,cautious_half_db,"
            + "cautious_upper_half_db,difference_db,units_to_show",
        zones.get(0));
    assertEquals(1 + 4 * 10, zones.size());
    assertEquals(
        "kind,band_hz,tolerance_db,present_half_db,planned_half_db,never_below_db,curable",
        Files.readAllLines(out.resolve("plan-bands.csv")).get(0));
    assertEquals(
        "kind,from_hz,to_hz,units,seatings_from,seatings_to,half_db,upper_half_db",
        Files.readAllLines(out.resolve("plan-curves.csv")).get(0));
    for (String table : List.of("plan.csv", "plan-bands.csv", "plan-curves.csv")) {
      assertFalse(Files.readString(out.resolve(table)).contains("NaN"), table);
    }
    String svg = Files.readString(out.resolve("figures/plan-in-ear.svg"));
    assertTrue(svg.contains("In-ear: 6 of 10 octaves meet the tolerance, 1 more can, 3 never"));
    assertEquals(2 * 780, ImageIO.read(out.resolve("figures/plan-in-ear.png").toFile()).getWidth());
  }

  @Test
  void machinesGetTheSame() throws IOException {
    Ran ran = Ran.of("plan", DEMO, "--json", "--tolerance", "2.5", "--units-max", "30");
    assertEquals(0, ran.status(), ran.err());
    JsonNode root = new ObjectMapper().readTree(ran.out());
    assertEquals(30, root.get("units_max").asInt());
    assertEquals(10, root.get("seatings_max").asInt());
    assertEquals(0.9, root.get("chance").asDouble());
    JsonNode kind = root.get("kinds").get(0);
    assertEquals("open over-ear", kind.get("kind").asText());
    assertEquals(10, kind.get("zones").size());
    assertEquals(2.5, kind.get("zones").get(0).get("tolerance_db").asDouble());
    assertEquals("met", kind.get("zones").get(0).get("outlook").asText());
    assertFalse(kind.get("capture_next").isEmpty());
  }

  @Test
  void wrongValuesAreWrongUsage() {
    assertUsage("--tolerance must be above 0 dB, but is 0.0", "--tolerance", "0");
    assertUsage("--tolerance must be above 0 dB, but is -1.0", "--tolerance", "-1");
    assertUsage("--tolerance must be above 0 dB, but is NaN", "--tolerance", "NaN");
    assertUsage("--units-max must be 1 or more, but is 0", "--units-max", "0");
    assertUsage(
        "--units-max is 10, but the study has 13 units of in-ear already; give 13 or more",
        "--units-max",
        "10");
    assertUsage(
        "--seatings-max must be 2 or more, because with one seating its scatter is not known, but"
            + " is 1",
        "--seatings-max",
        "1");
    assertUsage("Invalid value for option '--tolerance': 'x' is not a double", "--tolerance", "x");
  }

  private static void assertUsage(String message, String... options) {
    List<String> all = new ArrayList<>(List.of("plan", DEMO));
    all.addAll(List.of(options));
    Ran ran = Ran.of(all.toArray(String[]::new));
    assertEquals(2, ran.status(), message);
    assertTrue(ran.err().lines().anyMatch(message::equals), ran.err());
  }

  @Test
  void aStudyThatIsNotThereIsRefused() {
    Ran ran = Ran.of("plan", folder.resolve("nowhere").toString());
    assertEquals(1, ran.status());
    assertFalse(ran.err().isBlank());
    assertFalse(ran.err().contains("Exception"));
  }
}
