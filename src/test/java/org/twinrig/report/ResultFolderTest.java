package org.twinrig.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.internal.Disk;
import org.twinrig.problem.UnusableInput;

/** Results are whole, the old or the new ones, wherever a run is stopped. */
class ResultFolderTest {
  private static final String FILE = "figures/a.svg";

  @TempDir private Path folder;
  private Path target;
  private final List<String> told = new ArrayList<>();

  @BeforeEach
  void name() throws IOException {
    folder = folder.toRealPath();
    target = folder.resolve("results");
  }

  /** A process is stopped at a step: that step and every later one is not done. */
  private static final class Stopped extends Error {
    private static final long serialVersionUID = 1L;
  }

  /** A disk that stops at a step, and may lack the exchange of folders. */
  private static final class StoppingDisk extends Disk {
    private final int last;
    private final boolean exchanges;
    private int steps;

    StoppingDisk(int last, boolean exchanges) {
      this.last = last;
      this.exchanges = exchanges;
    }

    private void step() {
      if (++steps > last) {
        throw new Stopped();
      }
    }

    @Override
    public void createFolder(Path path) throws IOException {
      step();
      super.createFolder(path);
    }

    @Override
    public void write(Path file, byte[] bytes) throws IOException {
      step();
      Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2)); // torn
      step();
      Files.write(file, bytes);
    }

    @Override
    public void move(Path from, Path to) throws IOException {
      step();
      super.move(from, to);
    }

    @Override
    public void replace(Path from, Path to) throws IOException {
      step();
      super.replace(from, to);
    }

    @Override
    public boolean exchange(Path one, Path other) {
      step();
      return exchanges && super.exchange(one, other);
    }

    @Override
    public void delete(Path path) throws IOException {
      step();
      super.delete(path);
    }

    @Override
    public void forceAll(Path path) {
      step();
    }

    @Override
    public void force(Path path) {
      step();
    }
  }

  private ResultFolder at(Disk disk) throws UnusableInput {
    return ResultFolder.at(
        target,
        ResultFolder.Kind.STUDY,
        RunInputs.of(),
        new ResultFolder.Host("name another folder with --out", 1, told::add),
        disk);
  }

  private void run(Disk disk, String text) throws UnusableInput {
    at(disk).write(place -> fill(place, text));
  }

  private static Path fill(Path place, String text) throws IOException {
    Files.writeString(place.resolve("report.html"), text);
    Files.createDirectory(place.resolve("figures"));
    return Files.writeString(place.resolve(FILE), text + " figure");
  }

  /** Everything in a folder with its content. */
  private static Map<String, String> tree(Path folder) throws IOException {
    Map<String, String> tree = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.toList()) {
        boolean file = Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS);
        tree.put(folder.relativize(path).toString(), file ? Files.readString(path) : "");
      }
    }
    return tree;
  }

  private List<String> beside() throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void wholeResultsStandWhereverARunIsStopped(boolean exchanges) throws Exception {
    Disk sound = new StoppingDisk(Integer.MAX_VALUE, exchanges);
    run(sound, "old");
    Map<String, String> old = tree(target);
    run(sound, "new");
    Map<String, String> fresh = tree(target);
    int stops = 0;
    for (boolean finished = false; !finished; stops++) {
      empty();
      run(sound, "old");
      finished = stoppedAt(stops, exchanges);
      // Who reads the results finds the old or the new ones, whole, whatever the moment.
      ResultFolder.bringBack(target, told::add);
      assertTrue(List.of(old, fresh).contains(tree(target)), "stopped at step " + stops);
      // So does who looks at the place, and the next run leaves nothing beside it.
      at(sound);
      run(sound, "new");
      assertEquals(fresh, tree(target), "run again after step " + stops);
      assertEquals(List.of("results"), beside(), "run again after step " + stops);
    }
    assertTrue(stops > 12, "only " + stops + " steps");
    assertEquals(!exchanges, told.stream().anyMatch(t -> t.contains("were put back")));
  }

  /** The next run is stopped too, at every step of mending what the first one left. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void soTheyDoWhenTheNextRunIsStoppedToo(boolean exchanges) throws Exception {
    Disk sound = new StoppingDisk(Integer.MAX_VALUE, exchanges);
    run(sound, "old");
    Map<String, String> old = tree(target);
    run(sound, "new");
    Map<String, String> fresh = tree(target);
    boolean finished = false;
    for (int first = 0; !finished; first++) {
      boolean again = false;
      for (int second = 0; !again; second++) {
        empty();
        run(sound, "old");
        finished = stoppedAt(first, exchanges);
        again = stoppedAt(second, exchanges);
        ResultFolder.bringBack(target, told::add);
        assertTrue(List.of(old, fresh).contains(tree(target)), first + ", then " + second);
      }
      run(sound, "new");
      assertEquals(fresh, tree(target));
      assertEquals(List.of("results"), beside());
    }
  }

  /** Whether the run came to its end. */
  private boolean stoppedAt(int step, boolean exchanges) throws UnusableInput {
    try {
      run(new StoppingDisk(step, exchanges), "new");
      return true;
    } catch (Stopped e) {
      return false;
    }
  }

  private void empty() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        if (!path.equals(folder)) {
          Files.delete(path);
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void firstResultsAppearWholeOrNotAtAll(boolean exchanges) throws Exception {
    Disk sound = new StoppingDisk(Integer.MAX_VALUE, exchanges);
    run(sound, "new");
    Map<String, String> fresh = tree(target);
    boolean finished = false;
    for (int step = 0; !finished; step++) {
      empty();
      finished = stoppedAt(step, exchanges);
      assertTrue(!Files.exists(target) || tree(target).equals(fresh), "stopped at step " + step);
      run(sound, "new");
      assertEquals(List.of("results"), beside(), "run again after step " + step);
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whatIsAddedOrChangedWhileARunWritesIsKeptAndTold(boolean exchanges) throws Exception {
    Disk disk = new StoppingDisk(Integer.MAX_VALUE, exchanges);
    run(disk, "old");
    at(disk)
        .write(
            place -> {
              Files.writeString(target.resolve("figures/note.txt"), "mine");
              Files.writeString(target.resolve("report.html"), "old, with my remarks");
              return fill(place, "new");
            });
    assertEquals("new", Files.readString(target.resolve("report.html")));
    Path kept = folder.resolve("results.kept");
    assertEquals(
        Map.of(
            "",
            "",
            "figures",
            "",
            "figures/note.txt",
            "mine",
            "report.html",
            "old, with my remarks"),
        tree(kept));
    assertEquals(
        List.of(
            target
                + ": what was not as twinrig had written it in the earlier results is kept in `"
                + kept
                + "`."),
        told);
    assertEquals(List.of("results", "results.kept"), beside());
  }

  /** A file that is gone is nothing anybody could lose, and an empty folder is free. */
  @Test
  void deletedFilesAndEmptyFoldersAreNoMatter() throws Exception {
    Files.createDirectory(target);
    run(new Disk(), "old");
    Files.delete(target.resolve(FILE));
    run(new Disk(), "new");
    assertEquals("new figure", Files.readString(target.resolve(FILE)));
    assertEquals(List.of("results"), beside());
    assertEquals(List.of(), told);
  }

  @Test
  void whatFailsLeavesTheOldResultsAndNothingBeside() throws Exception {
    run(new Disk(), "old");
    Map<String, String> old = tree(folder);
    UnusableInput failed =
        assertThrows(
            UnusableInput.class,
            () ->
                at(new Disk())
                    .write(
                        place -> {
                          fill(place, "half");
                          throw new IOException("full");
                        }));
    assertEquals(
        target
            + ": the results could not be written (full); earlier results are untouched; make room,"
            + " or name another folder with --out",
        failed.problems().get(0).text());
    assertEquals(old, tree(folder));
  }

  @ParameterizedTest
  @ValueSource(strings = {".results.writing", ".results.earlier", ".results.lock"})
  void whatLiesBesideUnderTheNamesARunUsesIsNotRemoved(String name) throws Exception {
    run(new Disk(), "old");
    Files.createDirectory(folder.resolve(name));
    Files.writeString(folder.resolve(name).resolve("thesis.txt"), "dear");
    Map<String, String> before = tree(folder);
    String refusal =
        assertThrows(UnusableInput.class, () -> run(new Disk(), "new")).problems().get(0).text();
    assertEquals(
        target
            + ": `"
            + folder.resolve(name)
            + "` is in the way; move it away if it is yours, or name another folder with --out",
        refusal);
    assertEquals(before, tree(folder));
  }

  @Test
  void aPlantedLinkInTheLocksPlaceIsNotWrittenThrough() throws Exception {
    Path victim = Files.writeString(folder.resolve("victim"), "as is");
    Path lock = Files.createSymbolicLink(folder.resolve(".results.lock"), victim);
    assertEquals(
        target
            + ": `"
            + lock
            + "` is in the way; move it away if it is yours, or name another folder with --out",
        assertThrows(UnusableInput.class, () -> run(new Disk(), "new")).problems().get(0).text());
    assertEquals("as is", Files.readString(victim));
    assertFalse(Files.exists(target));
  }

  /** The coreutils' own program takes the manifest as it is. */
  @Test
  void theManifestIsOneThatSha256sumChecks() throws Exception {
    run(new Disk(), "new");
    Process check;
    try {
      check =
          new ProcessBuilder("sha256sum", "--check", "--strict", "manifest.sha256")
              .directory(target.toFile())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      org.junit.jupiter.api.Assumptions.abort("no sha256sum on this machine");
      return;
    }
    assertTrue(check.waitFor(20, TimeUnit.SECONDS));
    assertEquals(
        "figures/a.svg: OK\nreport.html: OK\n",
        new String(check.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
    assertEquals(0, check.exitValue());
  }
}
