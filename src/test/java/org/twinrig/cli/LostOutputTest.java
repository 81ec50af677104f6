package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Command;

/** What the program prints arrives, or its exit status says that it did not. */
class LostOutputTest {
  private static final String LOST =
      "twinrig: not everything could be written to standard output: its disk is full, or the"
          + " program that reads it has ended; files that were written are whole";

  @TempDir static Path temp;
  private static Path study;

  @BeforeAll
  static void simulate() throws IOException {
    study = temp.resolve("study");
    for (int seed = 1; seed <= 2; seed++) {
      Path folder = seed == 1 ? study : temp.resolve("other");
      Ran made =
          Ran.of(
              ("simulate --units 5 --seatings 2 --kinds in-ear --points 100 --seed "
                      + seed
                      + " --out "
                      + folder)
                  .split(" "));
      assertEquals(0, made.status(), made.err());
      Files.writeString(
          folder.resolve("study.yaml"),
          Files.readString(folder.resolve("study.yaml"))
              + "bands: { per_octave: 1, from_hz: 100, to_hz: 8000 }\n");
    }
    Files.writeString(
        study.resolve("catalogue.csv"),
        "graph,unit,kind,file\nold,Old,in-ear,captures/plate/alder-1-M-1.csv\n");
  }

  static Stream<String> commands() {
    Stream<String> help =
        Arrays.stream(Main.class.getAnnotation(Command.class).subcommands())
            .map(c -> c.getAnnotation(Command.class).name() + " --help");
    return Stream.concat(
        help,
        Stream.of(
            "",
            "--help",
            "--version",
            "study S --out OUT",
            "study S --out OUT --json",
            "plan S",
            "plan S --json",
            "plan S --out OUT",
            "compare S S/../other",
            "compare S S/../other --json",
            "explain S --out OUT/",
            "inspect S/captures/plate/alder-1-M-1.csv",
            "inspect S/none.csv",
            "translate S --catalogue S/catalogue.csv --out OUT",
            "translate S --catalogue S/catalogue.csv --out OUT --json",
            "translate S --reference S/captures/plate/alder-1-M-1.csv --kind in-ear --out OUT",
            "gather S/captures/plate --pattern {unit}-{side}-{seating}.csv --fixture plate"
                + " --kind in-ear --out S/new.csv --dry-run",
            "simulate --seed 1 --units 2 --kinds in-ear --points 100 --out OUT",
            "workbench S"));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandSaysThatItsOutputIsLost(String typed) throws IOException {
    StringWriter err = new StringWriter();
    int status = Main.run(lost(0), new PrintWriter(err, true), arguments(typed));
    String said = err.toString();
    assertEquals(1, status, said);
    assertTrue(said.strip().endsWith(LOST), said);
  }

  /** A reader that ends early, such as {@code head}, may have taken some of it. */
  @Test
  void halfTheOutputIsLostToo() throws IOException {
    StringWriter err = new StringWriter();
    assertEquals(1, Main.run(lost(40), new PrintWriter(err, true), arguments("plan S")));
    assertEquals(LOST, err.toString().lines().reduce((a, b) -> b).orElseThrow());
  }

  /** Through the standard output that {@code main} opens, which swallows what the system says. */
  @Test
  void aFullDeviceIsToldByTheWholeProgram() throws Exception {
    Path full = Path.of("/dev/full");
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(full));
    Process program =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "--version")
            .redirectOutput(full.toFile())
            .start();
    String said = new String(program.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(1, program.waitFor());
    assertEquals(LOST, said.strip());
  }

  @ParameterizedTest
  @ValueSource(strings = {"\u001b]0;x\u0007", "\u009b31m", "a\u202eb", "a\rb"})
  void noNameSteersTheTerminal(String name) throws IOException {
    Path folder = Files.createTempDirectory(temp, "names");
    for (String side : List.of("L", "R")) {
      Files.createFile(folder.resolve(name + "_" + side + ".txt"));
    }
    Ran gathered =
        Ran.of(
            "gather",
            folder.toString(),
            "--pattern",
            "{unit}_{side}.txt",
            "--fixture",
            "plate",
            "--seating",
            "1",
            "--kind",
            "over-ear",
            "--dry-run",
            "--out",
            temp.resolve("captures.csv").toString());
    assertEquals(0, gathered.status(), gathered.err());
    assertEquals("", controls(gathered));
    assertEquals("", controls(Ran.of("inspect", folder.resolve(name).toString())));
    assertEquals("", controls(Ran.of("study", folder.resolve(name).toString())));
    assertEquals("", controls(Ran.of(name)));
    assertEquals("", controls(Ran.of("study", temp.toString(), "--" + name)));
  }

  /** In JSON they are escaped: who reads it has the name as it is. */
  @Test
  void jsonKeepsWhatATerminalMustNotShow() throws IOException {
    Path odd = temp.resolve("odd");
    Ran.copy(study, odd);
    Path yaml = odd.resolve("study.yaml");
    Files.writeString(
        yaml,
        Files.readString(yaml)
            .replace("title: Plate to head", "title: \"Plate \\u202e\\x9b to\\e[1m head\""));
    Ran ran = Ran.of("study", odd.toString(), "--json");
    assertEquals(0, ran.status(), ran.err());
    assertEquals("", controls(ran));
    assertEquals(
        "Plate \u202e\u009b to\u001b[1m head",
        new ObjectMapper().readTree(ran.out()).path("title").asText());
  }

  private static String controls(Ran ran) {
    return (ran.out() + ran.err()).replaceAll("[^\\p{Cc}\\p{Cf}\\u2028\\u2029]|[\\n\\t]", "");
  }

  private static String[] arguments(String typed) throws IOException {
    if (typed.isEmpty()) {
      return new String[0];
    }
    String out = Files.createTempDirectory(temp, "out").toString();
    return Arrays.stream(typed.split(" "))
        .map(word -> word.replaceFirst("^S(?=/|$)", study.toString()).replaceFirst("^OUT", out))
        .toArray(String[]::new);
  }

  /** Standard output of a process, on a device that takes so many bytes. */
  private static PrintWriter lost(int room) {
    OutputStream device =
        new OutputStream() {
          private int left = room;

          @Override
          public void write(int b) throws IOException {
            if (left-- <= 0) {
              throw new IOException("No space left on device");
            }
          }
        };
    return new PrintWriter(new PrintStream(device), true, StandardCharsets.UTF_8);
  }
}
