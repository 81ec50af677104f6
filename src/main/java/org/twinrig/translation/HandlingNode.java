package org.twinrig.translation;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Anchor;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.NumberRange;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;

/** How graphs are taken and given, and the anchor, as parts of translation.json. */
final class HandlingNode {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private static final NumberRange SIDES = NumberRange.of(1, 2, "a number of sides from 1 to 2");

  /** As far as files of curves are read. */
  private static final NumberRange CURVE_HZ =
      new NumberRange(0, false, 1e6, "a frequency in Hz above 0, at most 1000000");

  private HandlingNode() {}

  static ObjectNode of(Translation.Handling handling) {
    ObjectNode node = NODES.objectNode();
    node.put("capture_smoothing", handling.captureSmoothing().word())
        .put("sides_per_seating", handling.sidesPerSeating());
    node.putObject("publishing")
        .put("from_hz", handling.publishing().compared().fromHz())
        .put("to_hz", handling.publishing().compared().toHz())
        .put("lost_octaves", handling.publishing().lostOctaves());
    handling.oldReference().ifPresent(r -> node.set("old_reference", reference(r)));
    handling.newReference().ifPresent(r -> node.set("new_reference", reference(r)));
    return node;
  }

  private static ObjectNode reference(ReferenceCurve reference) {
    ObjectNode node = NODES.objectNode().put("file", reference.file());
    reference.smoothing().ifPresent(s -> node.put("smoothing", s.word()));
    ArrayNode hz = node.putArray("hz");
    ArrayNode db = node.putArray("db");
    Response curve = reference.curve();
    for (int k = 0; k < curve.size(); k++) {
      hz.add(curve.frequencyHz(k));
      db.add(curve.levelDb(k));
    }
    return node;
  }

  static Translation.Handling read(JsonPart part) throws UnusableInput {
    JsonPart publishing = part.child("publishing");
    double fromHz = publishing.number("from_hz", NumberRange.HZ);
    double toHz = publishing.number("to_hz", NumberRange.HZ);
    return new Translation.Handling(
        smoothing(part.child("capture_smoothing")),
        part.number("sides_per_seating", SIDES),
        new PublishingRule(
            publishing.made(() -> new FrequencyRange(fromHz, toHz)),
            publishing.number("lost_octaves", NumberRange.OCTAVES)),
        referenceIfAny(part, "old_reference"),
        referenceIfAny(part, "new_reference"));
  }

  private static Optional<ReferenceCurve> referenceIfAny(JsonPart part, String name)
      throws UnusableInput {
    if (!part.has(name)) {
      return Optional.empty();
    }
    JsonPart reference = part.child(name);
    Optional<Smoothing> smoothing =
        reference.has("smoothing")
            ? Optional.of(smoothing(reference.child("smoothing")))
            : Optional.empty();
    double[] hz = numbers(reference, "hz", CURVE_HZ);
    double[] db = numbers(reference, "db", TranslationFile.LEVEL_DB);
    return Optional.of(
        new ReferenceCurve(
            reference.text("file"), smoothing, reference.made(() -> Response.copyOf(hz, db))));
  }

  private static Smoothing smoothing(JsonPart part) throws UnusableInput {
    return Smoothing.of(part.text())
        .orElseThrow(
            () -> part.amiss("is `" + part.node().asText() + "`, no smoothing this program knows"));
  }

  private static double[] numbers(JsonPart part, String name, NumberRange range)
      throws UnusableInput {
    return part.list(name, element -> element.number(range)).stream().mapToDouble(d -> d).toArray();
  }

  /** An anchor: a range, one frequency, or none. */
  static ObjectNode anchor(Anchor anchor) {
    ObjectNode node = NODES.objectNode();
    if (anchor instanceof Anchor.Range range) {
      return node.put("from_hz", range.fromHz()).put("to_hz", range.toHz());
    }
    if (anchor instanceof Anchor.Frequency frequency) {
      return node.put("at_hz", frequency.hz());
    }
    return node.put("none", true);
  }

  static Anchor anchor(JsonPart part, int perOctave) throws UnusableInput {
    if (part.node().path("none").asBoolean()) {
      return new Anchor.None();
    }
    if (part.has("at_hz")) {
      return new Anchor.Frequency(part.number("at_hz", NumberRange.HZ));
    }
    double fromHz = part.number("from_hz", NumberRange.HZ);
    double toHz = part.number("to_hz", NumberRange.HZ);
    // A range that holds no band has no level.
    part.made(() -> BandGrid.covering(fromHz, toHz, perOctave));
    return new Anchor.Range(fromHz, toHz);
  }
}
