package org.twinrig.translation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.doubt.Doubt;
import org.twinrig.intake.NearestName;

/**
 * Old graphs of units that the study has measured on the new fixture, by their names: what was
 * measured is better than what is translated. Names that differ in case, spaces or hyphens only are
 * taken for one unit's, and said so.
 */
final class AlreadyMeasured {
  static final String DOUBT = "already measured";

  private AlreadyMeasured() {}

  static List<Doubt> of(List<CatalogueRun.Line> lines, Translation last) {
    Map<String, String> known = new LinkedHashMap<>();
    last.kinds().stream()
        .flatMap(kind -> kind.unitNames().stream())
        .forEach(name -> known.putIfAbsent(NearestName.bare(name), name));
    List<Doubt> doubts = new ArrayList<>();
    for (CatalogueRun.Line line : lines) {
      CatalogueEntry entry = line.entry();
      String unit = known.get(NearestName.bare(entry.unit()));
      if (unit != null) {
        boolean spelled = unit.equals(entry.unit());
        doubts.add(
            Doubt.ofGraph(
                entry.graph(),
                entry.file(),
                DOUBT,
                new Doubt.Found(
                    spelled ? "the same name" : "a name spelled alike", "names of their own"),
                "the study has `%s` on %s%s."
                    .formatted(
                        unit,
                        last.origin().to(),
                        spelled ? "" : ", spelled otherwise than `" + entry.unit() + "` here"),
                "Publish what was measured there instead of a translated graph; a graph of another"
                    + " specimen wants a unit name of its own."));
      }
    }
    return doubts;
  }
}
