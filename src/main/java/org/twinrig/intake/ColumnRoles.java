package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.twinrig.intake.HeaderWords.Role;
import org.twinrig.intake.Layout.FrequencyUnit;
import org.twinrig.problem.UnusableInput;

/**
 * Which column is the frequency and which the level. Titles decide; without them the first two
 * columns of numbers are frequency and level, and a third is the phase. Of two columns that may be
 * the level neither is chosen.
 */
final class ColumnRoles {
  private final SampleTable table;
  private final Titles titles;
  private final Remarks remarks;

  ColumnRoles(SampleTable table, Titles titles, Remarks remarks) {
    this.table = table;
    this.titles = titles;
    this.remarks = remarks;
  }

  Columns columns() throws UnusableInput {
    int frequency;
    int level;
    OptionalInt phase;
    if (titles.line() == 0) {
      frequency = table.numeric().get(0);
      level = table.numeric().get(1);
      phase = table.numeric().stream().skip(2).mapToInt(c -> c).findFirst();
      phase.ifPresent(this::noteUntitledPhase);
    } else {
      frequency = frequency();
      level = level(frequency);
      phase = with(Role.PHASE).stream().mapToInt(c -> c).findFirst();
    }
    List<Integer> unused = new ArrayList<>(table.occupied());
    unused.removeAll(List.of(frequency, level, phase.orElse(level)));
    Columns columns = new Columns(frequency, level, phase, unused, titles.names());
    noteUnused(columns);
    return columns;
  }

  /** The unit the frequency's title says; hertz when it says nothing. */
  FrequencyUnit unit(Columns columns) {
    boolean khz = HeaderWords.of(columns.title(columns.frequency()).orElse("")).saysKhz();
    if (khz) {
      remarks.note(titles.line(), "the frequencies are in kHz and were converted to Hz");
    }
    return khz ? FrequencyUnit.KHZ : FrequencyUnit.HZ;
  }

  private int frequency() throws UnusableInput {
    List<Integer> titled = with(Role.FREQUENCY);
    if (titled.size() == 1) {
      return titled.get(0);
    }
    if (titled.size() > 1) {
      throw refuseSeveral(
          titled, "frequency", "put one curve in a file, with one frequency column");
    }
    int first = table.numeric().get(0);
    if (role(first) != Role.UNKNOWN) {
      throw remarks.refuse(
          titles.line(),
          "no column's title says frequency",
          "title the column, for example Frequency (Hz)");
    }
    remarks.note(titles.line(), named(first) + " was taken as the frequency");
    return first;
  }

  private int level(int frequency) throws UnusableInput {
    List<Integer> titled = with(Role.LEVEL);
    List<Integer> inDb = titled.stream().filter(c -> HeaderWords.of(title(c)).saysDb()).toList();
    List<Integer> candidates = inDb.size() == 1 ? inDb : titled;
    if (candidates.isEmpty()) {
      candidates = with(Role.UNKNOWN).stream().filter(c -> c != frequency).toList();
      if (candidates.size() == 1) {
        remarks.note(titles.line(), named(candidates.get(0)) + " was taken as the level");
      }
    }
    if (candidates.isEmpty()) {
      throw refuseNoLevel();
    }
    if (candidates.size() > 1) {
      throw refuseSeveral(
          candidates,
          "level",
          "write each curve, and each side, to a file of its own, or title only one column as a level"
              + " in dB");
    }
    return candidates.get(0);
  }

  private UnusableInput refuseNoLevel() {
    List<Integer> linear = with(Role.LINEAR);
    if (!linear.isEmpty()) {
      return remarks.refuse(
          titles.line(), named(linear.get(0)) + " is no level in dB", "export the level in dB");
    }
    boolean phaseOnly = !with(Role.PHASE).isEmpty();
    return remarks.refuse(
        titles.line(),
        phaseOnly ? "there is a phase but no level" : "no column's title says level",
        phaseOnly ? "export the level in dB as well" : "title the column, for example Level (dB)");
  }

  private UnusableInput refuseSeveral(List<Integer> columns, String what, String remedy) {
    String named = columns.stream().map(this::number).collect(Collectors.joining(" and "));
    return remarks.refuse(titles.line(), "columns " + named + " may each be the " + what, remedy);
  }

  private void noteUntitledPhase(int column) {
    remarks.note(
        0, "column " + column + " has no title; it was taken as the phase, which is not used");
  }

  private void noteUnused(Columns columns) {
    if (!columns.unused().isEmpty()) {
      boolean one = columns.unused().size() == 1;
      remarks.note(
          titles.line(),
          (one ? "column " : "columns ")
              + columns.unused().stream().map(columns::named).collect(Collectors.joining(", "))
              + (one ? " was" : " were")
              + " not used");
    }
  }

  private List<Integer> with(Role role) {
    return table.numeric().stream().filter(c -> role(c) == role).toList();
  }

  private Role role(int column) {
    return HeaderWords.of(title(column)).role();
  }

  private String title(int column) {
    return column <= titles.names().size() ? titles.names().get(column - 1) : "";
  }

  private String number(int column) {
    return title(column).isBlank() ? "" + column : column + " " + Remarks.excerpt(title(column));
  }

  private String named(int column) {
    return "column " + number(column);
  }
}
