package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.intake.HeaderWords.Role;
import org.twinrig.intake.Sample.DecimalMark;
import org.twinrig.problem.UnusableInput;

/**
 * How the lines of a file are to be read, as found on its sample: what parts the fields, which
 * decimal mark they have, which column is the frequency and which the level.
 *
 * <p>Titles decide on the columns; without them the first two columns of numbers are frequency and
 * level, and a third is the phase, which is not used. Of two columns that may be the level neither
 * is chosen. Columns count from 1.
 */
final class TextFormat {
  final Sample sample;
  final Titles titles;
  final DecimalMark mark;
  final int frequency;
  final int level;
  private final Optional<Integer> phase;

  /** Whether the frequency's title says kHz; hertz when it says nothing. */
  final boolean inKhz;

  /** How frequencies are written, to be read in Hz. */
  final NumberText frequencies;

  /** How levels are written. */
  final NumberText levels;

  private final Remarks remarks;

  TextFormat(Lines lines, Remarks remarks) throws UnusableInput {
    this.remarks = remarks;
    sample = Sample.of(lines, remarks);
    titles = Titles.above(lines, sample);
    if (sample.separator() == Separator.COMMA && !titles.nameBoth()) {
      sample.checkCommas(remarks);
    }
    if (sample.numeric().size() < 2) {
      throw remarks.refuse(
          sample.first(),
          "the numbers do not stand in columns: " + lines.excerpt(sample.first()),
          "each line needs a frequency in Hz and a level in dB");
    }
    mark = sample.decimalMark(remarks);
    if (titles.line() == 0) {
      frequency = sample.numeric().get(0);
      level = sample.numeric().get(1);
      phase = sample.numeric().stream().skip(2).findFirst();
      phase.ifPresent(
          c ->
              remarks.note(
                  0,
                  "column " + c + " has no title; it was taken as the phase, which is not used"));
    } else {
      frequency = titledFrequency();
      level = titledLevel();
      phase = with(Role.PHASE).stream().findFirst();
    }
    noteUnused();
    inKhz = meaning(frequency).saysKhz();
    if (inKhz) {
      remarks.note(titles.line(), "the frequencies are in kHz and were converted to Hz");
    }
    frequencies = new NumberText(mark.mark, inKhz ? 3 : 0);
    levels = new NumberText(mark.mark, 0);
  }

  String frequencyUnit() {
    return inKhz ? "kHz" : "Hz";
  }

  /** The columns in a sentence. */
  String told() {
    return "Columns are parted by %s, with %s: %s is the frequency in %s, %s the level in dB%s"
        .formatted(
            sample.separator().words,
            mark.words,
            named(frequency),
            frequencyUnit(),
            named(level),
            phase.map(c -> ", " + named(c) + " the phase.").orElse("."));
  }

  /** What a column's title means. */
  HeaderWords meaning(int column) {
    return HeaderWords.of(title(column));
  }

  /** A column inside a message: its number, and its title when it has one. */
  private String named(int column) {
    return "column " + number(column);
  }

  private int titledFrequency() throws UnusableInput {
    List<Integer> titled = with(Role.FREQUENCY);
    if (titled.size() == 1) {
      return titled.get(0);
    }
    if (titled.size() > 1) {
      throw refuseSeveral(
          titled, "frequency", "put one curve in a file, with one frequency column");
    }
    int first = sample.numeric().get(0);
    if (meaning(first).role() != Role.UNKNOWN) {
      throw remarks.refuse(
          titles.line(),
          "no column's title says frequency",
          "title the column, for example Frequency (Hz)");
    }
    remarks.note(titles.line(), named(first) + " was taken as the frequency");
    return first;
  }

  private int titledLevel() throws UnusableInput {
    List<Integer> titled = with(Role.LEVEL);
    List<Integer> inDb = titled.stream().filter(c -> meaning(c).saysDb()).toList();
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

  private void noteUnused() {
    List<Integer> unused = new ArrayList<>(sample.occupied());
    unused.removeAll(List.of(frequency, level, phase.orElse(level)));
    if (!unused.isEmpty()) {
      boolean one = unused.size() == 1;
      remarks.note(
          titles.line(),
          (one ? "column " : "columns ")
              + unused.stream().map(this::number).collect(Collectors.joining(", "))
              + (one ? " was" : " were")
              + " not used");
    }
  }

  private List<Integer> with(Role role) {
    return sample.numeric().stream().filter(c -> meaning(c).role() == role).toList();
  }

  private String title(int column) {
    return column <= titles.names().size() ? titles.names().get(column - 1) : "";
  }

  private String number(int column) {
    return title(column).isBlank() ? "" + column : column + " " + Remarks.excerpt(title(column));
  }
}
