package org.twinrig.translation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Fixture;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.NumberRange;
import org.twinrig.study.Study;

/** What study a translation came from, as a part of translation.json. */
final class OriginNode {
  private OriginNode() {}

  static ObjectNode of(Translation.Origin origin) {
    ObjectNode node = JsonNodeFactory.instance.objectNode().put("title", origin.title());
    fixture(node.putObject("from"), origin.old());
    fixture(node.putObject("to"), origin.now());
    node.put("anchor", origin.anchor()).put("fingerprint", origin.fingerprint());
    origin
        .sessions()
        .ifPresent(
            days ->
                node.putObject("sessions")
                    .put("first", days.first().toString())
                    .put("last", days.last().toString()));
    origin.validUntil().ifPresent(day -> node.put("valid_until", day.toString()));
    return node;
  }

  private static void fixture(ObjectNode node, Fixture fixture) {
    node.put("name", fixture.name()).put("label", fixture.label());
    put(node, "ear_simulator", fixture.earSimulator());
    put(node, "specimen", fixture.specimen());
    fixture.simulates().ifPresent(r -> range(node.putObject("simulates"), r));
    fixture.usable().ifPresent(r -> range(node.putObject("usable"), r));
    fixture.calibratorClass().ifPresent(c -> node.put("calibrator_class", c.word()));
  }

  private static void put(ObjectNode node, String name, String text) {
    if (!text.isEmpty()) {
      node.put(name, text);
    }
  }

  private static void range(ObjectNode node, FrequencyRange range) {
    node.put("from_hz", range.fromHz()).put("to_hz", range.toHz());
  }

  static Translation.Origin read(JsonPart part) throws UnusableInput {
    Optional<Study.Days> sessions = Optional.empty();
    if (part.has("sessions")) {
      JsonPart days = part.child("sessions");
      sessions = Optional.of(new Study.Days(day(days, "first"), day(days, "last")));
    }
    return new Translation.Origin(
        part.text("title"),
        fixture(part.child("from")),
        fixture(part.child("to")),
        part.text("anchor"),
        part.text("fingerprint"),
        sessions,
        part.has("valid_until") ? Optional.of(day(part, "valid_until")) : Optional.empty());
  }

  private static Fixture fixture(JsonPart part) throws UnusableInput {
    Optional<CalibratorClass> calibrator = Optional.empty();
    if (part.has("calibrator_class")) {
      calibrator = CalibratorClass.of(part.text("calibrator_class"));
      if (calibrator.isEmpty()) {
        throw part.child("calibrator_class").amiss("is no class of IEC 60942");
      }
    }
    return new Fixture(
        part.text("name"),
        part.text("label"),
        part.has("ear_simulator") ? part.text("ear_simulator") : "",
        range(part, "simulates"),
        range(part, "usable"),
        part.has("specimen") ? part.text("specimen") : "",
        calibrator);
  }

  private static Optional<FrequencyRange> range(JsonPart part, String name) throws UnusableInput {
    if (!part.has(name)) {
      return Optional.empty();
    }
    JsonPart range = part.child(name);
    double fromHz = range.number("from_hz", NumberRange.HZ);
    double toHz = range.number("to_hz", NumberRange.HZ);
    return Optional.of(range.made(() -> new FrequencyRange(fromHz, toHz)));
  }

  private static LocalDate day(JsonPart part, String name) throws UnusableInput {
    String text = part.text(name);
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw part.child(name).amiss("is `" + text + "`, and not a day such as 2027-03-31");
    }
  }
}
