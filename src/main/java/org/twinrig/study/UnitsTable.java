package org.twinrig.study;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.twinrig.capture.Unit;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.problem.Findings;

/** The table of units. */
final class UnitsTable {
  private final Map<String, Integer> lines = new HashMap<>();

  private final Optional<String> checkUnit;

  private UnitsTable(Optional<String> checkUnit) {
    this.checkUnit = checkUnit;
  }

  /** A check unit whose role is not written enters no fit: it is there to show drift. */
  static Findings<List<Unit>> read(LabTable table, Optional<String> checkUnit) {
    return table.read(new UnitsTable(checkUnit)::unit);
  }

  private Optional<Unit> unit(LabRow row) {
    String name = row.text("unit");
    String kind = row.text("kind");
    String role =
        row.word(
            "role",
            List.of("fit", "holdout", "check"),
            checkUnit.filter(name::equals).isPresent() ? "check" : "fit");
    Integer earlier = lines.putIfAbsent(name, row.line());
    if (earlier != null && row.has("unit")) {
      row.refuse(
          "unit `" + name + "` stands in line " + earlier + " already",
          "keep one row for each unit, or give the other specimen its own name");
    }
    return row.ifSound(
        () ->
            new Unit(
                name,
                kind,
                Unit.Role.valueOf(role.toUpperCase(Locale.ROOT)),
                row.cell("pads"),
                row.cell("note"),
                row.line()));
  }
}
