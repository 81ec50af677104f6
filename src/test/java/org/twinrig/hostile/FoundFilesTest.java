package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files that once made a reader fail, each named for what it shows, and the small ones a search for
 * more begins with ({@code mvn -Pfuzz verify}).
 */
class FoundFilesTest {
  static final Path FOLDER = Path.of("src/test/resources/hostile");

  @TempDir Path temp;

  @TestFactory
  Stream<DynamicTest> areAnswered() throws IOException {
    return Stream.of(Reader.values()).flatMap(this::of);
  }

  private Stream<DynamicTest> of(Reader reader) {
    try (Stream<Path> files = Files.list(FOLDER.resolve(reader.folder()))) {
      List<Path> all = files.sorted().toList();
      assertFalse(all.isEmpty(), "no files for " + reader);
      return all.stream().map(file -> test(reader, file));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private DynamicTest test(Reader reader, Path file) {
    return DynamicTest.dynamicTest(
        reader.folder() + "/" + file.getFileName(),
        () ->
            reader.read(Lab.in(Files.createTempDirectory(temp, "lab")), Files.readAllBytes(file)));
  }
}
