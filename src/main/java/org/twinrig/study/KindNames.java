package org.twinrig.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.twinrig.capture.Unit;
import org.twinrig.intake.NearestName;
import org.twinrig.problem.Problem;

/** Notes on kinds that look like one and are counted as two. */
final class KindNames {
  private KindNames() {}

  static List<Problem> notes(String source, List<Unit> units) {
    Set<String> kinds = new HashSet<>();
    Map<String, Unit> firstOfLook = new HashMap<>();
    List<Problem> notes = new ArrayList<>();
    for (Unit unit : units) {
      String look = NearestName.bare(unit.kind());
      Unit alike = firstOfLook.putIfAbsent(look, unit);
      boolean newKind = kinds.add(unit.kind());
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
        + " only by case, spaces or hyphens; they are analysed as two kinds";
  }
}
