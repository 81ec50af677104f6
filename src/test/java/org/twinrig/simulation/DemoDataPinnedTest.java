package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The demonstration's files are what the demonstration's plan makes today; when this fails, write
 * them anew and look at what moved. The truth tables are left out because they take seconds.
 */
class DemoDataPinnedTest {
  private static final Path DATA = Path.of("demo-data", "plate-to-head");
  private static final long MOST_BYTES = 5_000_000;
  private static final SimulatedStudy STUDY = SimulationPlan.demo().draw();
  private static final SimulatedTables TABLES = new SimulatedTables(STUDY);

  @Test
  void capturesAreWhatThePlanMakes() throws IOException {
    for (SimulatedCapture made : STUDY.simulated()) {
      Path file = DATA.resolve(made.capture().entry().file());
      assertArrayEquals(CaptureFormat.file(made), Files.readAllBytes(file), file.toString());
    }
  }

  @Test
  void graphsAreWhatThePlanMakes() throws IOException {
    for (SimulatedGraph graph : STUDY.catalogue()) {
      Path file = DATA.resolve(SimulatedTables.graphFile(graph));
      assertArrayEquals(
          CaptureFormat.PLAIN.bytes(graph.response()), Files.readAllBytes(file), file.toString());
    }
  }

  @Test
  void tablesAreWhatThePlanMakes() throws IOException {
    assertEquals(TABLES.units(), lines(DATA.resolve("units.csv")));
    assertEquals(TABLES.captures(), lines(DATA.resolve("captures.csv")));
    assertEquals(TABLES.sessions(), lines(DATA.resolve("sessions.csv")));
    assertEquals(TABLES.catalogue(), lines(DATA.resolve("catalogue.csv")));
    assertEquals(TABLES.troubles(), lines(DATA.resolve("truth/troubles.csv")));
  }

  @Test
  void theStudyFilePointsToTheData() throws IOException {
    assertEquals(
        STUDY.studyFile("../../demo-data/plate-to-head/"),
        Files.readString(Path.of("studies", "plate-to-head", "study.yaml")));
  }

  @Test
  void theDataStaySmall() throws IOException {
    try (Stream<Path> files = Files.walk(DATA)) {
      long bytes = files.filter(Files::isRegularFile).mapToLong(f -> f.toFile().length()).sum();
      assertTrue(bytes <= MOST_BYTES, () -> bytes + " bytes");
    }
  }

  private static List<String> lines(Path file) throws IOException {
    return Files.readAllLines(file, StandardCharsets.UTF_8);
  }
}
