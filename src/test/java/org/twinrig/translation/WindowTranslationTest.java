package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.analysis.Analysis;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Graphs translated where a study predicts by windows. */
class WindowTranslationTest {
  private static Translation translation;
  private static Response graph;

  @TempDir private Path folder;

  @BeforeAll
  static void study() throws UnusableInput {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(SimulatedKind.IN_EAR)
            .withUnitsPerKind(12)
            .withSeatings(3)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
            .withSeed(4)
            .draw();
    Study study = drawn.declared(Settings.defaults());
    translation = Analysis.of(study, drawn.captures(), "none", 2).translation();
    graph =
        drawn.captures().stream()
            .filter(c -> c.entry().fixture().equals(drawn.from().name()))
            .findFirst()
            .orElseThrow()
            .response();
  }

  private static CatalogueEntry entry(int seatings) {
    return CatalogueEntry.raw("a", "in-ear", seatings);
  }

  private static TranslatedGraph translate(Response response, int seatings) {
    return new Translator(translation).apply(entry(seatings), response);
  }

  /** Positions of bands that are predicted by a window. */
  private static List<Integer> windows() {
    List<Integer> windows =
        java.util.stream.IntStream.range(0, translation.grid().size())
            .filter(b -> fitted(b).prediction().window().isPresent())
            .boxed()
            .toList();
    assertTrue(windows.size() > 5, "windows: " + windows);
    return windows;
  }

  private static BandOutcome.Fitted fitted(int b) {
    return (BandOutcome.Fitted) translation.kinds().get(0).bands().get(b).outcome();
  }

  private static Response plus(Response response, double db, double fromHz, double toHz) {
    double[] hz = new double[response.size()];
    double[] level = new double[response.size()];
    for (int k = 0; k < hz.length; k++) {
      hz[k] = response.frequencyHz(k);
      level[k] = response.levelDb(k) + (hz[k] >= fromHz && hz[k] <= toHz ? db : 0);
    }
    return Response.copyOf(hz, level);
  }

  /** Windows look at the graph pinned to the anchor, so its level goes through unchanged. */
  @Test
  void theLevelOfAGraphGoesThrough() {
    TranslatedGraph plain = translate(graph, 3);
    TranslatedGraph louder = translate(plus(graph, 87.5, 0, 30_000), 3);
    for (int b = 0; b < translation.grid().size(); b++) {
      TranslatedBand.Predicted low = plain.bands().get(b).predicted().orElseThrow();
      TranslatedBand.Predicted high = louder.bands().get(b).predicted().orElseThrow();
      assertEquals(low.toDb() + 87.5, high.toDb(), 1e-9);
      assertEquals(low.halfDb(), high.halfDb());
      assertEquals(plain.bands().get(b).mark(), louder.bands().get(b).mark());
    }
  }

  /** A leak takes the bass away: the graph is like no unit of the study, as a whole. */
  @Test
  void aGraphUnlikeEveryUnitIsOutsideTheStudy() {
    for (TranslatedBand band : translate(plus(graph, -25, 0, 200), 3).bands()) {
      assertTrue(band.reasons().contains(Reason.OUTSIDE_THE_STUDY));
      assertEquals(Mark.UNRELIABLE, band.mark());
    }
    for (TranslatedBand band : translate(graph, 3).bands()) {
      assertFalse(band.reasons().contains(Reason.OUTSIDE_THE_STUDY), "a unit of the study itself");
    }
  }

  /**
   * Where a graph ends inside a window what the window says fades out band by band, and the larger
   * of its errors and the offset's counts.
   */
  @Test
  void whatAWindowSaysFadesOutTowardsTheEndOfAGraph() {
    int b =
        windows().stream()
            .filter(w -> translation.grid().band(w).midHz() > 4000)
            .findFirst()
            .orElseThrow();
    WindowRule window = fitted(b).prediction().window().orElseThrow();
    int last = window.predictors().get(window.predictors().size() - 1).band();
    double endHz = translation.grid().band(last).midHz();
    long points =
        java.util.stream.IntStream.range(0, graph.size())
            .filter(k -> graph.frequencyHz(k) <= endHz)
            .count();
    double[] hz = new double[(int) points];
    double[] db = new double[(int) points];
    for (int k = 0; k < points; k++) {
      hz[k] = graph.frequencyHz(k);
      db[k] = graph.levelDb(k);
    }
    TranslatedGraph ended = translate(Response.copyOf(hz, db), 3);
    Levels old = OldGraph.of(Response.copyOf(hz, db), translation).pinned().orElseThrow();
    TranslatedBand translated = ended.bands().get(b);
    TranslatedBand.Predicted predicted = translated.predicted().orElseThrow();
    BandOutcome.Fitted f = fitted(b);
    double expected = window.meanDb();
    for (WindowRule.Predictor p : window.predictors()) {
      expected += old.has(p.band()) ? p.coefficient() * (old.db(p.band()) - p.centreDb()) : 0;
    }
    assertFalse(window.covers(old));
    assertEquals(translated.fromDb().orElseThrow() + expected, predicted.toDb(), 1e-9);
    double variance =
        Math.max(f.prediction().offset().varianceDb2(), f.prediction().errors().varianceDb2());
    assertEquals(
        StudentT.twoSided(0.95, f.prediction().errors().degreesOfFreedom()) * Math.sqrt(variance),
        predicted.halfDb(),
        1e-9);
  }

  /** {@code t_ν·√(s² + cᵀ S_A c·max(0, 1/m - 1/ñ_A))}, and the interval over the whole curve. */
  @Test
  void fewerSeatingsWidenTheInterval() {
    for (int b : windows()) {
      BandOutcome.Fitted f = fitted(b);
      BandOutcome.Errors errors = f.prediction().errors();
      double t = StudentT.twoSided(0.95, errors.degreesOfFreedom());
      double whole = StudentT.twoSided(1 - 0.05 / translation.grid().size(), f.units() - 1);
      double seating = f.prediction().window().orElseThrow().seatingVariance().orElseThrow();
      double fewer = 1 - 1 / f.scatter().seatingsFrom();
      assertEquals(
          t * Math.sqrt(errors.varianceDb2() + seating * fewer),
          translate(graph, 1).bands().get(b).predicted().orElseThrow().halfDb(),
          1e-9);
      assertEquals(
          whole * Math.sqrt(errors.wholeVarianceDb2() + seating * fewer),
          translate(graph, 1).bands().get(b).predicted().orElseThrow().whole().halfDb(),
          1e-9);
      assertEquals(
          f.prediction().halfDb(),
          translate(graph, 3).bands().get(b).predicted().orElseThrow().halfDb(),
          1e-9);
    }
  }

  @Test
  void aTranslationSurvivesItsFile() throws IOException, UnusableInput {
    Path file = folder.resolve("translation.json");
    Files.writeString(file, TranslationFile.text(translation), StandardCharsets.UTF_8);
    assertEquals(translation, TranslationFile.read(file, "translation.json"));
  }

  /** The published schema accepts what is written, and refuses it with a part taken out. */
  @Test
  void theFileFollowsItsSchema() throws IOException {
    JsonSchema schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(TranslationFile.class.getResourceAsStream("translation.schema.json"));
    JsonNode file = JsonMapper.builder().build().readTree(TranslationFile.text(translation));
    assertEquals(Set.of(), schema.validate(file));
    JsonNode band = file.at("/kinds/0/bands/" + windows().get(0));
    ((ObjectNode) band).remove("window");
    assertFalse(schema.validate(file).isEmpty(), "a window model without its window");
    ((ObjectNode) band).put("model", "offset");
    assertEquals(Set.of(), schema.validate(file));
    ((ObjectNode) file).put("surprise", 1);
    assertFalse(schema.validate(file).isEmpty(), "a key nobody knows");
  }

  /** As the schema and studies/README.md tell others to compute it. */
  @Test
  void theChecksumIsThatOfStandardTools() throws Exception {
    Path file = folder.resolve("translation.json");
    Files.writeString(file, TranslationFile.text(translation));
    Process tools;
    try {
      tools =
          new ProcessBuilder("sh", "-c", "grep -v '^ *\"sha256\"' translation.json | sha256sum")
              .directory(folder.toFile())
              .start();
    } catch (IOException e) {
      assumeTrue(false, "no such tools here");
      return;
    }
    String sum = new String(tools.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assumeTrue(tools.waitFor() == 0 && sum.length() > 64, "no such tools here");
    assertTrue(
        Files.readString(file).contains("\n  \"sha256\" : \"" + sum.substring(0, 64) + "\",\n"),
        sum);
  }

  /** One digit of a level is enough, and a file that cannot tell is not believed. */
  @Test
  void aFileThatIsNotAsItWasWrittenIsRefused() throws IOException {
    String text = TranslationFile.text(translation);
    String again = "; copy it again from where `twinrig study` wrote it, or run that again";
    assertEquals(
        "t.json: the file was damaged or changed since it was written: `sha256` differs" + again,
        refusal(text.replaceFirst("(\"offset_db\" : -?[0-9]+\\.)[0-9]", "$17")));
    assertEquals(
        "t.json: the file has no line with its checksum, `sha256`" + again,
        refusal(text.replaceFirst("  \"sha256\".*\n", "")));
    assertEquals(
        "t.json: this is version 1 of the format, and this program reads versions 4 and 5; use the"
            + " version of the program that wrote it, or run `twinrig study` again",
        refusal(
            text.replaceFirst("  \"sha256\".*\n", "")
                .replace("\"version\" : 5", "\"version\" : 1")));
  }

  private String refusal(String text) throws IOException {
    Path file = Files.writeString(folder.resolve("changed.json"), text);
    return assertThrows(UnusableInput.class, () -> TranslationFile.read(file, "t.json"))
        .getMessage();
  }

  /** What a hand may do to the file, and what is said of it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"offset_db\" : | \"offset_db\" : 1e308, \"was\" : | `kinds[0].bands[0].offset_db` is 1.0E308, and not a level in dB from -600 to 600",
        "\"mean_db\" : | \"mean_db\" : -1e308, \"was\" : | `kinds[0].bands[W].window.mean_db` is -1.0E308, and not a level in dB from -600 to 600",
        "\"centre_db\" : | \"centre_db\" : 601, \"was\" : | `kinds[0].bands[W].window.predictors[0].centre_db` is 601, and not a level in dB from -600 to 600",
        "\"loo_rms_db\" : | \"loo_rms_db\" : 1e308, \"was\" : | `kinds[0].bands[0].offset_errors.loo_rms_db` is 1.0E308, and not a number in dB from 0 to 60000",
        "\"db\" : | \"db\" : 1e308, \"was\" : | `tolerance.reliable[0].db` is 1.0E308, and not a number in dB above 0, at most 100",
        "\"min_units\" : 5 | \"min_units\" : -1 | `min_units` must be a whole number from 3 to 1000000",
        "\"units\" : | \"units\" : 2, \"was\" : | `kinds[0].bands[0].units` must be a whole number from 3 to 12",
        "\"confidence\" : 0.95 | \"confidence\" : 1e-9 | `confidence` is 1.0E-9, and not a share from 0.5 to 0.9999, such as 0.95 for 95 %",
        "\"confidence\" : 0.95 | \"confidence\" : 95 | `confidence` is 95, and not a share from 0.5 to 0.9999, such as 0.95 for 95 %",
        "\"min_units\" : 5 | \"min_units\" : 5.5 | `min_units` must be a whole number from 3 to 1000000",
        "\"model\" : \"average\" | \"model\" : \"mirror\" | `kinds[0].bands[W].model` is `mirror`, which this program does not know",
        "\"band\" : | \"band\" : -0.5, \"was\" : | `kinds[0].bands[W].window.predictors[0].band` must be a whole number from 0 to LAST",
        "\"band\" : | \"band\" : 999, \"was\" : | `kinds[0].bands[W].window.predictors[0].band` must be a whole number from 0 to LAST",
        "\"band_hz\" : | \"band_hz\" : 12345, \"was\" : | `kinds[0].bands[0].band_hz` is not that of the grid",
        "\"spread\" : [ | \"spread\" : [ 1, | `kinds[0].bands[W].window` cannot be: one row of the spread is needed for each predictor",
        "\"unit_names\" : | \"unit_names\" : \"\", \"was\" : | `kinds[0].unit_names` must be a list",
        "\"shift_db\" : | \"shift_db\" : 601, \"was\" : | `kinds[0].level_shift.shift_db` is 601, and not a level in dB from -600 to 600",
        "\"first\" : | \"first\" : \"2 March\", \"was\" : | `study.sessions.first` is `2 March`, and not a day such as 2027-03-31",
        "\"usable\" : | \"usable\" : { \"from_hz\" : 9, \"to_hz\" : 8 }, \"was\" : | `study.from.usable` cannot be: a frequency range must satisfy 0 < from < to, but is 9.0 to 8.0 Hz",
        "\"seat_variance_from_db2\" : | \"seat_variance_from_db2\" : -9, \"was\" : | `kinds[0].bands[0].seat_variance_from_db2` is -9, and not a variance in dB² from 0 to 3.6e9"
      })
  void aDamagedFileIsRefused(String found, String put, String what) throws IOException {
    String text = TranslationFile.text(translation);
    assertTrue(text.contains(found), found);
    Path file = folder.resolve("translation.json");
    Files.writeString(
        file, Sealed.text(text.replaceFirst(Pattern.quote(found), Matcher.quoteReplacement(put))));
    UnusableInput refused =
        assertThrows(UnusableInput.class, () -> TranslationFile.read(file, "t.json"));
    String told = refused.problems().get(0).what();
    String last = String.valueOf(translation.grid().size() - 1);
    assertEquals(
        what.replace("LAST", last).replaceAll("\\[W]", "[" + windows().get(0) + "]"), told);
  }
}
