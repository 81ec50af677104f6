package org.twinrig.translation;

import static org.twinrig.translation.JsonParts.child;
import static org.twinrig.translation.JsonParts.list;
import static org.twinrig.translation.JsonParts.number;
import static org.twinrig.translation.JsonParts.optional;
import static org.twinrig.translation.JsonParts.string;
import static org.twinrig.translation.JsonParts.whole;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Tolerance;

/**
 * A translation as a file: translation.json. Its form is fixed by the JSON Schema in the resource
 * {@code translation.schema.json} beside this class.
 */
public final class TranslationFile {
  private static final String FORMAT = "twinrig-translation";
  private static final int VERSION = 1;

  /** A study has less than a thousand bands of 1/48 octave, which are counted from 1 kHz. */
  private static final int MOST_BANDS = 10_000;

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private TranslationFile() {}

  /**
   * A translation as text.
   *
   * @param translation what a study found
   * @return JSON, numbers in full precision
   */
  public static String text(Translation translation) {
    ObjectNode root = NODES.objectNode();
    root.put("format", FORMAT).put("version", VERSION);
    Translation.Origin origin = translation.origin();
    root.putObject("study")
        .put("title", origin.title())
        .put("from", origin.from())
        .put("to", origin.to())
        .put("anchor", origin.anchor())
        .put("fingerprint", origin.fingerprint());
    root.set("anchor", AnchorNode.of(translation.anchor()));
    root.putObject("grid")
        .put("per_octave", translation.grid().perOctave())
        .put("first_band", translation.grid().band(0).index())
        .put("bands", translation.grid().size());
    root.put("confidence", translation.confidence()).put("min_units", translation.minUnits());
    ObjectNode tolerance = root.putObject("tolerance");
    tolerance.set("reliable", limit(translation.tolerance().reliable()));
    tolerance.set("caution", limit(translation.tolerance().caution()));
    tolerance.put("equivalence_db", translation.tolerance().equivalenceDb());
    root.set("handling", HandlingNode.of(translation.handling()));
    ArrayNode kinds = root.putArray("kinds");
    for (TransferFunction kind : translation.kinds()) {
      ObjectNode node = kinds.addObject().put("kind", kind.kind());
      ArrayNode names = node.putArray("unit_names");
      kind.unitNames().forEach(names::add);
      if (kind.units() < translation.minUnits()) {
        node.put("too_few_units", true);
      }
      ArrayNode bands = node.putArray("bands");
      kind.bands().forEach(b -> bands.add(band(b)));
    }
    return root.toPrettyString().replace("\r\n", "\n") + "\n";
  }

  private static ArrayNode limit(DbLimit limit) {
    ArrayNode steps = NODES.arrayNode();
    limit.steps().forEach(s -> steps.addObject().put("from_hz", s.fromHz()).put("db", s.db()));
    return steps;
  }

  private static ObjectNode band(MarkedBand marked) {
    ObjectNode node = NODES.objectNode();
    node.put("band_hz", marked.band().midHz()).put("units", marked.outcome().units());
    if (marked.outcome() instanceof BandOutcome.Fitted f) {
      node.put("model", f.prediction().model().word())
          .put("offset_db", f.mean().meanDb())
          .put("se_db", f.mean().standardErrorDb())
          .put("ci_half_db", f.mean().halfWidthDb())
          .put("sim_half_db", f.simultaneousHalfDb())
          .put("unit_variance_db2", f.mean().tauSquared())
          .put("seating_variance_db2", f.scatter().seatingVariance())
          .put("seatings_from", f.scatter().seatingsFrom())
          .put("prediction_half_db", f.prediction().halfDb())
          .put("loo_rms_offset_db", f.prediction().looRmsOffsetDb())
          .put("loo_rms_db", f.prediction().looRmsDb());
      f.scatter().seatVarianceFrom().ifPresent(v -> node.put("seat_variance_from_db2", v));
      f.scatter().seatVarianceTo().ifPresent(v -> node.put("seat_variance_to_db2", v));
      f.prediction().window().ifPresent(w -> node.set("window", WindowNode.of(w)));
    }
    node.put("mark", marked.mark().word());
    ArrayNode reasons = node.putArray("reasons");
    marked.reasons().forEach(r -> reasons.add(r.word()));
    return node;
  }

  /**
   * Reads a translation.
   *
   * @param file the file
   * @param source its name in messages
   * @return the translation
   * @throws UnusableInput when it cannot be read, is of another format or version, or lacks
   *     something
   */
  public static Translation read(Path file, String source) throws UnusableInput {
    JsonNode root = JsonParts.tree(file, source);
    if (!FORMAT.equals(root.path("format").asText())) {
      throw unusable(
          source,
          0,
          "`format` is not \"" + FORMAT + "\"",
          "give the translation.json that `twinrig study` wrote");
    }
    if (!root.path("version").isInt() || root.path("version").asInt() != VERSION) {
      throw unusable(
          source,
          0,
          "this is version "
              + root.path("version").asText("(none)")
              + " of the format, and this program reads version "
              + VERSION,
          "use the version of the program that wrote it, or run `twinrig study` again");
    }
    try {
      return translation(root);
    } catch (MissingPart | IllegalArgumentException e) {
      throw unusable(
          source,
          0,
          e.getMessage(),
          "give the translation.json that `twinrig study` wrote, unchanged");
    }
  }

  private static UnusableInput unusable(String source, int line, String what, String remedy) {
    return new UnusableInput(Problem.fatal(source, line, what, remedy));
  }

  private static Translation translation(JsonNode root) throws MissingPart {
    JsonNode study = child(root, "study");
    JsonNode gridNode = child(root, "grid");
    int perOctave = whole(gridNode, "per_octave");
    int first = whole(gridNode, "first_band");
    int count = whole(gridNode, "bands");
    if (!BandGrid.SUPPORTED_PER_OCTAVE.contains(perOctave)
        || count < 1
        || count > MOST_BANDS
        || Math.abs((long) first) > MOST_BANDS) {
      throw new MissingPart("`grid` is not one that a study can have");
    }
    List<Band> bands = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      bands.add(Band.ofIndex(first + k, perOctave));
    }
    BandGrid grid = new BandGrid(bands);
    double confidence = number(root, "confidence");
    JsonNode tolerance = child(root, "tolerance");
    List<TransferFunction> kinds = new ArrayList<>();
    for (JsonNode kind : list(root, "kinds")) {
      List<MarkedBand> marked = new ArrayList<>();
      JsonNode bandNodes = list(kind, "bands");
      if (bandNodes.size() != grid.size()) {
        throw new MissingPart(
            "kind `" + string(kind, "kind") + "` does not have one entry per band");
      }
      for (int b = 0; b < grid.size(); b++) {
        marked.add(band(bandNodes.get(b), grid, b, confidence));
      }
      kinds.add(new TransferFunction(string(kind, "kind"), unitNames(kind), grid, marked));
    }
    return new Translation(
        new Translation.Origin(
            string(study, "title"),
            string(study, "from"),
            string(study, "to"),
            string(study, "anchor"),
            string(study, "fingerprint")),
        AnchorNode.read(child(root, "anchor")),
        grid,
        confidence,
        new Tolerance(
            limit(list(tolerance, "reliable")),
            limit(list(tolerance, "caution")),
            number(tolerance, "equivalence_db")),
        whole(root, "min_units"),
        HandlingNode.read(child(root, "handling")),
        kinds);
  }

  private static List<String> unitNames(JsonNode kind) throws MissingPart {
    List<String> names = new ArrayList<>();
    for (JsonNode name : list(kind, "unit_names")) {
      if (!name.isTextual()) {
        throw new MissingPart("`unit_names` must be a list of texts");
      }
      names.add(name.asText());
    }
    return names;
  }

  private static DbLimit limit(JsonNode steps) throws MissingPart {
    List<DbLimit.Step> read = new ArrayList<>();
    for (JsonNode step : steps) {
      read.add(new DbLimit.Step(number(step, "from_hz"), number(step, "db")));
    }
    return new DbLimit(read);
  }

  private static MarkedBand band(JsonNode node, BandGrid grid, int b, double confidence)
      throws MissingPart {
    List<Reason> reasons = new ArrayList<>();
    for (JsonNode reason : list(node, "reasons")) {
      reasons.add(reason(reason.asText()));
    }
    return new MarkedBand(outcome(node, grid, b, confidence), mark(string(node, "mark")), reasons);
  }

  private static BandOutcome outcome(JsonNode node, BandGrid grid, int b, double confidence)
      throws MissingPart {
    Band band = grid.band(b);
    if (Math.abs(number(node, "band_hz") / band.midHz() - 1) > 1e-9) {
      throw new MissingPart("`band_hz` of band " + b + " is not that of the grid");
    }
    int units = whole(node, "units");
    if (!node.has("model")) {
      return new BandOutcome.NotFitted(
          band,
          units,
          units == 0 ? BandOutcome.Why.NO_DATA : BandOutcome.Why.FEWER_THAN_THREE_UNITS);
    }
    Optional<WindowRule> window =
        switch (string(node, "model")) {
          case "offset" -> Optional.empty();
          case "window" -> Optional.of(WindowNode.read(child(node, "window"), grid.size()));
          default ->
              throw new MissingPart(
                  "model `" + string(node, "model") + "` is not known to this program");
        };
    return new BandOutcome.Fitted(
        band,
        new RandomEffects.Result(
            number(node, "offset_db"),
            number(node, "se_db"),
            number(node, "unit_variance_db2"),
            units,
            confidence,
            number(node, "ci_half_db")),
        number(node, "sim_half_db"),
        new BandOutcome.Prediction(
            window,
            number(node, "prediction_half_db"),
            number(node, "loo_rms_offset_db"),
            number(node, "loo_rms_db")),
        new BandOutcome.Scatter(
            number(node, "seating_variance_db2"),
            optional(node, "seat_variance_from_db2"),
            optional(node, "seat_variance_to_db2"),
            number(node, "seatings_from")));
  }

  private static Mark mark(String word) throws MissingPart {
    for (Mark mark : Mark.values()) {
      if (mark.word().equals(word)) {
        return mark;
      }
    }
    throw new MissingPart("mark `" + word + "` is not known to this program");
  }

  private static Reason reason(String word) throws MissingPart {
    for (Reason reason : Reason.values()) {
      if (reason.word().equals(word)) {
        return reason;
      }
    }
    throw new MissingPart("reason `" + word + "` is not known to this program");
  }
}
