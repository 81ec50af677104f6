package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * Spreadsheets made with XlsxWriter 3.0.2 (Debian python3-xlsxwriter), which is no relative of the
 * reader: formulas with their values, days and times shown in two ways, numbers shown with a unit.
 */
class WorkbookTest {
  private static final Path SHEETS = Path.of("src", "test", "resources", "intake", "sheets");

  private static final LabTable.Columns SESSIONS =
      new LabTable.Columns(
          "sessions",
          List.of("session", "date", "fixture", "calibrator_nominal_db", "calibrator_read_db"),
          List.of());

  private static LabTable read(String file, LabTable.Columns columns) throws UnusableInput {
    return LabTable.of(SHEETS.resolve(file), file, columns);
  }

  /** The sheet of the table's name, in any case; comments and empty rows do not count. */
  @Test
  void theSheetNamedAfterTheTableIsRead() throws UnusableInput {
    LabTable units = read("lab.xlsx", LabTable.UNITS);
    List<Integer> lines = new ArrayList<>();
    units.read(
        row -> {
          lines.add(row.line());
          return Optional.empty();
        });
    assertEquals(List.of(2, 3, 6), lines);
    assertEquals(List.of("Alder 1", "Rowan 5", "Elm 7"), units.cells("unit"));
    assertEquals(List.of("32", "300.5", "32"), units.cells("impedance_ohm"));
    assertEquals(List.of("Prüfling", "", ""), units.cells("note"));
  }

  @Test
  void daysAreDaysAndNumbersAreWhole() throws UnusableInput {
    LabTable sessions = read("lab.xlsx", SESSIONS);
    assertEquals(List.of("2026-03-02", "2026-03-02T14:30"), sessions.cells("date"));
    assertEquals(List.of("94", "94"), sessions.cells("calibrator_nominal_db"));
    assertEquals(List.of("93.96", "93.9"), sessions.cells("calibrator_read_db"));
  }

  @Test
  void problemsNameFileSheetRowAndColumn() throws UnusableInput {
    List<String> told =
        read("lab.xlsx", LabTable.UNITS)
            .read(row -> Optional.of(row.count("impedance_ohm", 1, 1000)))
            .problems()
            .stream()
            .map(Problem::text)
            .toList();
    assertEquals(
        List.of(
            "lab.xlsx, sheet `Units`:3: `impedance_ohm` is `300.5`; write a whole number from 1 to"
                + " 1000"),
        told);
  }

  @Test
  void anErrorInACellIsNamed() {
    assertEquals(
        "broken.xlsx, sheet `units`:2: cell A2 holds the error #DIV/0!; mend its formula",
        assertThrows(UnusableInput.class, () -> read("broken.xlsx", LabTable.UNITS)).getMessage());
  }

  /** Without a sheet of the name the first one is taken, and judged like any table. */
  @Test
  void anotherSheetIsNoTable() {
    assertEquals(
        "lab.xlsx, sheet `notes`:1: unknown column `nothing here`; known columns here: graph",
        assertThrows(
                UnusableInput.class,
                () ->
                    read(
                        "lab.xlsx", new LabTable.Columns("catalogue", List.of("graph"), List.of())))
            .getMessage()
            .lines()
            .findFirst()
            .orElseThrow());
  }
}
