package org.twinrig.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AsideFileTest {
  @TempDir Path temp;

  @Test
  void fileAppearsAsAWholeOrNotAtAll() throws IOException {
    Path target = Files.writeString(temp.resolve("t.csv"), "before");
    assertThrows(
        IOException.class,
        () ->
            AsideFile.replace(
                target,
                aside -> {
                  Files.writeString(aside, "half");
                  throw new IOException("full");
                }));
    assertEquals("before", Files.readString(target));
    assertEquals(List.of(target), inside());
    AsideFile.replace(target, aside -> Files.writeString(aside, "after"));
    assertEquals("after", Files.readString(target));
  }

  private List<Path> inside() throws IOException {
    try (Stream<Path> all = Files.list(temp)) {
      return all.toList();
    }
  }

  /** What lies where a file would be written aside stays, be it a link or somebody's notes. */
  @Test
  void whatLiesInTheWayIsNeitherWrittenThroughNorRemoved() throws IOException {
    Path victim = Files.writeString(temp.resolve("victim"), "as is");
    Path target = temp.resolve("t.csv");
    Path first = AsideFile.create(target);
    Files.delete(first);
    Files.createSymbolicLink(first, victim);
    AsideFile.replace(target, aside -> Files.writeString(aside, "after"));
    assertEquals("as is", Files.readString(victim));
    assertEquals("after", Files.readString(target));
    assertTrue(Files.isSymbolicLink(first));
  }

  @Test
  void aLinkIsNotReplacedByAFile() throws IOException {
    Path link = Files.createSymbolicLink(temp.resolve("t.csv"), temp.resolve("nowhere"));
    assertEquals(
        "it is a link; name the file it leads to",
        assertThrows(
                IOException.class,
                () -> AsideFile.replace(link, aside -> Files.writeString(aside, "after")))
            .getMessage());
    assertEquals(List.of(link), inside());
  }
}
