package org.twinrig.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.intake.HeaderWords.Role;

/**
 * Which line names the columns: the nearest above the numbers that parts into as many fields and
 * has a word for a frequency, level or phase. A line of units below it is joined to it.
 *
 * @param line the line, or 0 when no line names the columns
 * @param names one title per column; empty when no line names the columns
 */
record Titles(int line, List<String> names) {
  private static final Titles NONE = new Titles(0, List.of());

  static Titles above(Lines lines, Sample sample) {
    for (int line = sample.first() - 1; line >= 1; line--) {
      List<String> names = named(lines.text(line), sample);
      if (!names.isEmpty()) {
        return allUnits(names) && line > 1
            ? joined(named(lines.text(line - 1), sample), names, line)
            : new Titles(line, names);
      }
    }
    return NONE;
  }

  /** Whether the titles say which column is the frequency and which the level. */
  boolean nameBoth() {
    List<Role> roles = names.stream().map(n -> HeaderWords.of(n).role()).toList();
    return roles.contains(Role.FREQUENCY) && roles.contains(Role.LEVEL);
  }

  private static boolean allUnits(List<String> names) {
    return names.stream().allMatch(n -> n.isBlank() || HeaderWords.of(n).isUnit());
  }

  private static Titles joined(List<String> upper, List<String> units, int unitLine) {
    if (upper.isEmpty()) {
      return new Titles(unitLine, units);
    }
    int width = Math.max(upper.size(), units.size());
    return new Titles(
        unitLine - 1,
        IntStream.range(0, width)
            .mapToObj(c -> (at(upper, c) + " " + at(units, c)).strip())
            .toList());
  }

  private static String at(List<String> names, int index) {
    return index < names.size() ? names.get(index) : "";
  }

  /** The titles in a line, or none: the header may be cut differently from the numbers. */
  private static List<String> named(String line, Sample sample) {
    String text = withoutCommentMark(line);
    List<Separator> ways = new ArrayList<>(List.of(sample.separator()));
    ways.addAll(List.of(Separator.values()));
    for (Separator way : ways) {
      List<String> names = way == Separator.SPACES ? words(text, sample) : cut(text, way);
      if (fit(names, sample)) {
        return names;
      }
    }
    return List.of();
  }

  private static List<String> cut(String text, Separator separator) {
    Fields fields = Fields.of(text, separator);
    return fields.all().subList(0, fields.filled());
  }

  /** Words, each with the bracket that follows it; joined by meaning when there are too many. */
  private static List<String> words(String text, Sample sample) {
    List<String> words = new ArrayList<>();
    boolean open = false;
    for (String word : cut(text, Separator.SPACES)) {
      boolean bracket = word.startsWith("(") || word.startsWith("[");
      if (!words.isEmpty() && (open || bracket)) {
        words.set(words.size() - 1, words.get(words.size() - 1) + " " + word);
      } else {
        words.add(word);
      }
      open = (open || word.contains("(") || word.contains("[")) && !word.matches(".*[)\\]],?");
    }
    // A sentence has words that are no titles, and its order says nothing about the columns.
    boolean titlesOnly = words.stream().noneMatch(w -> HeaderWords.of(w).role() == Role.UNKNOWN);
    return words.size() > sample.width() && titlesOnly ? joinedByMeaning(words) : words;
  }

  private static List<String> joinedByMeaning(List<String> words) {
    List<String> names = new ArrayList<>();
    Role last = Role.UNKNOWN;
    for (String word : words) {
      Role role = HeaderWords.of(word).role();
      if (!names.isEmpty() && role == last) {
        names.set(names.size() - 1, names.get(names.size() - 1) + " " + word);
      } else {
        names.add(word);
        last = role;
      }
    }
    return names;
  }

  private static boolean fit(List<String> names, Sample sample) {
    return names.size() >= Math.min(sample.filled(), sample.width())
        && names.size() <= sample.width()
        && names.size() >= 2
        && names.stream().map(n -> HeaderWords.of(n).role()).anyMatch(Titles::isTelling);
  }

  private static boolean isTelling(Role role) {
    return role != Role.OTHER && role != Role.UNKNOWN;
  }

  private static String withoutCommentMark(String line) {
    int at = 0;
    while (at < line.length() && " \u00A0#*;/%!".indexOf(line.charAt(at)) >= 0) {
      at++;
    }
    return line.substring(at);
  }
}
