package org.twinrig.translation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.regression.WindowRule;

/** A window ridge as JSON. */
final class WindowNode {
  private WindowNode() {}

  static ObjectNode of(WindowRule window) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("half_octaves", window.halfOctaves())
        .put("borrow_octaves", window.borrowOctaves())
        .put("shrinkage", window.shrinkage())
        .put("mean_db", window.meanDb());
    window.seatingVariance().ifPresent(v -> node.put("seating_variance_from_db2", v));
    ArrayNode predictors = node.putArray("predictors");
    for (WindowRule.Predictor p : window.predictors()) {
      predictors
          .addObject()
          .put("band", p.band())
          .put("coefficient", p.coefficient())
          .put("centre_db", p.centreDb());
    }
    ArrayNode spread = node.putArray("spread");
    window.spread().forEach(spread::add);
    return node;
  }

  static WindowRule read(JsonNode node, int bands) throws MissingPart {
    List<WindowRule.Predictor> predictors = new ArrayList<>();
    for (JsonNode p : JsonParts.list(node, "predictors")) {
      int band = JsonParts.whole(p, "band");
      if (band < 0 || band >= bands) {
        throw new MissingPart("a window's `band` must be a position in the grid, but is " + band);
      }
      predictors.add(
          new WindowRule.Predictor(
              band, JsonParts.number(p, "coefficient"), JsonParts.number(p, "centre_db")));
    }
    List<Double> spread = new ArrayList<>();
    for (JsonNode element : JsonParts.list(node, "spread")) {
      if (!element.isNumber()) {
        throw new MissingPart("`spread` must hold numbers");
      }
      spread.add(JsonParts.finite(element, "spread"));
    }
    return new WindowRule(
        JsonParts.number(node, "half_octaves"),
        JsonParts.number(node, "borrow_octaves"),
        JsonParts.number(node, "shrinkage"),
        JsonParts.number(node, "mean_db"),
        predictors,
        spread,
        JsonParts.optional(node, "seating_variance_from_db2"));
  }
}
