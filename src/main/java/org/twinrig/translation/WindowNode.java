package org.twinrig.translation;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.WindowRule;
import org.twinrig.study.NumberRange;

/** The weighted mean of windows as JSON. */
final class WindowNode {
  /** Beyond it a thousandth of a decibel in the old graph would be a whole one in the new. */
  private static final NumberRange COEFFICIENT =
      NumberRange.of(-1000, 1000, "a coefficient from -1000 to 1000");

  private static final NumberRange WEIGHT = NumberRange.of(0, 1, "a weight from 0 to 1");

  /** Its largest is one part in the square of the rounding of levels. */
  private static final NumberRange SPREAD =
      NumberRange.of(-1e30, 1e30, "a number in 1/dB² from -1e30 to 1e30");

  private WindowNode() {}

  static ObjectNode of(WindowRule window) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("offset_weight", window.offsetWeight()).put("mean_db", window.meanDb());
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

  static WindowRule read(JsonPart part, int bands) throws UnusableInput {
    List<WindowRule.Predictor> predictors =
        part.list(
            "predictors",
            p ->
                new WindowRule.Predictor(
                    p.whole("band", 0, bands - 1),
                    p.number("coefficient", COEFFICIENT),
                    p.number("centre_db", TranslationFile.LEVEL_DB)));
    List<Double> spread = part.list("spread", element -> element.number(SPREAD));
    double offsetWeight = part.number("offset_weight", WEIGHT);
    double meanDb = part.number("mean_db", TranslationFile.LEVEL_DB);
    OptionalDouble seating =
        part.optional("seating_variance_from_db2", TranslationFile.VARIANCE_DB2);
    return part.made(() -> new WindowRule(offsetWeight, meanDb, predictors, spread, seating));
  }
}
