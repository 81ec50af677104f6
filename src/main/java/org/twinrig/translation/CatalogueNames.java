package org.twinrig.translation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.capture.Unit;
import org.twinrig.intake.NearestName;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/** What a catalogue as a whole leaves open, such as kinds and units that a study does not have. */
final class CatalogueNames {
  private CatalogueNames() {}

  /**
   * One note per kind that a link of the chain does not have, at the first graph of that kind; and
   * one per unit that is written otherwise in the study; one per adaptive kind, and one on graphs
   * averaged in power over an unknown number of seatings.
   */
  static List<Problem> notes(CatalogueReader.Catalogue catalogue, List<Translation> links) {
    Map<String, List<CatalogueEntry>> byKind =
        catalogue.entries().stream()
            .collect(
                Collectors.groupingBy(
                    CatalogueEntry::kind, LinkedHashMap::new, Collectors.toList()));
    byKind.remove(Translation.UNKNOWN_KIND);
    List<Problem> notes = new ArrayList<>();
    for (String kind : List.copyOf(byKind.keySet())) {
      if (Unit.adaptive(kind)) {
        notes.add(adaptive(catalogue.source(), byKind.remove(kind)));
      }
    }
    byKind.forEach(
        (kind, graphs) ->
            links.stream()
                .filter(link -> link.kind(kind).isEmpty())
                .findFirst()
                .ifPresent(link -> notes.add(note(catalogue.source(), graphs, link))));
    seatingsNotStated(catalogue).ifPresent(notes::add);
    return notes;
  }

  private static Optional<Problem> seatingsNotStated(CatalogueReader.Catalogue catalogue) {
    List<CatalogueEntry> high =
        catalogue.entries().stream()
            .filter(e -> e.averaged().how() == CatalogueEntry.Averaging.POWER)
            .filter(e -> e.averaged().seatings().isEmpty())
            .toList();
    return high.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Problem.note(
                catalogue.source(),
                high.get(0).line(),
                Numbers.count(
                        high.size(),
                        "graph averages powers and leaves `seatings` empty: it reads",
                        "graphs average powers and leave `seatings` empty: they read")
                    + " higher than a mean of decibels by nobody knows how much, and nothing is taken"
                    + " off; write how many seatings were averaged"));
  }

  private static Problem adaptive(String source, List<CatalogueEntry> graphs) {
    return Problem.note(
        source,
        graphs.get(0).line(),
        "units of kind `"
            + graphs.get(0).kind()
            + "` adapt to what they are worn on and so correct for the fixture; "
            + Numbers.count(graphs.size(), "graph of it is", "graphs of it are")
            + " not translated and must be measured again");
  }

  private static Problem note(String source, List<CatalogueEntry> graphs, Translation link) {
    String kind = graphs.get(0).kind();
    List<String> known = link.kinds().stream().map(TransferFunction::kind).toList();
    Optional<String> near = NearestName.among(kind, known);
    return Problem.note(
        source,
        graphs.get(0).line(),
        "the study from `"
            + link.origin().from()
            + "` to `"
            + link.origin().to()
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
