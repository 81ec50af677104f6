package org.twinrig.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.twinrig.capture.Unit;
import org.twinrig.problem.Problem;

/** Notes on kinds that look like one and are counted as two. */
final class KindNames {
  private KindNames() {}

  static List<Problem> notes(String source, List<Unit> units) {
    Map<String, Unit> firstOfKind = new LinkedHashMap<>();
    Map<String, Unit> firstOfLook = new LinkedHashMap<>();
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      String look = unit.kind().toLowerCase(Locale.ROOT).replaceAll("\\s+", "");
      Unit alike = firstOfLook.putIfAbsent(look, unit);
      boolean newKind = firstOfKind.putIfAbsent(unit.kind(), unit) == null;
      if (newKind && alike != null) {
        notes.add(Problem.note(source, unit.line(), text(unit, alike)));
      }
    }
    return notes;
  }

  private static String text(Unit unit, Unit alike) {
    return "kind `"
        + unit.kind()
        + "` differs from `"
        + alike.kind()
        + "` in line "
        + alike.line()
        + " only by case or spaces; they are analysed as two kinds";
  }
}
