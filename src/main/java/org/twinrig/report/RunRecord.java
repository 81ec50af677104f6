package org.twinrig.report;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * run.json: what was run on what. Besides its own line in the manifest it is the one thing that may
 * differ between two equal runs, and only under {@code timings_s}.
 */
public final class RunRecord {
  static final String FILE = "run.json";

  private final ObjectNode root = JsonNodeFactory.instance.objectNode();
  private final Map<String, Double> seconds = new LinkedHashMap<>();
  private long lapStart = System.nanoTime();

  /** Starts a record, and its clock. */
  public RunRecord(String version, String command) {
    root.put("program", "twinrig").put("version", version).put("command", command);
  }

  public RunRecord with(String name, Consumer<ObjectNode> facts) {
    facts.accept(root.putObject(name));
    return this;
  }

  /** Notes how long a step took since the last one. */
  public void lap(String step) {
    long now = System.nanoTime();
    seconds.put(step, (now - lapStart) / 1e9);
    lapStart = now;
  }

  public void write(Path folder) throws IOException {
    ObjectNode timings = root.putObject("timings_s");
    seconds.forEach((step, s) -> timings.put(step, Math.round(s * 1000) / 1000.0));
    Files.writeString(folder.resolve(FILE), root.toPrettyString().replace("\r\n", "\n") + "\n");
  }
}
