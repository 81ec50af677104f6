package org.twinrig.translation;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.util.OptionalDouble;
import org.twinrig.intake.Utf8File;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Takes parts out of a JSON tree; one that is missing or of another type is named. */
final class JsonParts {
  /** Ten kinds on a thousand bands with a window each take half of it. */
  private static final int MOST_BYTES = 32 * 1024 * 1024;

  /** More than twice what a translation has. */
  private static final StreamReadConstraints MODEST =
      StreamReadConstraints.builder()
          .maxNestingDepth(20)
          .maxNumberLength(100)
          .maxStringLength(100_000)
          .maxNameLength(1000)
          .build();

  private static final String UNCHANGED =
      "give the translation.json that `twinrig study` wrote, unchanged";

  private JsonParts() {}

  /**
   * The whole of a file.
   *
   * @throws UnusableInput when it cannot be read, is too large, or is not JSON
   */
  static JsonNode tree(Path file, String source) throws UnusableInput {
    String text = Utf8File.read(file, source, MOST_BYTES);
    try {
      return JsonMapper.builder(JsonFactory.builder().streamReadConstraints(MODEST).build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .build()
          .readTree(text);
    } catch (StreamConstraintsException e) {
      throw unusable(
          source, e, "something is nested deeper or written longer than a translation has it");
    } catch (JsonProcessingException e) {
      throw unusable(source, e, "this is not JSON: " + reason(e));
    }
  }

  /** What the parser says, without what it says to programmers. */
  private static String reason(JsonProcessingException e) {
    String first = e.getOriginalMessage().lines().findFirst().orElse("unreadable");
    int advice = first.indexOf(": enable `");
    return advice < 0 ? first : first.substring(0, advice);
  }

  private static UnusableInput unusable(String source, JsonProcessingException e, String what) {
    int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNr());
    return new UnusableInput(Problem.fatal(source, line, what, UNCHANGED));
  }

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
    return finite(value, name);
  }

  /** A number; one of more than some 308 digits before the point would be infinite. */
  static double finite(JsonNode value, String name) throws MissingPart {
    if (!Double.isFinite(value.asDouble())) {
      throw new MissingPart("`" + name + "` is too large a number");
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
