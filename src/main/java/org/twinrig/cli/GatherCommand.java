package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.intake.Gatherer;
import org.twinrig.intake.Gatherer.GatheredCapture;
import org.twinrig.intake.GrowingTable;
import org.twinrig.intake.LabTable;
import org.twinrig.intake.NamePattern;
import org.twinrig.intake.NamePattern.Part;
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
      refuse(
          unitsTable.toString().equalsIgnoreCase(table.toString())
              || (Files.exists(unitsTable)
                  && Files.exists(table)
                  && Files.isSameFile(table, unitsTable)),
          "--out is the table of captures, but %s is the table of units, which is made beside it; name another, such as captures.csv"
              .formatted(out));
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
    found.problems().forEach(p -> err().println(p.text()));
    List<Map<String, String>> newCaptures = new ArrayList<>();
    Map<String, Map<String, String>> newUnits = new LinkedHashMap<>();
    for (GatheredCapture c : found.value().captures()) {
      Map<String, String> cells = new HashMap<>(Map.of("file", c.file()));
      c.parts().forEach((part, text) -> cells.put(part.word(), text));
      if (!captures.has(c.file())) {
        newCaptures.add(cells);
      }
      if (!units.has(c.text(Part.UNIT))) {
        newUnits.put(c.text(Part.UNIT), cells);
      }
    }
    gone(captures, place);
    otherKinds(found.value().captures(), units);
    if (dryRun) {
      table(found.value().captures(), captures);
    }
    out().println(summary(found.value(), newCaptures.size(), newUnits.size()));
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
    captures.keys().stream()
        .sorted()
        .filter(file -> !Files.exists(place.resolve(file)))
        .forEach(file -> note(out, "names `" + file + "`, which is not there any more"));
  }

  private void note(Path table, String what) {
    err().println(Problem.note(table.toString(), 0, what).text());
  }

  /** A unit's kind in the table is the lab's own word, and stays; the one gathered is not taken. */
  private void otherKinds(List<GatheredCapture> captures, GrowingTable units) {
    Map<String, Set<String>> unitsOf = new LinkedHashMap<>();
    for (GatheredCapture c : captures) {
      String unit = c.text(Part.UNIT);
      String gathered = c.text(Part.KIND);
      units
          .cell(unit, "kind")
          .filter(stands -> !stands.equals(gathered))
          .map(stands -> "as `%s`, not `%s`".formatted(stands, gathered))
          .ifPresent(
              kinds ->
                  unitsOf.computeIfAbsent(kinds, k -> new LinkedHashSet<>()).add("`" + unit + "`"));
    }
    unitsOf.forEach(
        (kinds, names) ->
            note(
                out.resolveSibling("units.csv"),
                (names.size() == 1
                        ? "unit %s stands here %s; it stays so: %s"
                        : "units %s stand here %s; they stay so: %s")
                    .formatted(
                        FirstFew.of(names, MOST_NAMED, n -> n + " more"),
                        kinds,
                        "change the table by hand if it is wrong")));
  }

  private void table(List<GatheredCapture> captures, GrowingTable table) {
    String row = "%-20s %-12s %-5s %-8s %-18s %s";
    out().println(row.formatted("unit", "fixture", "side", "seating", "kind", "file"));
    for (GatheredCapture c : captures) {
      List<String> cells =
          Stream.of(Part.UNIT, Part.FIXTURE, Part.SIDE, Part.SEATING, Part.KIND)
              .map(c::text)
              .collect(Collectors.toCollection(ArrayList::new));
      cells.add(c.file() + (table.has(c.file()) ? "  (known)" : ""));
      out().println(row.formatted(cells.toArray()));
    }
  }

  private static String summary(Gatherer.Found found, int captures, int units) {
    return "Of %s, %s are captures and %s are refused; %s and %s are new."
        .formatted(
            Numbers.count(found.files(), "file", "files"),
            found.captures().size(),
            found.files() - found.captures().size(),
            Numbers.count(captures, "capture", "captures"),
            Numbers.count(units, "unit", "units"));
  }

  private Gatherer gatherer() throws UnusableInput {
    NamePattern names;
    try {
      names = NamePattern.of(pattern);
    } catch (IllegalArgumentException e) {
      throw wrong("--pattern: " + e.getMessage());
    }
    Map<Part, String> given = given();
    for (Part part : Part.values()) {
      String option = "--" + part.word();
      boolean told = names.parts().contains(part);
      refuse(told && given.containsKey(part), option + " is given, but the pattern names it too");
      refuse(
          !told && !given.containsKey(part) && part != Part.SESSION,
          "the pattern does not name {" + part.word() + "}; add it or give " + option);
    }
    if (!Files.isDirectory(folder)) {
      throw unusable(
          folder,
          Files.exists(folder) ? "this is a file" : "there is no such folder",
          "name the folder in which the captures lie");
    }
    return new Gatherer(folder.toAbsolutePath().normalize(), folder.toString(), names, given);
  }

  private Map<Part, String> given() {
    refuse(
        side != null && !List.of("L", "R", "M").contains(side),
        "--side must be L, R or M, but is " + side);
    refuse(
        seating != null && (seating < 1 || seating > 9999),
        "--seating must be 1 to 9999, but is " + seating);
    Map<Part, String> given = new EnumMap<>(Part.class);
    given.put(Part.UNIT, unit);
    given.put(Part.FIXTURE, fixture);
    given.put(Part.SIDE, side);
    given.put(Part.SEATING, seating == null ? null : seating.toString());
    given.put(Part.KIND, kind);
    given.put(Part.SESSION, session);
    given.values().removeIf(Objects::isNull);
    return given;
  }
}
