package org.twinrig.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.intake.NearestName;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;

/** The sound rows of the table of units, and what the lab should know of them. */
record UnitsTable(String source, List<Unit> units) {

  /** A check unit whose role is not written enters no fit: it is there to show drift. */
  static Findings<List<Unit>> read(LabTable table, Optional<String> checkUnit) {
    Map<String, Integer> lines = new HashMap<>();
    return table.read(row -> unit(row, checkUnit, lines));
  }

  private static Optional<Unit> unit(
      LabRow row, Optional<String> checkUnit, Map<String, Integer> lines) {
    String name = row.text("unit");
    String kind = row.text("kind");
    String unsaid = checkUnit.filter(name::equals).isPresent() ? "check" : "fit";
    String role = row.word("role", List.of("fit", "holdout", "check"), unsaid);
    String state = row.word("state", Unit.STATES, Unit.STATES.get(0));
    OptionalDouble impedanceOhm = row.decimalIfAny("impedance_ohm", 0.1, 100_000);
    String confirmed = row.confirmed();
    row.reason("exclude", "leaves the unit out; empty the cell to keep it");
    Integer earlier = lines.putIfAbsent(name, row.line());
    if (earlier != null && row.has("unit")) {
      row.refuse(
          "unit `" + name + "` stands in line " + earlier + " already",
          "keep one row for each unit, or give the other specimen its own name");
    }
    if (state.equals(Unit.ADAPTIVE)) {
      row.note(
          "unit `"
              + name
              + "` adapts to what it is worn on and so corrects for the fixture: what it shows is"
              + " analysed as a kind apart, `"
              + Unit.kindInState(kind, state)
              + "`, and no graph of it can be re-expressed");
    }
    return row.ifSound(
        () ->
            new Unit(
                name,
                Unit.kindInState(kind, state),
                Unit.Role.valueOf(role.toUpperCase(Locale.ROOT)),
                row.cell("pads"),
                impedanceOhm,
                row.cell("note"),
                confirmed,
                row.line()));
  }

  /** The problem of a check unit of study.yaml that cannot be used. */
  Optional<Problem> missing(String yaml, Optional<String> checkUnit) {
    List<String> names = units.stream().map(Unit::name).toList();
    return checkUnit
        .filter(unit -> !names.contains(unit))
        .map(
            unit ->
                Problem.fatal(
                    yaml,
                    0,
                    "`check_unit` is `" + unit + "`, which has no sound row in the table of units",
                    NearestName.among(unit, names)
                        .map(near -> "did you mean `" + near + "`?")
                        .orElse("add it there, or correct the name")));
  }

  /** On roles that do something else than the lab may think. */
  List<Problem> onRoles(Settings settings) {
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      boolean named = settings.checkUnit().filter(unit.name()::equals).isPresent();
      boolean check = unit.role() == Unit.Role.CHECK;
      String what = "";
      String remedy = "";
      if (check && !named) {
        what = "unit `%s` has the role `check` and takes no part in the transfer";
        remedy = "name it as `check_unit` in study.yaml, so that its drift is looked at";
      } else if (named && !check && settings.drift() == DriftMode.CORRECT) {
        what =
            "the check unit `%s` is used as another unit too, and sessions are corrected by it: its"
                + " own seatings then scatter less than they did";
        remedy =
            "give it the role `check`, so that it does not make the seating scatter of its kind too"
                + " small";
      }
      if (!what.isEmpty()) {
        String text = String.format(what, unit.name());
        notes.add(new Problem(Problem.Kind.NOTE, source, unit.line(), text, remedy));
      }
    }
    return notes;
  }

  /** On units that take no part in the study, or not with the same sides. */
  List<Problem> onParticipation(List<String> fixtures, List<CaptureEntry> captures) {
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      List<CaptureEntry> own =
          captures.stream().filter(entry -> entry.unit().equals(unit.name())).toList();
      participation(fixtures, own)
          .map(text -> "unit `" + unit.name() + "` " + text)
          .ifPresent(text -> notes.add(Problem.note(source, unit.line(), text)));
    }
    return notes;
  }

  private static Optional<String> participation(List<String> fixtures, List<CaptureEntry> own) {
    if (own.isEmpty()) {
      return Optional.of("has no usable capture and takes no part");
    }
    if (own.stream().allMatch(CaptureEntry::excludedByLab)) {
      return Optional.of("has all its captures excluded and takes no part");
    }
    List<Set<Side>> sides = new ArrayList<>();
    for (String fixture : fixtures) {
      List<CaptureEntry> there = own.stream().filter(e -> e.fixture().equals(fixture)).toList();
      if (there.isEmpty()) {
        return Optional.of("has no usable capture on `" + fixture + "` and takes no part");
      }
      sides.add(
          there.stream()
              .filter(entry -> !entry.excludedByLab())
              .map(CaptureEntry::side)
              .collect(Collectors.toCollection(TreeSet::new)));
      if (sides.get(sides.size() - 1).isEmpty()) {
        return Optional.of("has all its captures on `" + fixture + "` excluded and takes no part");
      }
    }
    return sides.get(0).equals(sides.get(1))
        ? Optional.empty()
        : Optional.of(
            "was captured on "
                + on(sides.get(0), fixtures.get(0))
                + " and "
                + on(sides.get(1), fixtures.get(1))
                + ": its averages are over different sides");
  }

  private static String on(Set<Side> sides, String fixture) {
    String which = sides.stream().map(Side::name).collect(Collectors.joining("+"));
    return "side " + which + " of `" + fixture + "`";
  }

  /** On ranges of resonances for kinds that the study does not have. */
  List<Problem> onSearch(String yaml, Settings settings) {
    List<String> kinds = units.stream().map(Unit::kind).distinct().sorted().toList();
    return settings.get(Setting.RESONANCE_SEARCH_HZ).keySet().stream()
        .filter(name -> !Setting.RESONANCE_SEARCH_HZ.standard().containsKey(name))
        .filter(name -> kinds.stream().noneMatch(kind -> Settings.fits(name, kind)))
        .sorted()
        .map(
            name ->
                new Problem(
                    Problem.Kind.NOTE,
                    yaml,
                    0,
                    "`resonance_search_hz` names `"
                        + name
                        + "`, which is part of the name of no kind here, and is not used",
                    NearestName.question(name, kinds)
                        + "the kinds of the study are "
                        + kinds.stream().map(k -> "`" + k + "`").collect(Collectors.joining(", "))))
        .toList();
  }

  /** On the sensitivity that the drive of a session would give, were the impedance known. */
  Optional<Problem> onImpedance(List<Session> sessions) {
    long without = units.stream().filter(u -> u.impedanceOhm().isEmpty()).count();
    return without == 0 || sessions.stream().allMatch(s -> s.setup().driveV().isEmpty())
        ? Optional.empty()
        : Optional.of(
            new Problem(
                Problem.Kind.NOTE,
                source,
                0,
                "sensitivity at 1 mW is not known for "
                    + Numbers.count(without, "unit, because its", "units, because their")
                    + " `impedance_ohm` is empty",
                "add it, or leave it so: at 1 V sensitivity is known from `drive_v` of the"
                    + " sessions"));
  }

  /** On kinds that look like one and are counted as two. */
  List<Problem> onKinds() {
    Set<String> kinds = new HashSet<>();
    Map<String, Unit> firstOfLook = new HashMap<>();
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      Unit alike = firstOfLook.putIfAbsent(NearestName.bare(unit.kind()), unit);
      if (kinds.add(unit.kind()) && alike != null) {
        String what =
            String.format(
                "kind `%s` differs from `%s` in line %s only by case, spaces or hyphens; they are"
                    + " analysed as two kinds",
                unit.kind(), alike.kind(), alike.line());
        notes.add(Problem.note(source, unit.line(), what));
      }
    }
    return notes;
  }
}
