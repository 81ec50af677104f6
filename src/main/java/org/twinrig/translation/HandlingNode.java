package org.twinrig.translation;

import static org.twinrig.translation.JsonParts.child;
import static org.twinrig.translation.JsonParts.list;
import static org.twinrig.translation.JsonParts.number;
import static org.twinrig.translation.JsonParts.string;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.FrequencyRange;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;

/** How graphs are taken and given, as a part of translation.json. */
final class HandlingNode {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

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

  static Translation.Handling read(JsonNode node) throws MissingPart {
    JsonNode publishing = child(node, "publishing");
    return new Translation.Handling(
        smoothing(string(node, "capture_smoothing")),
        number(node, "sides_per_seating"),
        new PublishingRule(
            new FrequencyRange(number(publishing, "from_hz"), number(publishing, "to_hz")),
            number(publishing, "lost_octaves")),
        referenceIfAny(node, "old_reference"),
        referenceIfAny(node, "new_reference"));
  }

  private static Optional<ReferenceCurve> referenceIfAny(JsonNode node, String name)
      throws MissingPart {
    if (!node.has(name)) {
      return Optional.empty();
    }
    JsonNode reference = node.get(name);
    Optional<Smoothing> smoothing =
        reference.has("smoothing")
            ? Optional.of(smoothing(string(reference, "smoothing")))
            : Optional.empty();
    return Optional.of(
        new ReferenceCurve(
            string(reference, "file"),
            smoothing,
            Response.copyOf(numbers(reference, "hz"), numbers(reference, "db"))));
  }

  private static Smoothing smoothing(String word) throws MissingPart {
    return Smoothing.of(word)
        .orElseThrow(
            () -> new MissingPart("smoothing `" + word + "` is not known to this program"));
  }

  private static double[] numbers(JsonNode node, String name) throws MissingPart {
    JsonNode list = list(node, name);
    double[] numbers = new double[list.size()];
    for (int k = 0; k < numbers.length; k++) {
      if (!list.get(k).isNumber()) {
        throw new MissingPart("`" + name + "` must be a list of numbers");
      }
      numbers[k] = JsonParts.finite(list.get(k), name);
    }
    return numbers;
  }
}
