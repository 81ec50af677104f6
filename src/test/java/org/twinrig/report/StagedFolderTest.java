package org.twinrig.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.report.StagedFolder.Unfinished;

class StagedFolderTest {
  @TempDir private Path folder;
  private Path target;

  @BeforeEach
  void name() {
    target = folder.resolve("results");
  }

  private void finish(String text) throws IOException {
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.REMOVED)) {
      write(staged.path(), text);
      staged.keep();
    }
  }

  private static void write(Path place, String text) throws IOException {
    Files.writeString(place.resolve(StagedFolder.MARKER), text, StandardCharsets.UTF_8);
  }

  private String found() throws IOException {
    return Files.readString(target.resolve(StagedFolder.MARKER), StandardCharsets.UTF_8);
  }

  private List<String> beside() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void newResultsReplaceOldOnesAndLeaveNothingBeside() throws IOException {
    finish("old");
    finish("new");
    assertEquals("new", found());
    assertEquals(List.of("results"), beside());
  }

  @Test
  void whatIsNotKeptLeavesTheOldResults() throws IOException {
    finish("old");
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.REMOVED)) {
      write(staged.path(), "half");
    }
    assertEquals("old", found());
    assertEquals(List.of("results"), beside());
  }

  @Test
  void unfinishedResultsAreGoneOnWithOnlyWhenAsked() throws IOException {
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.LEFT)) {
      write(staged.path(), "half");
    }
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.CONTINUED)) {
      assertEquals("half", Files.readString(staged.path().resolve(StagedFolder.MARKER)));
    }
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.LEFT)) {
      assertFalse(Files.exists(staged.path().resolve(StagedFolder.MARKER)));
    }
  }

  /** Killed between its two moves, a run leaves the old results beside their place. */
  @Test
  void oldResultsLeftBesideTheirPlaceArePutBack() throws IOException {
    finish("old");
    Files.move(target, folder.resolve(".results.earlier"));
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.REMOVED)) {
      assertTrue(Files.isDirectory(staged.path()));
      assertEquals("old", found());
    }
    finish("new");
    assertEquals("new", found());
  }

  /** Killed after its second move, a run leaves old results that are no longer wanted. */
  @Test
  void oldResultsAlreadyReplacedAreRemoved() throws IOException {
    finish("old");
    Files.move(target, folder.resolve(".results.earlier"));
    Files.createDirectory(target);
    write(target, "new");
    try (StagedFolder staged = StagedFolder.beside(target, Unfinished.REMOVED)) {
      assertTrue(Files.isDirectory(staged.path()));
    }
    assertEquals("new", found());
    assertEquals(List.of("results"), beside());
  }

  @Test
  void aSecondRunIsRefusedUntilTheFirstIsOver() throws IOException {
    try (StagedFolder first = StagedFolder.beside(target, Unfinished.REMOVED)) {
      assertEquals(
          "another run is writing to " + target,
          assertThrows(
                  StagedFolder.BusyException.class,
                  () -> StagedFolder.beside(target, Unfinished.CONTINUED))
              .getMessage());
      assertTrue(Files.isDirectory(first.path()));
    }
    finish("new");
    assertEquals("new", found());
  }

  @Test
  void aFolderOfAnotherSortIsNotReplaced() throws IOException {
    Files.createDirectory(target);
    Files.writeString(target.resolve("thesis.txt"), "dear", StandardCharsets.UTF_8);
    assertThrows(
        StagedFolder.NotOursException.class, () -> StagedFolder.beside(target, Unfinished.REMOVED));
    assertTrue(Files.exists(target.resolve("thesis.txt")));
    assertEquals(List.of("results"), beside());
  }

  private Path victim() throws IOException {
    return Files.writeString(
        Files.createDirectories(folder.resolve("else")).resolve("file"), "as is");
  }

  @Test
  void folderThatIsALinkIsRefused() throws IOException {
    Path link = Files.createSymbolicLink(folder.resolve("link"), victim().resolveSibling(""));
    IOException refused =
        assertThrows(
            StagedFolder.LinkException.class,
            () -> StagedFolder.beside(link, StagedFolder.Unfinished.REMOVED));
    assertEquals(link + " is a link", refused.getMessage());
  }

  @Test
  void plantedLinkInTheLocksPlaceIsNotWrittenThrough() throws IOException {
    Path victim = victim();
    Path lock = Files.createSymbolicLink(folder.resolve(".results.lock"), victim);
    IOException refused =
        assertThrows(
            IOException.class,
            () -> StagedFolder.beside(folder.resolve("results"), StagedFolder.Unfinished.REMOVED));
    assertEquals(lock + " is a link; remove it", refused.getMessage());
    assertEquals("as is", Files.readString(victim));
  }

  @Test
  void plantedLinksInUnfinishedResultsAreRemovedNotFollowed() throws IOException {
    Path victim = victim();
    for (StagedFolder.Unfinished unfinished : StagedFolder.Unfinished.values()) {
      Path staging = Files.createDirectory(folder.resolve(".results.writing"));
      Files.createSymbolicLink(staging.resolve("journal.jsonl"), victim);
      try (StagedFolder staged = StagedFolder.beside(folder.resolve("results"), unfinished)) {
        assertEquals(List.of(), List.of(staged.path().toFile().list()));
      }
      Files.deleteIfExists(staging);
      Files.createSymbolicLink(staging, victim.resolveSibling(""));
      try (StagedFolder staged = StagedFolder.beside(folder.resolve("results"), unfinished)) {
        assertFalse(Files.isSymbolicLink(staged.path()));
      }
      Files.deleteIfExists(staging);
      assertEquals("as is", Files.readString(victim));
    }
  }
}
