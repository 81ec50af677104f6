package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Unit;
import org.twinrig.intake.NearestName;
import org.twinrig.problem.Problem;

/**
 * Whether the check unit of study.yaml and the roles in the table of units agree.
 *
 * @param yaml the file that names it
 * @param rules what it names
 */
record CheckUnit(String yaml, String table, SessionRules rules) {

  /** The problem of a check unit that cannot be used. */
  Optional<Problem> missing(List<Unit> units) {
    List<String> names = units.stream().map(Unit::name).toList();
    return rules
        .checkUnit()
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

  /** Notes on roles that do something else than the lab may think. */
  List<Problem> notes(List<Unit> units) {
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      boolean named = rules.checkUnit().filter(unit.name()::equals).isPresent();
      if (unit.role() == Unit.Role.CHECK && !named) {
        notes.add(
            new Problem(
                Problem.Kind.NOTE,
                table,
                unit.line(),
                "unit `" + unit.name() + "` has the role `check` and takes no part in the transfer",
                "name it as `check_unit` in study.yaml, so that its drift is looked at"));
      } else if (named && unit.role() != Unit.Role.CHECK && rules.drift() == DriftMode.CORRECT) {
        notes.add(
            new Problem(
                Problem.Kind.NOTE,
                table,
                unit.line(),
                "the check unit `"
                    + unit.name()
                    + "` is used as another unit too, and sessions are corrected by it: its own seatings"
                    + " then scatter less than they did",
                "give it the role `check`, so that it does not make the seating scatter of its kind"
                    + " too small"));
      }
    }
    return notes;
  }
}
