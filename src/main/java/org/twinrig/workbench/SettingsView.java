package org.twinrig.workbench;

import java.util.List;

/**
 * What the study is told.
 *
 * @param frame around it
 * @param problems why the last entry was not taken; empty otherwise
 * @param fields one per value
 * @param zones what the lab declared, with empty rows to add
 * @param fixtures names of the two
 */
public record SettingsView(
    Frame frame,
    List<String> problems,
    List<Field> fields,
    List<ZoneRow> zones,
    List<String> fixtures) {

  public SettingsView {
    problems = List.copyOf(problems);
    fields = List.copyOf(fields);
    zones = List.copyOf(zones);
    fixtures = List.copyOf(fixtures);
  }

  /**
   * A value to be set.
   *
   * @param name of the key
   * @param label in words
   * @param value as it stands
   * @param hint what may be written, or what the choices mean
   * @param choices the only values there are; empty when it is written freely
   */
  public record Field(String name, String label, String value, String hint, List<String> choices) {
    public Field {
      choices = List.copyOf(choices);
    }
  }

  /**
   * A declared zone.
   *
   * @param name what the lab calls it
   * @param fixture it belongs to
   * @param fromHz lower end as written
   * @param toHz upper end as written
   */
  public record ZoneRow(int number, String name, String fixture, String fromHz, String toHz) {}
}
