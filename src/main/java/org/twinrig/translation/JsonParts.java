package org.twinrig.translation;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.OptionalDouble;

/** Takes parts out of a JSON tree; one that is missing or of another type is named. */
final class JsonParts {
  private JsonParts() {}

  static JsonNode child(JsonNode node, String name) throws MissingPart {
    if (!node.has(name)) {
      throw new MissingPart("`" + name + "` is missing");
    }
    return node.get(name);
  }

  static String string(JsonNode node, String name) throws MissingPart {
    JsonNode value = child(node, name);
    if (!value.isTextual()) {
      throw new MissingPart("`" + name + "` must be a text");
    }
    return value.asText();
  }

  static double number(JsonNode node, String name) throws MissingPart {
    JsonNode value = child(node, name);
    if (!value.isNumber()) {
      throw new MissingPart("`" + name + "` must be a number");
    }
    return value.asDouble();
  }

  static int whole(JsonNode node, String name) throws MissingPart {
    JsonNode value = child(node, name);
    if (!value.isIntegralNumber() || !value.canConvertToInt()) {
      throw new MissingPart("`" + name + "` must be a whole number");
    }
    return value.asInt();
  }

  static JsonNode list(JsonNode node, String name) throws MissingPart {
    JsonNode value = child(node, name);
    if (!value.isArray()) {
      throw new MissingPart("`" + name + "` must be a list");
    }
    return value;
  }

  static OptionalDouble optional(JsonNode node, String name) throws MissingPart {
    return node.has(name) ? OptionalDouble.of(number(node, name)) : OptionalDouble.empty();
  }
}
