package org.twinrig.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.NearestName;

/**
 * What rows of other tables may refer to by name: what one of them is called, the file that lists
 * them, those that can be used, and the names of all, also of those whose row was refused.
 */
record Roster<T>(String noun, String source, Map<String, T> sound, Set<String> listed) {

  static <T> Roster<T> of(
      String noun, String source, List<T> sound, Function<T, String> name, List<String> listed) {
    Map<String, T> byName = new LinkedHashMap<>();
    sound.forEach(each -> byName.put(name.apply(each), each));
    return new Roster<>(noun, source, byName, Set.copyOf(listed));
  }

  /** The one a cell names; the row is refused when the cell is filled in and there is none. */
  Optional<T> find(LabRow row, String column) {
    String name = row.cell(column);
    Optional<T> found = Optional.ofNullable(sound.get(name));
    if (found.isPresent() || !row.has(column)) {
      return found;
    }
    if (listed.contains(name)) {
      row.refuse(noun + " `" + name + "` was left out of " + source, "mend its row there first");
    } else {
      String guess =
          NearestName.among(name, sound.keySet())
              .filter(near -> !withoutDigits(near).equals(withoutDigits(name)))
              .map(near -> "did you mean `" + near + "`?")
              .orElse("add it there, or correct the name");
      row.refuse("there is no " + noun + " `" + name + "` in " + source, guess);
    }
    return found;
  }

  /** Of names that are numbered, another number is no better guess than a missing row. */
  private static String withoutDigits(String name) {
    return name.replaceAll("[0-9]", "");
  }
}
