package org.twinrig.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.Findings;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;

/**
 * What a run over a catalogue has finished, one line of JSON per graph, so that a run that was
 * stopped can be gone on with. A line is written after the graph's own files are, and names their
 * SHA-256; a last line that a kill cut short is not believed.
 */
final class GraphJournal implements AutoCloseable {
  static final String FILE = "journal.jsonl";

  private final JsonMapper json = JsonMapper.builder().build();
  private final Map<String, String> earlier = new ConcurrentHashMap<>();
  private final BufferedWriter writer;

  private GraphJournal(Path file) throws IOException {
    this.writer =
        Files.newBufferedWriter(
            file, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }

  /**
   * Opens the journal of a folder.
   *
   * @param folder where the run writes
   * @param identity says what is run: translation, program, references; the lines of a run of
   *     another identity are not believed
   * @return the journal, with what an earlier run finished
   */
  static GraphJournal in(Path folder, String identity) throws IOException {
    Path file = folder.resolve(FILE);
    Map<String, String> found = Files.exists(file) ? read(file, identity) : Map.of();
    if (found.isEmpty()) {
      Files.writeString(file, identity + "\n", StandardCharsets.UTF_8);
    }
    GraphJournal journal = new GraphJournal(file);
    if (!found.isEmpty()) {
      // A line cut short by a kill must not swallow the next one.
      journal.writer.newLine();
    }
    journal.earlier.putAll(found);
    return journal;
  }

  private static Map<String, String> read(Path file, String identity) throws IOException {
    Map<String, String> found = new ConcurrentHashMap<>();
    String[] lines = Files.readString(file, StandardCharsets.UTF_8).split("\n", -1);
    if (!lines[0].equals(identity)) {
      return Map.of();
    }
    for (int k = 1; k < lines.length; k++) {
      int tab = lines[k].indexOf('\t');
      if (tab > 0) {
        found.put(lines[k].substring(0, tab), lines[k].substring(tab + 1));
      }
    }
    return found;
  }

  /**
   * A graph finished earlier.
   *
   * @param line what became of it, with what the lab should know about its file
   * @param files SHA-256 of the files written for it
   */
  record Finished(Findings<CatalogueRun.Line> line, String files) {}

  /** What an earlier run finished of a graph; nothing when its line is not whole. */
  Optional<Finished> finished(CatalogueEntry entry) {
    String line = earlier.remove(key(entry));
    if (line == null) {
      return Optional.empty();
    }
    try {
      JsonNode node = json.readTree(line);
      return node == null || !node.isObject()
          ? Optional.empty()
          : Optional.of(new Finished(JournalLine.read(entry, node), node.path("files").asText()));
    } catch (JsonProcessingException | IllegalArgumentException e) {
      return Optional.empty(); // cut short by a kill: the graph is done again
    }
  }

  /** Notes a graph whose files are written. */
  void note(Findings<CatalogueRun.Line> line, String files) throws IOException {
    String text = JournalLine.of(line).put("files", files).toString();
    synchronized (writer) {
      writer.write(key(line.value().entry()) + "\t" + text + "\n");
      writer.flush();
    }
  }

  /** The whole row: one that has changed in any cell is another graph. */
  private static String key(CatalogueEntry entry) {
    return Sha256.hex(entry.toString().getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void close() throws IOException {
    writer.close();
  }
}
