package org.twinrig.notebooks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Runs every code cell of every notebook against the classes as built and holds what it prints and
 * displays against the outputs the notebook carries. With {@code -Dtwinrig.notebooks=write} the
 * outputs are written into the notebooks instead.
 */
class NotebooksTest {
  private static final boolean WRITES = "write".equals(System.getProperty("twinrig.notebooks"));

  @TestFactory
  List<DynamicTest> aNotebookGivesWhatItCarries() throws IOException {
    return each(NotebooksTest::run);
  }

  @TestFactory
  List<DynamicTest> aNotebookIsWrittenInOneWay() throws IOException {
    return each(file -> assertEquals(Files.readString(file), Notebook.read(file).text()));
  }

  /** What is done with a notebook. */
  private interface Work {
    void on(Path notebook) throws IOException;
  }

  private static List<DynamicTest> each(Work work) throws IOException {
    try (Stream<Path> files = Files.list(Path.of("notebooks-java"))) {
      List<Path> notebooks = files.filter(f -> f.toString().endsWith(".ipynb")).sorted().toList();
      assertFalse(notebooks.isEmpty(), "there is at least one notebook");
      return notebooks.stream()
          .map(n -> DynamicTest.dynamicTest(n.getFileName().toString(), () -> work.on(n)))
          .toList();
    }
  }

  private static void run(Path file) throws IOException {
    Notebook notebook = Notebook.read(file);
    List<String> carried = new ArrayList<>();
    List<String> given = new ArrayList<>();
    int count = 0;
    try (NotebookShell shell = new NotebookShell()) {
      for (Notebook.Cell cell : notebook.code()) {
        note(carried, cell, cell.outputs());
        List<CellOutput> outputs = shell.run(cell.source());
        note(given, cell, outputs);
        cell.setOutputs(++count, outputs);
      }
    }
    if (WRITES) {
      notebook.write();
    } else {
      assertEquals(
          String.join("\n", carried),
          String.join("\n", given),
          "the outputs are stale; write them anew with -Dtwinrig.notebooks=write and look at them");
    }
  }

  private static void note(List<String> lines, Notebook.Cell cell, List<CellOutput> outputs) {
    lines.add("cell " + cell.id());
    lines.addAll(CellOutput.shown(outputs));
  }
}
