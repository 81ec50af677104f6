package org.twinrig.translation;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.NumberRange;

/**
 * A part of a JSON tree. What is missing, of another type or out of its range is told with the
 * place where it stands.
 *
 * @param place its path from the top, elements counted from 0 as in RFC 9535; empty at the top
 * @param source the file's name in messages
 */
record JsonPart(JsonNode node, String place, String source) {
  /** More than twice what a translation has. */
  private static final StreamReadConstraints MODEST =
      StreamReadConstraints.builder()
          .maxNestingDepth(20)
          .maxNumberLength(100)
          .maxStringLength(100_000)
          .maxNameLength(1000)
          .build();

  /** The whole of a text. */
  static JsonPart tree(String text, String source) throws UnusableInput {
    try {
      return new JsonPart(
          JsonMapper.builder(JsonFactory.builder().streamReadConstraints(MODEST).build())
              .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
              .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
              .build()
              .readTree(text),
          "",
          source);
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
    return new UnusableInput(Problem.fatal(source, line, what, TranslationFile.UNCHANGED));
  }

  boolean has(String name) {
    return node.has(name);
  }

  JsonPart child(String name) throws UnusableInput {
    JsonPart child =
        new JsonPart(node.path(name), place.isEmpty() ? name : place + "." + name, source);
    if (child.node.isMissingNode()) {
      throw child.amiss("is missing");
    }
    return child;
  }

  /** A line of text with something in it. */
  String text(String name) throws UnusableInput {
    return child(name).text();
  }

  String text() throws UnusableInput {
    String text = node.isTextual() ? node.asText() : "";
    if (text.isBlank() || text.codePoints().anyMatch(Character::isISOControl)) {
      throw amiss("must be a line of text");
    }
    return text;
  }

  double number(String name, NumberRange range) throws UnusableInput {
    return child(name).number(range);
  }

  double number(NumberRange range) throws UnusableInput {
    if (!node.isNumber()) {
      throw amiss("must be a number");
    }
    if (!range.holds(node.asDouble())) {
      throw amiss("is " + node.asText() + ", and not " + range.words());
    }
    return node.asDouble();
  }

  OptionalDouble optional(String name, NumberRange range) throws UnusableInput {
    return has(name) ? OptionalDouble.of(number(name, range)) : OptionalDouble.empty();
  }

  int whole(String name, int least, int most) throws UnusableInput {
    JsonPart value = child(name);
    if (!value.node.isIntegralNumber()
        || !value.node.canConvertToInt()
        || value.node.asInt() < least
        || value.node.asInt() > most) {
      throw value.amiss("must be a whole number from " + least + " to " + most);
    }
    return value.node.asInt();
  }

  /** Reads one element of a list. */
  @FunctionalInterface
  interface Reader<T> {
    T read(JsonPart element) throws UnusableInput;
  }

  List<JsonPart> list(String name) throws UnusableInput {
    return list(name, element -> element);
  }

  <T> List<T> list(String name, Reader<T> reader) throws UnusableInput {
    return child(name).elements(reader);
  }

  <T> List<T> elements(Reader<T> reader) throws UnusableInput {
    if (!node.isArray()) {
      throw amiss("must be a list");
    }
    List<T> elements = new ArrayList<>();
    for (JsonNode element : node) {
      String at = place + "[" + elements.size() + "]";
      elements.add(reader.read(new JsonPart(element, at, source)));
    }
    return elements;
  }

  /** What this part describes; the reason why it cannot be made is told with the place. */
  <T> T made(Supplier<T> maker) throws UnusableInput {
    try {
      return maker.get();
    } catch (IllegalArgumentException e) {
      throw amiss("cannot be: " + e.getMessage());
    }
  }

  UnusableInput amiss(String what) {
    String where = place.isEmpty() ? "the file" : "`" + place + "`";
    return new UnusableInput(
        Problem.fatal(source, 0, where + " " + what, TranslationFile.UNCHANGED));
  }
}
