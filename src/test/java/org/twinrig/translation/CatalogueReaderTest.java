package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** What a lab is told of a row that contradicts itself. */
class CatalogueReaderTest {
  @TempDir private Path folder;

  private List<String> problems(String row) throws IOException, UnusableInput {
    Path table =
        Files.writeString(
            folder.resolve("catalogue.csv"), "graph,unit,kind,file,form,reference\n" + row + "\n");
    return CatalogueReader.read(table, "catalogue.csv").problems().stream()
        .map(Problem::text)
        .toList();
  }

  @Test
  void aRawGraphHasNoReference() throws Exception {
    assertEquals(
        List.of(
            "catalogue.csv:2: a raw graph names a `reference`; write `compensated` under `form` when"
                + " the curve was subtracted, or leave `reference` empty"),
        problems("g,Oak 5,in-ear,oak.txt,raw,curve.txt"));
    assertEquals(List.of(), problems("g,Oak 5,in-ear,oak.txt,compensated,curve.txt"));
  }

  @Test
  void aFormThatIsNoKnownWordIsAllThatIsSaid() throws Exception {
    assertEquals(
        List.of("catalogue.csv:2: `form` is `kompensiert`; write `raw` or `compensated`"),
        problems("g,Oak 5,in-ear,oak.txt,kompensiert,curve.txt"));
  }
}
