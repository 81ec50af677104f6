package org.twinrig.translation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.doubt.Doubt;

/**
 * Old graphs whose file holds, byte for byte, what another graph's holds, or a capture of the study
 * that is of another unit or not of the old fixture: one of the two is listed under a wrong name. A
 * curve saved again in another form is not found.
 */
final class SameGraph {
  static final String DOUBT = "same as";

  private SameGraph() {}

  /** A doubt about every graph that shows again what stands before it, or what a capture shows. */
  static List<Doubt> of(List<CatalogueRun.Line> lines, Optional<Chain.Captures> captures) {
    Map<String, String> first = new HashMap<>();
    List<Doubt> doubts = new ArrayList<>();
    for (CatalogueRun.Line line : lines) {
      CatalogueEntry entry = line.entry();
      String before = first.putIfAbsent(line.fileSha256(), entry.graph());
      Optional<String> other =
          Optional.ofNullable(before)
              .map(graph -> "graph `" + graph + "` holds")
              .or(() -> captures.flatMap(c -> capture(c, line)));
      other.ifPresent(
          holds ->
              doubts.add(
                  Doubt.ofGraph(
                      entry.graph(),
                      entry.file(),
                      DOUBT,
                      new Doubt.Found("the same file", "files of their own"),
                      "its file holds what " + holds + ".",
                      "One of the two is not what it is listed as, unless it is listed twice: name"
                          + " the right file, or take the row out.")));
    }
    return doubts;
  }

  private static Optional<String> capture(Chain.Captures captures, CatalogueRun.Line line) {
    return captures
        .ofFile(line.fileSha256())
        .filter(
            c ->
                !c.unit().equals(line.entry().unit())
                    || !c.fixture().equals(captures.study().from().name()))
        .map(
            c ->
                "the study's capture `%s` of `%s` on `%s` holds"
                    .formatted(c.file(), c.unit(), c.fixture()));
  }
}
