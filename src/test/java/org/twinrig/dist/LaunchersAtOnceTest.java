package org.twinrig.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Launchers started at once on a fresh checkout, with a Maven that writes its jar in pieces and a
 * Java that fails on a jar that is not whole.
 */
@DisabledOnOs(OS.WINDOWS)
class LaunchersAtOnceTest {
  private static final List<String> TOOLS =
      List.of(
          "sh",
          "cat",
          "date",
          "dirname",
          "find",
          "head",
          "ln",
          "mkdir",
          "mv",
          "readlink",
          "rm",
          "sleep",
          "tail");
  private static final String MAVEN =
      """
      #!/bin/sh
      target=target
      for argument; do
        case $argument in -Dtwinrig.target=*) target=${argument#*=} ;; esac
      done
      echo built >>mvn.log
      if [ -f broken ]; then echo 'it does not compile'; exit 1; fi
      mkdir -p "$target/classes"
      printf 'wh' >"$target/twinrig.jar"
      sleep 1
      printf 'ole' >>"$target/twinrig.jar"
      """;
  private static final String JAVA =
      """
      #!/bin/sh
      jar=
      for argument; do
        case $before in -jar | -cp) [ "$jar" ] || jar=$argument ;; esac
        before=$argument
      done
      [ "$(cat "$jar")" = whole ] || { echo "a jar in pieces" >&2; exit 1; }
      case "$*" in *-Xshare:dump* | *DumpLoadedClassList*) exit 1 ;; esac
      echo "ran $argument from $jar"
      """;

  @TempDir private Path folder;
  private Path home;
  private Path tools;

  @BeforeEach
  void aFreshCheckout() throws IOException {
    home = Files.createDirectory(folder.resolve("a checkout"));
    tools = Files.createDirectory(folder.resolve("tools"));
    Files.createDirectories(home.resolve("src/main"));
    Files.writeString(home.resolve("pom.xml"), "<project/>");
    script(home.resolve("twinrig"), Files.readString(Path.of("twinrig")));
    script(tools.resolve("mvn"), MAVEN);
    script(tools.resolve("java"), JAVA);
    TOOLS.forEach(this::tool);
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void oneBuildsAndTheOthersWaitForIt(boolean systemLock) throws Exception {
    if (systemLock) {
      tool("flock"); // where the system has none, the test is the other one once more
    }
    List<Process> four = Stream.generate(this::start).limit(4).toList();
    List<String> said = said(four);
    String jar = jar().toString();
    for (int k = 0; k < 4; k++) {
      assertEquals(0, four.get(k).waitFor(), said.get(k));
      assertTrue(said.get(k).endsWith("ran --version from " + jar + "\n"), said.get(k));
    }
    assertEquals("built\n", Files.readString(home.resolve("mvn.log")));
    assertFalse(Files.exists(home.resolve("target")), "the folder of `mvn verify` is its own");
    assertEquals(1, builds().size(), builds().toString());
  }

  @Test
  void aHolderThatIsDeadBlocksNobody() throws Exception {
    Process gone = new ProcessBuilder("true").start();
    gone.waitFor();
    Files.createDirectory(home.resolve(".launcher"));
    Files.createSymbolicLink(
        home.resolve(".launcher/builder"), Path.of(String.valueOf(gone.pid())));
    Process one = start();
    assertEquals(0, one.waitFor(), said(List.of(one)).toString());
    assertFalse(Files.isSymbolicLink(home.resolve(".launcher/builder")));
  }

  /** What a program was started from stays while a newer one is built beside it. */
  @Test
  void aNewBuildLeavesTheOneBeforeInPlace() throws Exception {
    assertEquals(0, start().waitFor());
    Path first = jar();
    Files.setLastModifiedTime(first.resolveSibling("started"), FileTime.fromMillis(0));
    assertEquals(0, start().waitFor());
    assertFalse(first.equals(jar()), "built anew: a source is newer");
    assertEquals("whole", Files.readString(first));
  }

  @Test
  void aBuildThatFailsSaysSoAndLeavesTheOneBefore() throws Exception {
    assertEquals(0, start().waitFor());
    Path first = jar();
    Files.setLastModifiedTime(first.resolveSibling("started"), FileTime.fromMillis(0));
    Files.createFile(home.resolve("broken"));
    Process failing = start();
    String said = said(List.of(failing)).get(0);
    assertEquals(1, failing.waitFor());
    assertEquals(
        "Building twinrig; this is done once and takes a few minutes.\nit does not compile\n"
            + "twinrig: the build failed; all of it stands in "
            + home.resolve(".launcher/build.log")
            + "\n",
        said);
    assertEquals(first, jar());
    assertEquals(1, builds().size(), "half a build is removed: " + builds());
  }

  private Process start() {
    try {
      ProcessBuilder builder =
          new ProcessBuilder("./twinrig", "--version")
              .directory(home.toFile())
              .redirectErrorStream(true);
      builder.environment().clear();
      builder.environment().put("PATH", tools.toString());
      return builder.start();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static List<String> said(List<Process> processes) throws IOException {
    List<String> said = new ArrayList<>();
    for (Process each : processes) {
      said.add(new String(each.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    }
    return said;
  }

  private Path jar() throws IOException {
    Path builds = home.resolve(".launcher");
    return builds
        .resolve(Files.readString(builds.resolve("current")).strip())
        .resolve("twinrig.jar");
  }

  private List<Path> builds() throws IOException {
    try (Stream<Path> inside = Files.list(home.resolve(".launcher"))) {
      return inside.filter(Files::isDirectory).toList();
    }
  }

  private void tool(String tool) {
    for (String place : System.getenv("PATH").split(":", -1)) {
      Path there = Path.of(place, tool);
      try {
        if (Files.isExecutable(there)) {
          script(tools.resolve(tool), "#!/bin/sh\nexec " + there + " \"$@\"\n");
          return;
        }
      } catch (IOException e) {
        throw new AssertionError(tool, e);
      }
    }
  }

  private static void script(Path file, String text) throws IOException {
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }
}
