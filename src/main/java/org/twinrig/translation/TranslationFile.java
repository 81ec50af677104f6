package org.twinrig.translation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.doubt.KindProfile;
import org.twinrig.intake.Utf8File;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.study.DbLimit;
import org.twinrig.study.NumberRange;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;

/**
 * A translation as a file: translation.json. Its form is fixed by the JSON Schema in the resource
 * {@code translation.schema.json} beside this class. Its line {@code sha256} is the SHA-256 of all
 * its other lines, each ended by a line feed, in UTF-8: what was damaged or changed on the way is
 * refused, and so are files of versions before 4; a study writes a new one in seconds.
 */
public final class TranslationFile {
  private static final String FORMAT = "twinrig-translation";
  private static final int VERSION = 5;

  /** It lacks what old graphs look like, which is said where graphs are to be held against it. */
  private static final int BEFORE = 4;

  /** What to do with a file that is not as it was written. */
  static final String UNCHANGED = "give the translation.json that `twinrig study` wrote, unchanged";

  private static final String AGAIN =
      "copy it again from where `twinrig study` wrote it, or run that again";

  /** The line that holds the checksum of all other lines. */
  private static final Pattern CHECKSUM =
      Pattern.compile("[ \t]*\"sha256\" ?: \"([0-9a-f]{64})\",[ \t]*");

  /** Ten kinds on a thousand bands with a window each take half of it. */
  private static final int MOST_BYTES = 32 * 1024 * 1024;

  /**
   * Levels, and differences of levels, in dB: a level that is read from a file is at most 300 dB to
   * either side, so that two of them differ by no more than this.
   */
  static final NumberRange LEVEL_DB = NumberRange.of(-600, 600, "a level in dB from -600 to 600");

  /**
   * Standard errors, root mean squares and half-widths in dB: as far as levels may differ, times
   * the largest quantile of Student's t a study can ask for, 100 (confidence 0.9999, three units).
   */
  static final NumberRange ERROR_DB = NumberRange.of(0, 60_000, "a number in dB from 0 to 60000");

  /** Variances in dB²: the squares of {@link #ERROR_DB}. */
  static final NumberRange VARIANCE_DB2 =
      NumberRange.of(0, 3.6e9, "a variance in dB² from 0 to 3.6e9");

  /** The harmonic mean of numbers of seatings; no lab seats a unit more often. */
  private static final NumberRange SEATINGS =
      new NumberRange(0, false, 1e6, "a number of seatings above 0, at most 1000000");

  /** Of a variance of errors: units, and what neighbouring bands lend. */
  private static final NumberRange FREEDOM =
      new NumberRange(0, false, 1e6, "degrees of freedom above 0, at most 1000000");

  /** One limit for all bands begins at 0. */
  private static final NumberRange STEP_HZ =
      NumberRange.of(0, NumberRange.HZ.most(), "a frequency in Hz from 0 to 200000");

  /** A band at an end of the axis may lie a little outside. */
  private static final NumberRange BAND_HZ =
      NumberRange.of(
          NumberRange.HZ.least() / 2, NumberRange.HZ.most() * 2, "a frequency in Hz of a band");

  /** A study has less than a thousand bands of 1/48 octave, which are counted from 1 kHz. */
  private static final int MOST_BANDS = 10_000;

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private TranslationFile() {}

  /** A translation as text: JSON, numbers in full precision. */
  public static String text(Translation translation) {
    ObjectNode root = NODES.objectNode();
    root.put("format", FORMAT).put("version", VERSION);
    Translation.Origin origin = translation.origin();
    root.set("study", OriginNode.of(origin));
    root.set("anchor", HandlingNode.anchor(translation.anchor()));
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
      translation.levelShift(kind.kind()).ifPresent(s -> node.set("level_shift", shift(s)));
      kind.profile().ifPresent(p -> node.set("old_graphs", ProfileNode.of(p)));
    }
    String others = root.toPrettyString().replace("\r\n", "\n") + "\n";
    int behindVersion = others.indexOf('\n', others.indexOf("\"version\"")) + 1;
    return new StringBuilder(others)
        .insert(behindVersion, "  \"sha256\" : \"" + checksum(others) + "\",\n")
        .toString();
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
          .put("old_mean_db", f.unitSpread().meanDb())
          .put("old_sd_db", f.unitSpread().sdDb())
          .put("unit_step_db", f.unitSpread().stepDb());
      node.set("offset_errors", errors(f.prediction().offset()));
      node.set("errors", errors(f.prediction().errors()));
      f.scatter().seatVarianceFrom().ifPresent(v -> node.put("seat_variance_from_db2", v));
      f.scatter().seatVarianceTo().ifPresent(v -> node.put("seat_variance_to_db2", v));
      f.prediction().window().ifPresent(w -> node.set("window", WindowNode.of(w)));
    }
    node.put("mark", marked.mark().word());
    ArrayNode reasons = node.putArray("reasons");
    marked.reasons().forEach(r -> reasons.add(r.word()));
    return node;
  }

  private static ObjectNode shift(LevelShift shift) {
    ObjectNode node =
        NODES
            .objectNode()
            .put("units", shift.mean().units())
            .put("shift_db", shift.mean().meanDb())
            .put("se_db", shift.mean().standardErrorDb())
            .put("ci_half_db", shift.mean().halfWidthDb())
            .put("unit_variance_db2", shift.mean().tauSquared())
            .put("seating_variance_db2", shift.seatingVariance())
            .put("seatings_from", shift.seatings());
    shift.seatVariance().ifPresent(v -> node.put("seat_variance_from_db2", v));
    return node;
  }

  private static LevelShift shift(JsonPart part, String kind, Fit fit) throws UnusableInput {
    return new LevelShift(
        kind,
        new RandomEffects.Result(
            part.number("shift_db", LEVEL_DB),
            part.number("se_db", ERROR_DB),
            part.number("unit_variance_db2", VARIANCE_DB2),
            part.whole("units", Settings.FEWEST_UNITS, fit.units()),
            fit.confidence(),
            part.number("ci_half_db", ERROR_DB)),
        part.number("seatings_from", SEATINGS),
        part.optional("seat_variance_from_db2", VARIANCE_DB2),
        part.number("seating_variance_db2", VARIANCE_DB2));
  }

  private static ObjectNode errors(BandOutcome.Errors errors) {
    return NODES
        .objectNode()
        .put("loo_rms_db", errors.looRmsDb())
        .put("variance_db2", errors.varianceDb2())
        .put("degrees_of_freedom", errors.degreesOfFreedom())
        .put("whole_variance_db2", errors.wholeVarianceDb2());
  }

  private static BandOutcome.Errors errors(JsonPart part) throws UnusableInput {
    return new BandOutcome.Errors(
        part.number("loo_rms_db", ERROR_DB),
        part.number("variance_db2", VARIANCE_DB2),
        part.number("degrees_of_freedom", FREEDOM),
        part.number("whole_variance_db2", VARIANCE_DB2));
  }

  /**
   * Reads a translation.
   *
   * @throws UnusableInput when it cannot be read, is of another format or version, was changed
   *     since it was written, lacks something, or holds a number that a study cannot give
   */
  public static Translation read(Path file, String source) throws UnusableInput {
    String text = Utf8File.read(file, source, MOST_BYTES);
    JsonPart root = JsonPart.tree(text, source);
    if (!FORMAT.equals(root.node().path("format").asText())) {
      throw UnusableInput.fatal(
          source,
          0,
          "`format` is not \"" + FORMAT + "\"",
          "give the translation.json that `twinrig study` wrote");
    }
    JsonNode version = root.node().path("version");
    if (!version.isInt() || version.asInt() < BEFORE || version.asInt() > VERSION) {
      throw UnusableInput.fatal(
          source,
          0,
          "this is version "
              + version.asText("(none)")
              + " of the format, and this program reads versions "
              + BEFORE
              + " and "
              + VERSION,
          "use the version of the program that wrote it, or run `twinrig study` again");
    }
    checkUnchanged(text, source);
    return translation(root);
  }

  private static void checkUnchanged(String text, String source) throws UnusableInput {
    StringBuilder others = new StringBuilder();
    List<String> found = new ArrayList<>();
    for (String line : text.lines().toList()) {
      Matcher checksum = CHECKSUM.matcher(line);
      if (checksum.matches()) {
        found.add(checksum.group(1));
      } else {
        others.append(line).append('\n');
      }
    }
    if (found.size() != 1) {
      throw UnusableInput.fatal(
          source, 0, "the file has no line with its checksum, `sha256`", AGAIN);
    }
    if (!found.get(0).equals(checksum(others.toString()))) {
      throw UnusableInput.fatal(
          source,
          0,
          "the file was damaged or changed since it was written: `sha256` differs",
          AGAIN);
    }
  }

  private static String checksum(String text) {
    return Sha256.hex(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Translation translation(JsonPart root) throws UnusableInput {
    BandGrid grid = grid(root.child("grid"));
    double confidence = root.number("confidence", NumberRange.CONFIDENCE);
    int minUnits =
        root.whole(
            "min_units", (int) NumberRange.MIN_UNITS.least(), (int) NumberRange.MIN_UNITS.most());
    JsonPart tolerance = root.child("tolerance");
    DbLimit reliable = limit(tolerance, "reliable");
    DbLimit caution = limit(tolerance, "caution");
    double equivalenceDb = tolerance.number("equivalence_db", NumberRange.LIMIT_DB);
    List<TransferFunction> kinds = new ArrayList<>();
    List<LevelShift> shifts = new ArrayList<>();
    for (JsonPart part : root.list("kinds")) {
      TransferFunction kind = kind(part, grid, confidence);
      if (kinds.stream().anyMatch(k -> k.kind().equals(kind.kind()))) {
        throw part.amiss("is there twice: `" + kind.kind() + "`");
      }
      if (part.has("too_few_units") != kind.units() < minUnits) {
        throw part.amiss("has a `too_few_units` that does not go with `min_units`");
      }
      kinds.add(kind);
      if (part.has("level_shift")) {
        Fit fit = new Fit(kind.units(), confidence);
        if (fit.units() < Settings.FEWEST_UNITS) {
          throw part.amiss("has a `level_shift`, but fewer than 3 `unit_names`");
        }
        shifts.add(shift(part.child("level_shift"), kind.kind(), fit));
      }
    }
    if (kinds.isEmpty()) {
      throw root.child("kinds").amiss("is empty");
    }
    return new Translation(
        OriginNode.read(root.child("study")),
        HandlingNode.anchor(root.child("anchor"), grid.perOctave()),
        grid,
        confidence,
        tolerance.made(() -> new Tolerance(reliable, caution, equivalenceDb)),
        minUnits,
        HandlingNode.read(root.child("handling")),
        kinds,
        shifts);
  }

  /** The bands lie where study.yaml may have them. */
  private static BandGrid grid(JsonPart part) throws UnusableInput {
    int perOctave = part.whole("per_octave", 1, 48);
    int first = part.whole("first_band", -MOST_BANDS, MOST_BANDS);
    int count = part.whole("bands", 1, MOST_BANDS);
    List<Band> bands = new ArrayList<>();
    boolean possible = BandGrid.SUPPORTED_PER_OCTAVE.contains(perOctave);
    for (int k = 0; possible && k < count; k++) {
      bands.add(Band.ofIndex(first + k, perOctave));
      possible =
          BandGrid.holds(
              bands.get(k).midHz(), NumberRange.HZ.least(), NumberRange.HZ.most(), perOctave);
    }
    if (!possible) {
      throw part.amiss("is not one that a study can have");
    }
    return new BandGrid(bands);
  }

  private static TransferFunction kind(JsonPart part, BandGrid grid, double confidence)
      throws UnusableInput {
    List<String> unitNames = new ArrayList<>();
    for (JsonPart name : part.list("unit_names")) {
      if (unitNames.contains(name.text())) {
        throw name.amiss("is there twice: `" + name.text() + "`");
      }
      unitNames.add(name.text());
    }
    List<JsonPart> bands = part.list("bands");
    if (bands.size() != grid.size()) {
      throw part.child("bands").amiss("must have one entry for each band of the grid");
    }
    List<MarkedBand> marked = new ArrayList<>();
    for (int b = 0; b < grid.size(); b++) {
      marked.add(band(bands.get(b), grid, b, new Fit(unitNames.size(), confidence)));
    }
    String name = part.text("kind");
    Optional<KindProfile> profile =
        part.has("old_graphs")
            ? Optional.of(ProfileNode.read(part.child("old_graphs"), name, grid))
            : Optional.empty();
    return new TransferFunction(name, unitNames, grid, marked, profile);
  }

  /** What the estimates of a kind have in common. */
  private record Fit(int units, double confidence) {}

  private static DbLimit limit(JsonPart part, String name) throws UnusableInput {
    List<DbLimit.Step> read =
        part.list(
            name,
            step ->
                new DbLimit.Step(
                    step.number("from_hz", STEP_HZ), step.number("db", NumberRange.LIMIT_DB)));
    return part.child(name).made(() -> new DbLimit(read));
  }

  private static MarkedBand band(JsonPart part, BandGrid grid, int b, Fit fit)
      throws UnusableInput {
    List<Reason> reasons =
        part.list("reasons", reason -> constant(reason, Reason.values(), Reason::word));
    BandOutcome outcome = outcome(part, grid, b, fit);
    Mark mark = constant(part.child("mark"), Mark.values(), Mark::word);
    if (outcome instanceof BandOutcome.NotFitted && mark != Mark.UNRELIABLE) {
      throw part.amiss("has no estimate, but is marked `" + mark.word() + "`");
    }
    return part.made(() -> new MarkedBand(outcome, mark, reasons));
  }

  private static BandOutcome outcome(JsonPart part, BandGrid grid, int b, Fit fit)
      throws UnusableInput {
    Band band = grid.band(b);
    if (Math.abs(part.number("band_hz", BAND_HZ) / band.midHz() - 1) > 1e-9) {
      throw part.child("band_hz").amiss("is not that of the grid");
    }
    if (!part.has("model")) {
      int units = part.whole("units", 0, Settings.FEWEST_UNITS - 1);
      return new BandOutcome.NotFitted(
          band,
          units,
          units == 0 ? BandOutcome.Why.NO_DATA : BandOutcome.Why.FEWER_THAN_THREE_UNITS);
    }
    if (fit.units() < Settings.FEWEST_UNITS) {
      throw part.amiss("has an estimate, but the kind has fewer than 3 `unit_names`");
    }
    int units = part.whole("units", Settings.FEWEST_UNITS, fit.units());
    BandOutcome.Model model =
        constant(part.child("model"), BandOutcome.Model.values(), BandOutcome.Model::word);
    Optional<WindowRule> window =
        model == BandOutcome.Model.AVERAGE
            ? Optional.of(WindowNode.read(part.child("window"), grid.size()))
            : Optional.empty();
    return new BandOutcome.Fitted(
        band,
        new RandomEffects.Result(
            part.number("offset_db", LEVEL_DB),
            part.number("se_db", ERROR_DB),
            part.number("unit_variance_db2", VARIANCE_DB2),
            units,
            fit.confidence(),
            part.number("ci_half_db", ERROR_DB)),
        part.number("sim_half_db", ERROR_DB),
        new BandOutcome.Prediction(
            window,
            part.number("prediction_half_db", ERROR_DB),
            errors(part.child("offset_errors")),
            errors(part.child("errors"))),
        new BandOutcome.Scatter(
            part.number("seating_variance_db2", VARIANCE_DB2),
            part.optional("seat_variance_from_db2", VARIANCE_DB2),
            part.optional("seat_variance_to_db2", VARIANCE_DB2),
            part.number("seatings_from", SEATINGS)),
        new BandOutcome.UnitSpread(
            part.number("old_mean_db", LEVEL_DB),
            part.number("old_sd_db", ERROR_DB),
            part.number("unit_step_db", ERROR_DB)));
  }

  private static <T> T constant(JsonPart part, T[] all, Function<T, String> word)
      throws UnusableInput {
    for (T each : all) {
      if (part.node().isTextual() && word.apply(each).equals(part.node().asText())) {
        return each;
      }
    }
    throw part.amiss("is `" + part.node().asText() + "`, which this program does not know");
  }
}
