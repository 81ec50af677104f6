package org.twinrig.translation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.doubt.Doubt;

/**
 * Graphs of a unit of which the lab's tables say two things: its kind or its pads, in the
 * catalogue's rows and in the study's table of units. Pads are compared where both state them, and
 * where the study itself is at hand.
 */
final class TablesContradict {
  static final String DOUBT = "tables contradict";

  /** What is said of a unit, and by which table or row; nothing said of pads is empty. */
  private record Said(String kind, String pads, String where) {}

  private TablesContradict() {}

  static List<Doubt> of(List<CatalogueRun.Line> lines, Chain.Link first) {
    Map<String, Said> known = new HashMap<>();
    for (TransferFunction kind : first.translation().kinds()) {
      kind.unitNames().forEach(u -> known.put(u, new Said(kind.kind(), "", "the study")));
    }
    first
        .captures()
        .ifPresent(
            c ->
                c.study()
                    .units()
                    .forEach(u -> known.put(u.name(), new Said(u.kind(), u.pads(), "the study"))));
    List<Doubt> doubts = new ArrayList<>();
    for (CatalogueRun.Line line : lines) {
      CatalogueEntry e = line.entry();
      Said here = new Said(e.kind(), e.pads(), "graph `" + e.graph() + "`");
      Said before = known.putIfAbsent(e.unit(), here);
      Optional.ofNullable(before)
          .flatMap(other -> contradiction(e.unit(), other, here))
          .ifPresent(doubt -> doubts.add(doubt.of(e)));
    }
    return doubts;
  }

  private record Contradiction(String column, String unit, Said other, String there, String here) {
    Doubt of(CatalogueEntry e) {
      return Doubt.ofGraph(
          e.graph(),
          e.file(),
          DOUBT,
          new Doubt.Found("`" + column + "` " + here, there),
          "`%s` of unit `%s` is `%s` here and `%s` in %s."
              .formatted(column, unit, here, there, other.where),
          "Correct the table that is wrong: with a wrong `%s` the transfer is that of other headphones."
              .formatted(column));
    }
  }

  private static Optional<Contradiction> contradiction(String unit, Said other, Said here) {
    if (!here.kind.equals(other.kind)
        && !here.kind.equals(Translation.UNKNOWN_KIND)
        && !other.kind.equals(Translation.UNKNOWN_KIND)) {
      return Optional.of(new Contradiction("kind", unit, other, other.kind, here.kind));
    }
    boolean pads =
        !here.pads.isBlank()
            && !other.pads.isBlank()
            && !here.pads.strip().equals(other.pads.strip());
    return pads
        ? Optional.of(new Contradiction("pads", unit, other, other.pads, here.pads))
        : Optional.empty();
  }
}
