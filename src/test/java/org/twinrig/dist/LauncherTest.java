package org.twinrig.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.twinrig.cli.Main;
import picocli.CommandLine.Command;

/** Both launchers, the manual page and the program name the same commands. */
class LauncherTest {
  private static final String SHELL = read("twinrig");
  private static final String WINDOWS = read("twinrig.cmd");

  @Test
  void bothLaunchersGiveTheSlowerCompilerToTheSameCommands() {
    Set<String> shell = words("(?m)^  (study \\| [^)]*)\\)$", SHELL, " \\| ");
    assertEquals(shell, words("for %%C in \\((study [^)]*)\\) do", WINDOWS, " "));
    assertFalse(shell.isEmpty());
    assertTrue(commands().containsAll(shell), shell + " against " + commands());
  }

  @Test
  void theManualPageAndThePagesNameEveryCommand() {
    String manual = read("src/dist/twinrig.1").replace("\\-", "-");
    String pages = read("studies/README.md");
    for (String command : commands()) {
      assertTrue(
          Pattern.compile("(?m)^\\.B[IR]? .*\\b" + command + "(?![a-z-])").matcher(manual).find(),
          command + " in src/dist/twinrig.1");
      assertTrue(
          pages.contains("| `./twinrig " + command + " "), command + " in studies/README.md");
    }
  }

  /** Every label that is jumped to is there once, and every one that is there is jumped to. */
  @Test
  void jumpsOfTheWindowsLauncherArrive() {
    List<String> labels = all("(?m)^:([a-z_]+)$", WINDOWS);
    assertEquals(new TreeSet<>(labels), new TreeSet<>(all("(?:goto|call) :([a-z_]+)", WINDOWS)));
    assertEquals(labels.size(), new TreeSet<>(labels).size());
  }

  /** A block in parentheses would expand its variables before it runs. */
  @Test
  void theWindowsLauncherHasClosedQuotesAndNoBlocks() {
    for (String line : WINDOWS.lines().toList()) {
      assertEquals(0, line.chars().filter(c -> c == '"').count() % 2, line);
      assertFalse(line.endsWith("("), line);
      assertEquals(
          line.chars().filter(c -> c == '(').count(),
          line.chars().filter(c -> c == ')').count(),
          line);
    }
  }

  @Test
  void bothLaunchersStartTheSameJavaAlike() {
    for (String option :
        List.of(
            "-XX:+UseSerialGC",
            "-Xmx400m",
            "-Djava.awt.headless=true",
            "-XX:TieredStopAtLevel=1",
            "-XX:TieredStopAtLevel=4",
            "-XX:CompilerDirectivesFile=",
            "TWINRIG_JAVA_OPTIONS")) {
      assertTrue(SHELL.contains(option), option + " in twinrig");
      assertTrue(WINDOWS.contains(option), option + " in twinrig.cmd");
    }
  }

  @Test
  void theWindowsLauncherIsCheckedOutWithItsLineEnds() {
    assertTrue(read(".gitattributes").contains("*.cmd text eol=crlf\n"));
  }

  private static Set<String> commands() {
    return Arrays.stream(Main.class.getAnnotation(Command.class).subcommands())
        .map(c -> c.getAnnotation(Command.class).name())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> words(String pattern, String text, String separator) {
    return all(pattern, text).stream()
        .flatMap(list -> Arrays.stream(list.split(separator)))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static List<String> all(String pattern, String text) {
    return Pattern.compile(pattern)
        .matcher(text)
        .results()
        .map((MatchResult r) -> r.group(1))
        .toList();
  }

  private static String read(String file) {
    try {
      return Files.readString(Path.of(file)).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new AssertionError(file, e);
    }
  }
}
