package org.twinrig.intake;

import java.util.List;

/** The columns of the tables that a lab writes and that are gathered from file names. */
public final class LabTables {
  /** Columns of captures.csv. */
  public static final LabTable.Columns CAPTURES =
      new LabTable.Columns(
          List.of("unit", "fixture", "side", "seating", "file"),
          List.of("session", "exclude", "note"));

  /** Columns of units.csv. */
  public static final LabTable.Columns UNITS =
      new LabTable.Columns(List.of("unit", "kind"), List.of("role", "pads", "note"));

  private LabTables() {}
}
