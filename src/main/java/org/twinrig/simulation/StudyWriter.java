package org.twinrig.simulation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.twinrig.internal.Disk;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** Writes a simulated study as files, whole or not at all. */
record StudyWriter(SimulatedStudy study) {

  void writeTo(Path folder) throws UnusableInput, IOException {
    Path target = folder.toAbsolutePath().normalize();
    refuseInUse(folder, target);
    Path parent = target.getParent();
    if (parent == null) {
      throw new UnusableInput(inUse(folder, "is the root of the disk"));
    }
    Files.createDirectories(parent);
    Path draft = Files.createTempDirectory(parent, ".simulated-");
    try {
      Path data = Files.createDirectory(draft.resolve("study"));
      writeAll(data);
      new Disk().forceAll(data);
      refuseInUse(folder, target); // it may have been filled meanwhile
      Files.deleteIfExists(target);
      Files.move(data, target);
      new Disk().force(parent);
    } finally {
      deleteTree(draft);
    }
  }

  private static void refuseInUse(Path folder, Path target) throws UnusableInput, IOException {
    if (Files.isSymbolicLink(target)) {
      throw new UnusableInput(inUse(folder, "is a link"));
    }
    if (!Files.exists(target)) {
      return;
    }
    if (!Files.isDirectory(target)) {
      throw new UnusableInput(inUse(folder, "is a file"));
    }
    try (Stream<Path> inside = Files.list(target)) {
      if (inside.findAny().isPresent()) {
        throw new UnusableInput(inUse(folder, "is not empty"));
      }
    }
  }

  private static Problem inUse(Path folder, String what) {
    return Problem.fatal(
        folder.toString(), 0, what, "name a folder that does not exist yet, or an empty one");
  }

  private void writeAll(Path data) throws IOException {
    SimulatedTables tables = new SimulatedTables(study);
    write(data.resolve("study.yaml"), List.of(tables.studyFile("").stripTrailing()));
    write(data.resolve("units.csv"), tables.units());
    write(data.resolve("captures.csv"), tables.captures());
    write(data.resolve("sessions.csv"), tables.sessions());
    for (SimulatedCapture made : study.simulated()) {
      write(data.resolve(made.capture().entry().file()), CaptureFormat.file(made));
    }
    write(data.resolve("truth/mean-transfer.csv"), tables.trueMeanTransfer());
    write(data.resolve("truth/unit-transfer.csv"), tables.trueUnitTransfer());
    write(data.resolve("truth/troubles.csv"), tables.troubles());
    if (!study.catalogue().isEmpty()) {
      writeCatalogue(data, tables);
    }
  }

  private void writeCatalogue(Path data, SimulatedTables tables) throws IOException {
    write(data.resolve("catalogue.csv"), tables.catalogue());
    for (SimulatedGraph graph : study.catalogue()) {
      Path file = data.resolve(SimulatedTables.graphFile(graph));
      write(file, CaptureFormat.PLAIN.bytes(graph.response()));
    }
    double[] hz = study.benches().get(0).hz();
    double[] levels = Arrays.stream(hz).map(CatalogueDraw::referenceDb).toArray();
    byte[] reference = CaptureFormat.PLAIN.bytes(Response.copyOf(hz, levels));
    write(data.resolve(SimulatedTables.REFERENCE_FILE), reference);
    write(data.resolve("truth/catalogue.csv"), tables.trueCatalogue());
    if (study.plan().falseClaims()) {
      write(data.resolve("truth/claims.csv"), tables.claims());
    }
  }

  private static void write(Path file, List<String> lines) throws IOException {
    write(file, (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    Path parent = Objects.requireNonNull(file.getParent(), "a file of the study has a folder");
    Files.createDirectories(parent);
    Files.write(file, bytes);
  }

  private static void deleteTree(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
