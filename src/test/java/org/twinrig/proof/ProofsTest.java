package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.proof.Proofs.Published;

/** The command that makes the tables of proofs anew. */
class ProofsTest {
  private static final SealProof SMALL = new SealProof(3, 3, 0.2, List.of(0.0));
  private static final List<Published<?>> TABLES =
      List.of(
          new Published<>("small", "small.csv", 2, 7, SMALL),
          new Published<>("broken", "broken.csv", 2, 7, new NeverKept()));

  /** Of every study its number, and a promise that only the first keeps. */
  private record NeverKept() implements Proof<Integer> {
    @Override
    public List<Integer> rows(Harness harness) {
      return harness.each("numbers", study -> study);
    }

    @Override
    public Table<Integer> table() {
      return new Table<Integer>().text("study", r -> "no. " + r).count("number", r -> r);
    }

    @Override
    public List<String> broken(Integer row) {
      return row == 0 ? List.of() : List.of("it is not 0");
    }
  }

  @TempDir private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... arguments) {
    return Proofs.run(TABLES, folder, stream(out), stream(err), arguments);
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  @Test
  void aTableIsPutInItsPlace() throws IOException {
    Path file = Files.writeString(folder.resolve("small.csv"), "an earlier one");
    run("small");
    assertEquals(SMALL.table().csv(SMALL.rows(Small.harness(2, 7, 1))), Files.readString(file));
    assertEquals("", text(out));
  }

  @Test
  void aTableOfOtherStudiesIsPrintedAndItsBreachesTold() {
    assertEquals(1, run("broken", "3", "1"));
    assertEquals("study,number\nno. 0,0\nno. 1,1\nno. 2,2\n", text(out));
    List<String> told = text(err).lines().toList();
    assertEquals(
        List.of("no. 1,1", "  it is not 0.", "no. 2,2", "  it is not 0.", "The promise is broken."),
        told.subList(3, told.size()));
    assertTrue(told.contains("numbers: 3 of 3 studies."), told::toString);
    assertEquals(0, folder.toFile().list().length);
  }

  @Test
  void whatIsNotUnderstoodIsTold() {
    String usage =
        "Give TABLE to make a table anew, or TABLE STUDIES SEED to print it from other studies; the"
            + " tables are small, broken.";
    assertRefused(usage);
    assertRefused(usage, "nothing");
    assertRefused(usage, "small", "3");
    assertRefused("STUDIES must be 2 or more, but is 1", "small", "1", "7");
    assertRefused("STUDIES must be a whole number, but is `x`", "small", "x", "7");
    assertRefused(
        "STUDIES must be a whole number, but is `9999999999`", "small", "9999999999", "7");
    assertRefused("SEED must be a whole number, but is `1.5`", "small", "3", "1.5");
  }

  /** A table that may take an hour is refused its place before, not after. */
  @Test
  void aPlaceThatIsNotThereIsRefusedBeforeAnyWork() {
    Published<?> elsewhere = new Published<>("long", "nowhere/a.csv", 9_999_999, 7, SMALL);
    Path file = folder.resolve("nowhere").resolve("a.csv");
    assertEquals(2, Proofs.run(List.of(elsewhere), folder, stream(out), stream(err), "long"));
    assertEquals(
        file + ": there is no such folder; run this in the project's own folder",
        text(err).strip());
  }

  private void assertRefused(String message, String... arguments) {
    err.reset();
    assertEquals(2, run(arguments));
    assertEquals(message, text(err).strip());
  }

  /** The committed tables have the columns that would be written now. */
  @Test
  void everyCommittedTableHasItsColumns() throws IOException {
    for (Published<?> table : Proofs.ALL) {
      assertEquals(
          table.proof().table().csv(List.of()).strip(),
          Files.readAllLines(Path.of("studies").resolve(table.file())).get(0),
          table.name());
    }
  }

  /** The README beside every table says how to make it. */
  @Test
  void thePagesNameEveryTable() throws IOException {
    List<String> named = new ArrayList<>();
    for (Published<?> table : Proofs.ALL) {
      Path page = Path.of("studies").resolve(table.file()).resolveSibling("README.md");
      Matcher command =
          Pattern.compile("(?m)^    mvn .*-Dproof='?([a-z0-9-]+)").matcher(Files.readString(page));
      while (command.find()) {
        named.add(command.group(1));
      }
    }
    assertEquals(
        Proofs.ALL.stream().map(Published::name).collect(Collectors.toCollection(TreeSet::new)),
        new TreeSet<>(named));
  }
}
