package org.twinrig.notebooks;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Runs every code cell of every notebook through JShell, against the classes as built. */
class NotebooksTest {

  @TestFactory
  List<DynamicTest> everyCellRuns() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("notebooks-java"))) {
      List<Path> notebooks = files.filter(f -> f.toString().endsWith(".ipynb")).sorted().toList();
      assertTrue(!notebooks.isEmpty(), "there is at least one notebook");
      return notebooks.stream()
          .map(n -> DynamicTest.dynamicTest(n.getFileName().toString(), () -> run(n)))
          .toList();
    }
  }

  private static void run(Path notebook) throws IOException {
    JsonNode cells = JsonMapper.builder().build().readTree(Files.readString(notebook)).get("cells");
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    // The cells run in this process and print to its standard output.
    PrintStream standard = System.out;
    try (PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8);
        JShell shell = JShell.builder().executionEngine("local").out(out).err(out).build()) {
      System.setOut(out);
      shell.addToClasspath(System.getProperty("java.class.path"));
      for (JsonNode cell : cells) {
        if (cell.get("cell_type").asText().equals("code")) {
          StringBuilder source = new StringBuilder();
          cell.get("source").forEach(line -> source.append(line.asText()));
          evaluate(shell, source.toString());
        }
      }
    } finally {
      System.setOut(standard);
    }
    String text = printed.toString(StandardCharsets.UTF_8);
    assertTrue(text.contains("Plate to head: 45 units, 525 captures"), text);
    assertTrue(text.contains("unreliable"), text);
  }

  private static void evaluate(JShell shell, String source) {
    String rest = source;
    while (!rest.isBlank()) {
      SourceCodeAnalysis.CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
      for (SnippetEvent event : shell.eval(next.source())) {
        if (event.status() == Snippet.Status.REJECTED || event.exception() != null) {
          fail(
              next.source()
                  + "\n"
                  + shell.diagnostics(event.snippet()).map(d -> d.getMessage(null)).toList()
                  + event.exception());
        }
      }
      rest = next.remaining();
    }
  }
}
