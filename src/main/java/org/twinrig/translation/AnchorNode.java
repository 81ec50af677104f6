package org.twinrig.translation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.twinrig.response.Anchor;

/** An anchor as JSON: a range, one frequency, or none. */
final class AnchorNode {
  private AnchorNode() {}

  static ObjectNode of(Anchor anchor) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    if (anchor instanceof Anchor.Range range) {
      return node.put("from_hz", range.fromHz()).put("to_hz", range.toHz());
    }
    if (anchor instanceof Anchor.Frequency frequency) {
      return node.put("at_hz", frequency.hz());
    }
    return node.put("none", true);
  }

  static Anchor read(JsonNode node) throws MissingPart {
    if (node.path("none").asBoolean()) {
      return new Anchor.None();
    }
    return node.has("at_hz")
        ? new Anchor.Frequency(JsonParts.number(node, "at_hz"))
        : new Anchor.Range(JsonParts.number(node, "from_hz"), JsonParts.number(node, "to_hz"));
  }
}
