package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Names that are empty or too long, wherever one is asked for. */
class EmptyNamesTest {
  private static final Set<Class<?>> PLACES = Set.of(Path.class, PagePlace.class);

  @TempDir Path temp;

  /** Every option and argument of every command that names a file or folder. */
  static Stream<Arguments> places() {
    List<Arguments> places = new ArrayList<>();
    new CommandLine(new Main())
        .getSubcommands()
        .forEach(
            (name, line) -> {
              CommandSpec spec = line.getCommandSpec();
              for (ArgSpec arg : spec.args()) {
                if (isPlace(arg)) {
                  places.add(Arguments.of(name, arg));
                }
              }
            });
    return places.stream();
  }

  private static boolean isPlace(ArgSpec arg) {
    return PLACES.contains(arg.type())
        || (arg.auxiliaryTypes().length > 0 && PLACES.contains(arg.auxiliaryTypes()[0]));
  }

  @ParameterizedTest
  @MethodSource("places")
  void anEmptyNameIsRefusedAsWrongUsage(String command, ArgSpec empty) {
    for (String name : List.of("", " ")) {
      List<String> typed = new ArrayList<>(List.of(command));
      for (ArgSpec arg : empty.command().args()) {
        if (arg instanceof OptionSpec option && (arg == empty || isNeeded(arg, empty))) {
          typed.addAll(List.of(option.longestName(), arg == empty ? name : "1"));
        }
      }
      for (ArgSpec arg : empty.command().positionalParameters()) {
        typed.add(arg == empty ? name : "1");
      }
      Ran ran = Ran.of(typed.toArray(String[]::new));
      assertEquals(2, ran.status(), typed + ran.err());
      assertTrue(ran.err().contains(": the name of a file or folder is empty\n"), ran.err());
    }
  }

  private static boolean isNeeded(ArgSpec arg, ArgSpec empty) {
    boolean alternative = arg.group() != null; // one of them is enough
    boolean first = alternative && arg.group().args().iterator().next() == arg;
    return arg.required() && (!alternative || (first && empty.group() == null));
  }

  @Test
  void theTableOfUnitsIsNotTheTableOfCaptures() throws IOException {
    Path folder = Files.createDirectory(temp.resolve("exports"));
    Files.createFile(folder.resolve("A_L_1.txt"));
    Files.createFile(temp.resolve("linked.csv"));
    Files.createSymbolicLink(temp.resolve("units.csv"), temp.resolve("linked.csv"));
    for (String name : List.of("units.csv", "UNITS.csv", "linked.csv")) {
      Path out = temp.resolve(name);
      Ran ran =
          Ran.of(
              "gather",
              folder.toString(),
              "--pattern",
              "{unit}_{side}_{seating}.txt",
              "--fixture",
              "plate",
              "--kind",
              "in-ear",
              "--force",
              "--out",
              out.toString());
      assertEquals(2, ran.status(), ran.err());
      assertEquals(
          "--out is the table of captures, but "
              + out
              + " is the table of units, which is made beside it; name another, such as captures.csv",
          ran.err().lines().findFirst().orElseThrow());
    }
    assertEquals(0, Files.size(temp.resolve("linked.csv")));
  }

  /** File systems take names of 255 bytes; the lab's own words may be longer. */
  @Test
  void namesLongerThanAFileSystemTakesAreNoHindrance() throws IOException {
    Path study = temp.resolve("study");
    Ran made =
        Ran.of(
            ("simulate --seed 1 --units 5 --seatings 2 --kinds in-ear --points 100 --out " + study)
                .split(" "));
    assertEquals(0, made.status(), made.err());
    String kind = "k".repeat(300);
    String unit = "u".repeat(240);
    replace(study.resolve("units.csv"), ",in-ear,", "," + kind + ",");
    replace(study.resolve("units.csv"), "Alder 1", unit);
    replace(study.resolve("captures.csv"), "Alder 1", unit);
    replace(
        study.resolve("study.yaml"),
        "seed: 1",
        "seed: 1\nbands: { per_octave: 1, from_hz: 100, to_hz: 8000 }");
    String graph = "g".repeat(300);
    Files.writeString(
        study.resolve("catalogue.csv"),
        "graph,unit,kind,file\n"
            + (graph + "1,Old," + kind + ",captures/plate/alder-1-M-1.csv\n")
            + (graph + "2,Old," + kind + ",captures/plate/alder-1-M-2.csv\n"));
    Ran studied = Ran.of("study", study.toString());
    assertEquals(0, studied.status(), studied.err());
    assertTrue(
        Ran.files(study.resolve("results")).stream()
            .anyMatch(f -> f.matches("figures/transfer-k{100}-[0-9a-f]{8}\\.svg")));
    Path out = temp.resolve("out");
    Ran translated =
        Ran.of(
            "translate",
            study.toString(),
            "--catalogue",
            study.resolve("catalogue.csv").toString(),
            "--figures",
            "--out",
            out.toString());
    assertEquals(0, translated.status(), translated.err());
    assertEquals(2, Ran.files(out.resolve("translated")).size());
  }

  private static void replace(Path file, String old, String text) throws IOException {
    Files.writeString(file, Files.readString(file).replace(old, text));
  }
}
