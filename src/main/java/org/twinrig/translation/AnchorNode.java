package org.twinrig.translation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Anchor;
import org.twinrig.study.NumberRange;

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

  static Anchor read(JsonPart part, int perOctave) throws MissingPart {
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
