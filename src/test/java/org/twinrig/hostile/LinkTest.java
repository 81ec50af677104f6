package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Utf8File;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.TranslationFile;

/**
 * Links are held to the rule of names: whatever they lead to must lie in the data root. What is no
 * file, such as a pipe that would keep a reader waiting, is not opened.
 */
class LinkTest {
  private static final String OUT =
      " is a link that leads out of the data root; copy the file into the data root, or widen"
          + " `data_root` in study.yaml";

  @TempDir Path temp;
  private Lab lab;
  private Path outside;

  @BeforeEach
  void copy() throws IOException {
    lab = Lab.in(Files.createDirectory(temp.toRealPath().resolve("lab")));
    outside = Files.createDirectory(temp.toRealPath().resolve("outside"));
  }

  /** The first problem, or the number of captures. */
  private String answer() {
    try {
      var found = StudyReader.read(lab.study());
      Optional<Problem> first = found.refused().stream().findFirst();
      Study study = found.value();
      return first.map(Problem::text).orElse(study.captures().size() + " captures");
    } catch (UnusableInput e) {
      return e.problems().stream().filter(p -> p.line() > 0).findFirst().orElseThrow().text();
    }
  }

  private void link(String name, Path target) throws IOException {
    Path link = lab.file(name);
    Files.deleteIfExists(link);
    try {
      Files.createSymbolicLink(link, target);
    } catch (UnsupportedOperationException e) {
      assumeTrue(false, "no links on this system");
    }
  }

  private void movedOut(String name) throws IOException {
    Path moved = outside.resolve("moved.csv");
    Files.move(lab.file(name), moved);
    link(name, moved);
  }

  @Test
  void captureBehindALinkOutOfTheStudyIsRefused() throws IOException {
    movedOut("captures/a-plate.csv");
    assertEquals("captures.csv:2: `captures/a-plate.csv`" + OUT, answer());
  }

  @Test
  void folderOfCapturesBehindALinkOutOfTheStudyIsRefused() throws IOException {
    Files.move(lab.file("captures"), outside.resolve("captures"));
    link("captures", outside.resolve("captures"));
    assertEquals("captures.csv:2: `captures/a-plate.csv`" + OUT, answer());
  }

  @Test
  void tablesBehindALinkOutOfTheStudyAreRefused() throws IOException {
    for (String table : List.of("units", "captures", "sessions")) {
      movedOut(table + ".csv");
      int line = List.of("units", "captures", "sessions").indexOf(table) + 8;
      assertEquals("study.yaml:" + line + ": `" + table + "`: `" + table + ".csv`" + OUT, answer());
      Files.delete(lab.file(table + ".csv"));
      Files.move(outside.resolve("moved.csv"), lab.file(table + ".csv"));
    }
  }

  @Test
  void referenceBehindALinkOutOfTheStudyIsRefused() throws IOException {
    Files.writeString(outside.resolve("moved.csv"), "hz,db\n20,1\n20000,2\n");
    link("house.csv", outside.resolve("moved.csv"));
    String yaml = Files.readString(lab.file("study.yaml"));
    Files.writeString(
        lab.file("study.yaml"), yaml + "references: { plate: { file: house.csv } }\n");
    assertEquals("study.yaml:30: `references.plate.file`: `house.csv`" + OUT, answer());
  }

  @Test
  void linkWithinTheStudyIsFollowed() throws IOException {
    String sound = answer();
    Files.move(lab.file("captures/a-plate.csv"), lab.file("captures/first.csv"));
    link("captures/a-plate.csv", Path.of("first.csv"));
    assertEquals(sound, answer());
  }

  @Test
  void linkInACircleIsRefused() throws IOException {
    link("captures/a-plate.csv", Path.of("a-plate.csv"));
    assertEquals(
        "captures.csv:2: `captures/a-plate.csv` is a link that leads nowhere; put the file itself"
            + " in the place of the link",
        answer());
  }

  @Test
  void linkToNothingIsRefused() throws IOException {
    link("units.csv", Path.of("gone.csv"));
    assertEquals(
        "study.yaml:8: `units`: `units.csv` is a link that leads nowhere; put the file itself in"
            + " the place of the link",
        answer());
  }

  @Test
  void nameThatGoesOutAndInAgainThroughALinkIsRefused() throws IOException {
    Files.createDirectory(outside.resolve("below"));
    Files.copy(lab.file("captures/a-plate.csv"), outside.resolve("a.csv"));
    link("way", outside.resolve("below"));
    String table = Files.readString(lab.file("captures.csv"));
    Files.writeString(
        lab.file("captures.csv"), table.replace("captures/a-plate.csv", "way/../a.csv"));
    assertEquals("captures.csv:2: `way/../a.csv`" + OUT, answer());
  }

  @Test
  void linkToADeviceIsRefused() throws IOException {
    link("captures/a-plate.csv", Path.of("/dev/zero"));
    assertEquals("captures.csv:2: `captures/a-plate.csv`" + OUT, answer());
  }

  @Test
  void pipeInTheStudyIsRefusedBeforeItIsOpened() throws Exception {
    pipe(lab.file("captures/a-plate.csv"));
    assertEquals("captures.csv:2: `captures/a-plate.csv` is no file; name a file", answer());
  }

  @Test
  void pipesAndDevicesNamedOnTheCommandLineAreRefused() throws Exception {
    pipe(temp.resolve("pipe"));
    for (Path no : List.of(temp.resolve("pipe"), Path.of("/dev/zero"))) {
      assertEquals(
          "it: this is a device or a pipe and no file; name a file",
          message(() -> CaptureFile.read(no, "it")));
      assertEquals(
          "it: is a device or a pipe and no file; name a file",
          message(() -> Utf8File.read(no, "it", 1000)));
    }
  }

  /** The log of the kernel calls itself a regular file and keeps its reader waiting. */
  @Test
  void whatTheSystemMakesUpIsNotOpened() throws Exception {
    for (Path no : List.of(Path.of("/proc/kmsg"), Path.of("/proc/self/status"))) {
      assumeTrue(Files.isRegularFile(no), "no such file here");
      link("way", no);
      for (Path named : List.of(no, lab.file("way"))) {
        assertEquals(
            "it: this is a window into the system and no ordinary file; name a file",
            message(() -> CaptureFile.read(named, "it")));
        assertEquals(
            "it: is a window into the system and no ordinary file; name a file",
            message(() -> Utf8File.read(named, "it", 1000)));
        assertThrows(IOException.class, () -> Sha256.hex(named));
      }
    }
  }

  /** Each of the files a command may be pointed at, as a pipe: none of them is waited for. */
  @Test
  void pipeInPlaceOfAnyFileIsRefused() throws Exception {
    Path pipe = temp.resolve("pipe");
    pipe(pipe);
    for (String name : List.of("study.yaml", "units.csv", "captures.csv", "sessions.csv")) {
      Files.move(lab.file(name), temp.resolve("kept"));
      pipe(lab.file(name));
      String message = message(() -> StudyReader.read(lab.study()));
      assertTrue(
          message.endsWith("is no file; name a file")
              || message.endsWith("is a device or a pipe and no file; name a file"),
          message);
      Files.move(temp.resolve("kept"), lab.file(name), StandardCopyOption.REPLACE_EXISTING);
    }
    String refused = "it: is a device or a pipe and no file; name a file";
    assertEquals(refused, message(() -> CatalogueReader.read(pipe, "it")));
    assertEquals(refused, message(() -> TranslationFile.read(pipe, "it")));
  }

  private static String message(Executable reading) {
    return assertThrows(UnusableInput.class, reading).getMessage();
  }

  private static void pipe(Path at) throws IOException, InterruptedException {
    Files.deleteIfExists(at);
    try {
      Process made = new ProcessBuilder("mkfifo", at.toString()).start();
      assumeTrue(made.waitFor(1, TimeUnit.MINUTES) && made.exitValue() == 0, "no pipes here");
    } catch (IOException e) {
      assumeTrue(false, "no pipes on this system");
    }
  }
}
