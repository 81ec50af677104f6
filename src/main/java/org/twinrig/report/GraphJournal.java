package org.twinrig.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
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
 * SHA-256; a line that is not whole, because a kill cut it short or the disk spoiled it, is known
 * by its own SHA-256 and not believed.
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
    try (InputStream in = Files.newInputStream(file)) {
      JournalLines lines = new JournalLines(in);
      if (!identity.equals(lines.next().orElse(""))) {
        return Map.of();
      }
      for (Optional<String> line = lines.next(); line.isPresent(); line = lines.next()) {
        int tab = line.get().indexOf('\t');
        if (tab > 0) {
          found.put(line.get().substring(0, tab), line.get().substring(tab + 1));
        }
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
    int tab = line == null ? -1 : line.indexOf('\t');
    if (tab < 0 || !line.substring(0, tab).equals(Sha256.hex(utf8(line.substring(tab + 1))))) {
      return Optional.empty(); // cut short by a kill: the graph is done again
    }
    try {
      JsonNode node = json.readTree(line.substring(tab + 1));
      return node == null || !node.isObject()
          ? Optional.empty()
          : Optional.of(new Finished(JournalLine.read(entry, node), node.path("files").asText()));
    } catch (JsonProcessingException | IllegalArgumentException e) {
      return Optional.empty(); // another version wrote it: the graph is done again
    }
  }

  /** Notes a graph whose files are written. */
  void note(Findings<CatalogueRun.Line> line, String files) throws IOException {
    String text = JournalLine.of(line).put("files", files).toString();
    synchronized (writer) {
      writer.write(key(line.value().entry()) + "\t" + Sha256.hex(utf8(text)) + "\t" + text + "\n");
      writer.flush();
    }
  }

  /** The whole row: one that has changed in any cell is another graph. */
  private static String key(CatalogueEntry entry) {
    return Sha256.hex(utf8(entry.toString()));
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Override
  public void close() throws IOException {
    writer.close();
  }
}
