package org.twinrig.translation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.intake.NearestName;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/** Kinds that a catalogue names and a study does not have: often a slip of the pen. */
final class CatalogueKinds {
  private CatalogueKinds() {}

  /**
   * One note per kind that a leg of the way does not have, at the first graph of that kind.
   *
   * @param catalogue its graphs
   * @param legs the way they are taken
   * @return in the order of the catalogue; possibly none
   */
  static List<Problem> notes(CatalogueReader.Catalogue catalogue, List<Translation> legs) {
    Map<String, List<CatalogueEntry>> byKind = new LinkedHashMap<>();
    catalogue
        .entries()
        .forEach(e -> byKind.computeIfAbsent(e.kind(), k -> new ArrayList<>()).add(e));
    byKind.remove(Translation.UNKNOWN_KIND);
    List<Problem> notes = new ArrayList<>();
    byKind.forEach(
        (kind, graphs) ->
            legs.stream()
                .filter(leg -> leg.kind(kind).isEmpty())
                .findFirst()
                .ifPresent(leg -> notes.add(note(catalogue.source(), graphs, leg))));
    return notes;
  }

  private static Problem note(String source, List<CatalogueEntry> graphs, Translation leg) {
    String kind = graphs.get(0).kind();
    List<String> known = leg.kinds().stream().map(TransferFunction::kind).toList();
    Optional<String> near = NearestName.among(kind, known);
    return Problem.note(
        source,
        graphs.get(0).line(),
        "the study from `"
            + leg.origin().from()
            + "` to `"
            + leg.origin().to()
            + "` has no kind `"
            + kind
            + "`, so "
            + Numbers.count(graphs.size(), "graph of it is", "graphs of it are")
            + " not translated; "
            + near.map(n -> "did you mean `" + n + "`? ").orElse("")
            + "its kinds: "
            + String.join(", ", known));
  }
}
