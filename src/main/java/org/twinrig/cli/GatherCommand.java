package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.twinrig.intake.Gatherer;
import org.twinrig.intake.Gatherer.GatheredCapture;
import org.twinrig.intake.GrowingTable;
import org.twinrig.intake.LabTable;
import org.twinrig.intake.NamePattern;
import org.twinrig.internal.FirstFew;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig gather}: tables of units and captures from the names of files. */
@Command(
    name = "gather",
    description = {
      "Makes captures.csv and units.csv from the names of the files in a folder.",
      "A pattern says how names are read: text with named parts in braces, such as"
          + " {kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt. The parts are {unit},"
          + " {fixture}, {side} (L, R, M, left, right, mono), {seating} (a number from 1), {kind},"
          + " {session}, and {*} for anything; after a colon stand the texts a part may have. A part"
          + " never reaches over a slash.",
      "Rows that stand in a table already stay as they are; run it again when files arrive."
    })
final class GatherCommand extends TwinrigCommand {
  private static final int MOST_NAMED = 3;

  @Parameters(paramLabel = "FOLDER", description = "Where the captures are.")
  private Path folder;

  @Option(
      names = "--pattern",
      paramLabel = "PATTERN",
      required = true,
      description = "How their names are read.")
  private String pattern;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      required = true,
      description = "The table of captures; units.csv is made beside it.")
  private Path out;

  @Option(names = "--unit", description = "The unit of all files, if no name tells it.")
  private String unit;

  @Option(names = "--fixture", description = "The fixture of all files, if no name tells it.")
  private String fixture;

  @Option(names = "--side", description = "The side of all files, if no name tells it: L, R or M.")
  private String side;

  @Option(names = "--seating", description = "The seating of all files, if no name tells it.")
  private Integer seating;

  @Option(names = "--kind", description = "The kind of all units, if no name tells it.")
  private String kind;

  @Option(names = "--session", description = "The session of all files, if no name tells it.")
  private String session;

  @Option(names = "--dry-run", description = "Show what is understood and write nothing.")
  private boolean dryRun;

  @Option(names = "--force", description = "Add the new rows to tables that are there already.")
  private boolean force;

  @Override
  public Integer call() throws UnusableInput {
    Gatherer gatherer = gatherer();
    Path table = out.toAbsolutePath().normalize();
    Path place = table.resolveSibling("");
    if (!Files.isDirectory(place)) {
      throw unusable(out, "there is no such folder", "make it first");
    }
    refuseAmongResults(out);
    Path unitsTable = table.resolveSibling("units.csv");
    try {
      if (unitsTable.toString().equalsIgnoreCase(table.toString())
          || (Files.exists(unitsTable)
              && Files.exists(table)
              && Files.isSameFile(table, unitsTable))) {
        throw wrong(
            "--out is the table of captures, but "
                + out
                + " is the table of units, which is made beside it; name another, such as"
                + " captures.csv");
      }
      Findings<Gatherer.Found> found = gatherer.gather(place);
      GrowingTable captures = GrowingTable.open(table, LabTable.CAPTURES, "file");
      GrowingTable units = GrowingTable.open(unitsTable, LabTable.UNITS, "unit");
      return write(found, captures, units, place);
    } catch (IOException e) {
      throw cannot(out, "the tables could not be made", e);
    }
  }

  private int write(
      Findings<Gatherer.Found> found, GrowingTable captures, GrowingTable units, Path place)
      throws IOException {
    for (Problem problem : found.problems()) {
      err().println(problem.text());
    }
    List<Map<String, String>> newCaptures = new ArrayList<>();
    Map<String, Map<String, String>> newUnits = new LinkedHashMap<>();
    for (GatheredCapture c : found.value().captures()) {
      if (!captures.has(c.file())) {
        newCaptures.add(captureRow(c));
      }
      String name = c.text(NamePattern.Part.UNIT);
      if (!units.has(name)) {
        newUnits.put(name, Map.of("unit", name, "kind", c.text(NamePattern.Part.KIND)));
      }
    }
    gone(captures, place);
    otherKinds(found.value().captures(), units);
    if (dryRun) {
      table(found.value().captures(), captures);
    }
    out().println(summary(found, newCaptures.size(), newUnits.size()));
    if ((newCaptures.isEmpty() && newUnits.isEmpty()) || dryRun) {
      out().println("Nothing was written.");
      return found.value().captures().isEmpty() ? 1 : 0;
    }
    if ((captures.exists() || units.exists()) && !force) {
      err()
          .println(
              out
                  + ": a table is there already and nothing was written; give --force to add the new rows"
                  + " at its end and keep all that stands in it");
      return 1;
    }
    captures.add(newCaptures);
    units.add(List.copyOf(newUnits.values()));
    out().println("Captures: " + out);
    out().println("Units: " + out.resolveSibling("units.csv"));
    return 0;
  }

  private void gone(GrowingTable captures, Path place) {
    for (String file : captures.keys().stream().sorted().toList()) {
      if (!Files.exists(place.resolve(file))) {
        err()
            .println(
                Problem.note(out.toString(), 0, "names `" + file + "`, which is not there any more")
                    .text());
      }
    }
  }

  /** A unit's kind in the table is the lab's own word, and stays; the one gathered is not taken. */
  private void otherKinds(List<GatheredCapture> captures, GrowingTable units) {
    Map<String, Set<String>> unitsOf = new LinkedHashMap<>();
    for (GatheredCapture c : captures) {
      String unit = c.text(NamePattern.Part.UNIT);
      String gathered = c.text(NamePattern.Part.KIND);
      Optional<String> stands = units.cell(unit, "kind");
      if (stands.isPresent() && !stands.get().equals(gathered)) {
        unitsOf
            .computeIfAbsent(
                "as `" + stands.get() + "`, not `" + gathered + "`", k -> new LinkedHashSet<>())
            .add("`" + unit + "`");
      }
    }
    unitsOf.forEach(
        (kinds, names) ->
            err()
                .println(
                    Problem.note(
                            out.resolveSibling("units.csv").toString(),
                            0,
                            (names.size() == 1 ? "unit " : "units ")
                                + FirstFew.of(names, MOST_NAMED, n -> n + " more")
                                + (names.size() == 1 ? " stands here " : " stand here ")
                                + kinds
                                + (names.size() == 1 ? "; it stays so" : "; they stay so")
                                + ": change the table by hand if it is wrong")
                        .text()));
  }

  private void table(List<GatheredCapture> captures, GrowingTable table) {
    out().println(line("unit", "fixture", "side", "seating", "kind", "file"));
    for (GatheredCapture c : captures) {
      out()
          .println(
              line(
                      c.text(NamePattern.Part.UNIT),
                      c.text(NamePattern.Part.FIXTURE),
                      c.text(NamePattern.Part.SIDE),
                      c.text(NamePattern.Part.SEATING),
                      c.text(NamePattern.Part.KIND),
                      c.file())
                  + (table.has(c.file()) ? "  (known)" : ""));
    }
  }

  private static String line(Object... cells) {
    return String.format(Locale.ROOT, "%-20s %-12s %-5s %-8s %-18s %s", cells);
  }

  private static String summary(Findings<Gatherer.Found> found, int captures, int units) {
    return "Of "
        + Numbers.count(found.value().files(), "file", "files")
        + ", "
        + found.value().captures().size()
        + " are captures and "
        + (found.value().files() - found.value().captures().size())
        + " are refused; "
        + Numbers.count(captures, "capture", "captures")
        + " and "
        + Numbers.count(units, "unit", "units")
        + " are new.";
  }

  private static Map<String, String> captureRow(GatheredCapture c) {
    return Map.of(
        "unit", c.text(NamePattern.Part.UNIT),
        "fixture", c.text(NamePattern.Part.FIXTURE),
        "side", c.text(NamePattern.Part.SIDE),
        "seating", c.text(NamePattern.Part.SEATING),
        "file", c.file(),
        "session", c.text(NamePattern.Part.SESSION));
  }

  private Gatherer gatherer() throws UnusableInput {
    NamePattern names;
    try {
      names = NamePattern.of(pattern);
    } catch (IllegalArgumentException e) {
      throw wrong("--pattern: " + e.getMessage());
    }
    Map<NamePattern.Part, String> given = given();
    for (NamePattern.Part part : NamePattern.Part.values()) {
      boolean told = names.parts().contains(part);
      if (told && given.containsKey(part)) {
        throw wrong("--" + part.word() + " is given, but the pattern names it too");
      }
      if (!told && !given.containsKey(part) && part != NamePattern.Part.SESSION) {
        throw wrong(
            "the pattern does not name {" + part.word() + "}; add it or give --" + part.word());
      }
    }
    if (!Files.isDirectory(folder)) {
      boolean file = Files.exists(folder);
      throw unusable(
          folder,
          file ? "this is a file" : "there is no such folder",
          "name the folder in which the captures lie");
    }
    return new Gatherer(folder.toAbsolutePath().normalize(), folder.toString(), names, given);
  }

  private Map<NamePattern.Part, String> given() {
    Map<NamePattern.Part, String> given = new EnumMap<>(NamePattern.Part.class);
    if (side != null && !List.of("L", "R", "M").contains(side)) {
      throw wrong("--side must be L, R or M, but is " + side);
    }
    if (seating != null && (seating < 1 || seating > 9999)) {
      throw wrong("--seating must be 1 to 9999, but is " + seating);
    }
    put(given, NamePattern.Part.UNIT, unit);
    put(given, NamePattern.Part.FIXTURE, fixture);
    put(given, NamePattern.Part.SIDE, side);
    put(given, NamePattern.Part.SEATING, seating == null ? null : seating.toString());
    put(given, NamePattern.Part.KIND, kind);
    put(given, NamePattern.Part.SESSION, session);
    return given;
  }

  private static void put(Map<NamePattern.Part, String> given, NamePattern.Part part, String text) {
    if (text != null) {
      given.put(part, text);
    }
  }
}
