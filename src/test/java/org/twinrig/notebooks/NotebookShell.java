package org.twinrig.notebooks;

import java.util.List;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;

/** Runs the cells of one notebook, one after the other, against the classes as built. */
final class NotebookShell implements AutoCloseable {
  private final Recorder recorder = Recorder.on();
  private final JShell shell = JShell.builder().executionEngine("local").build();

  NotebookShell() {
    shell.addToClasspath(System.getProperty("java.class.path"));
    run("import static org.twinrig.notebooks.Recorder.display;");
  }

  /** Runs a cell; fails when a snippet of it cannot be compiled or throws. */
  List<CellOutput> run(String source) {
    String rest = source;
    while (!rest.isBlank()) {
      SourceCodeAnalysis.CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
      if (!next.completeness().isComplete()) {
        throw new AssertionError("not a whole snippet: " + rest);
      }
      shell.eval(next.source()).forEach(event -> check(event, next.source()));
      rest = next.remaining();
    }
    return recorder.taken();
  }

  private void check(SnippetEvent event, String source) {
    if (event.exception() != null) {
      throw new AssertionError(source, event.exception());
    }
    if (event.status() != Snippet.Status.VALID && event.status() != Snippet.Status.OVERWRITTEN) {
      List<String> why = shell.diagnostics(event.snippet()).map(d -> d.getMessage(null)).toList();
      throw new AssertionError(source + "\n" + event.status() + " " + why);
    }
  }

  @Override
  public void close() {
    shell.close();
    recorder.close();
  }
}
