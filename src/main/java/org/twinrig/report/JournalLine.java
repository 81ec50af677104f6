package org.twinrig.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Change;
import org.twinrig.translation.Decision;
import org.twinrig.translation.MarkRow;
import org.twinrig.translation.Sketch;
import org.twinrig.translation.Treatment;

/** What became of one graph, as a line of the journal. */
final class JournalLine {
  private JournalLine() {}

  static ObjectNode of(Findings<CatalogueRun.Line> found) {
    CatalogueRun.Line line = found.value();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    CatalogueRun.Octaves octaves = line.octaves();
    node.put("decision", line.decision().name())
        .put("reliable", octaves.reliable())
        .put("caution", octaves.caution())
        .put("unreliable", octaves.unreliable())
        .put("missing", octaves.missing())
        .put("lost", octaves.lost())
        .put("marks", line.marks().letters())
        .put("smoothing", line.treatment().smoothing().name())
        .put("sha256", line.sha256());
    ArrayNode reasons = node.putArray("reasons");
    line.reasons().forEach(r -> reasons.add(r.name()));
    line.treatment().before().ifPresent(r -> node.set("before", reference(r)));
    line.treatment().now().ifPresent(r -> node.set("now", reference(r)));
    put(node, "total_rms", line.change().totalRmsDb());
    put(node, "fixture_rms", line.change().fixtureRmsDb());
    put(node, "reference_rms", line.change().referenceRmsDb());
    ArrayNode notes = node.putArray("notes");
    for (Problem note : found.problems()) {
      notes
          .addObject()
          .put("source", note.source())
          .put("line", note.line())
          .put("what", note.what());
    }
    ArrayNode sketch = node.putArray("sketch");
    for (int bits : line.sketch().bits()) {
      sketch.add(bits);
    }
    return node;
  }

  private static void put(ObjectNode node, String name, OptionalDouble value) {
    value.ifPresent(v -> node.put(name, v));
  }

  private static ObjectNode reference(Treatment.Reference reference) {
    ObjectNode node = JsonNodeFactory.instance.objectNode().put("file", reference.file());
    reference.smoothing().ifPresent(s -> node.put("smoothing", s.word()));
    return node;
  }

  /**
   * Reads a line.
   *
   * @throws IllegalArgumentException when a part is missing or not what it should be
   */
  static Findings<CatalogueRun.Line> read(CatalogueEntry entry, JsonNode node) {
    List<Problem> notes = new ArrayList<>();
    for (JsonNode note : node.path("notes")) {
      notes.add(
          Problem.note(
              note.path("source").asText(), note.path("line").asInt(), note.path("what").asText()));
    }
    return new Findings<>(line(entry, node), notes);
  }

  private static CatalogueRun.Line line(CatalogueEntry entry, JsonNode node) {
    List<Reason> reasons = new ArrayList<>();
    node.path("reasons").forEach(r -> reasons.add(Reason.valueOf(r.asText())));
    int[] bits = new int[node.path("sketch").size()];
    for (int b = 0; b < bits.length; b++) {
      bits[b] = node.path("sketch").get(b).asInt();
    }
    return new CatalogueRun.Line(
        entry,
        Decision.valueOf(node.path("decision").asText()),
        new CatalogueRun.Octaves(
            number(node, "reliable"),
            number(node, "caution"),
            number(node, "unreliable"),
            number(node, "missing"),
            number(node, "lost")),
        reasons,
        new MarkRow(node.path("marks").asText()),
        new Treatment(
            Treatment.SmoothingMatch.valueOf(node.path("smoothing").asText()),
            referenceIfAny(node, "before"),
            referenceIfAny(node, "now")),
        new Change(
            optional(node, "total_rms"),
            optional(node, "fixture_rms"),
            optional(node, "reference_rms")),
        Sketch.ofBits(bits),
        node.path("sha256").asText());
  }

  private static double number(JsonNode node, String name) {
    if (!node.path(name).isNumber()) {
      throw new IllegalArgumentException(name + " is missing");
    }
    return Checks.finite(node.get(name).asDouble(), name);
  }

  private static OptionalDouble optional(JsonNode node, String name) {
    return node.has(name) ? OptionalDouble.of(number(node, name)) : OptionalDouble.empty();
  }

  private static Optional<Treatment.Reference> referenceIfAny(JsonNode node, String name) {
    return node.has(name)
        ? Optional.of(
            new Treatment.Reference(
                node.get(name).path("file").asText(),
                Smoothing.of(node.get(name).path("smoothing").asText())))
        : Optional.empty();
  }
}
