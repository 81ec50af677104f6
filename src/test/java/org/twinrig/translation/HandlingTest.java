package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.Dense;
import org.twinrig.band.FrequencyRange;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;

/** How graphs are taken and given: as a file, and what sides and seatings do to an interval. */
class HandlingTest {
  private static SmallStudy study;

  @TempDir private Path folder;

  @BeforeAll
  static void analyse() throws UnusableInput {
    study = SmallStudy.of(7, 3, Settings.defaults().with(Setting.MODEL, PredictionModel.OFFSET));
  }

  private static Translation handled() {
    ReferenceCurve old =
        new ReferenceCurve(
            "old.csv",
            Optional.of(new Smoothing(2)),
            Dense.curve(new double[] {20, 1000, 20_000}, new double[] {1, 0, -3.25}));
    ReferenceCurve now =
        new ReferenceCurve(
            "new.csv",
            Optional.empty(),
            Dense.curve(new double[] {20, 20_000}, new double[] {1, -3}));
    return study
        .translation()
        .withHandling(
            new Translation.Handling(
                new Smoothing(12),
                1.5,
                new PublishingRule(new FrequencyRange(200, 8000), 0.5),
                Optional.of(old),
                Optional.of(now)));
  }

  @Test
  void itSurvivesItsFileAndTheSchema() throws IOException, UnusableInput {
    String text = TranslationFile.text(handled());
    Path file = folder.resolve("translation.json");
    Files.writeString(file, text, StandardCharsets.UTF_8);
    assertEquals(handled(), TranslationFile.read(file, "translation.json"));
    try (InputStream schema =
        TranslationFile.class.getResourceAsStream("translation.schema.json")) {
      assertEquals(
          Set.of(),
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
              .getSchema(schema)
              .validate(JsonMapper.builder().build().readTree(text)));
    }
  }

  @Test
  void aDamagedPartIsNamed() throws IOException {
    String text = TranslationFile.text(handled());
    List<List<String>> damages =
        List.of(
            List.of(
                "\"1/12\"",
                "\"1/99\"",
                "`handling.capture_smoothing` is `1/99`, no smoothing this program knows"),
            List.of(
                "\"sides_per_seating\" : 1.5",
                "\"sides_per_seating\" : 3.0",
                "`handling.sides_per_seating` is 3.0, and not a number of sides from 1 to 2"),
            List.of(
                "\"lost_octaves\" : 0.5",
                "\"lost_octaves\" : \"few\"",
                "`handling.publishing.lost_octaves` must be a number"));
    for (List<String> damage : damages) {
      Path file = folder.resolve("translation.json");
      Files.writeString(file, Sealed.text(text.replace(damage.get(0), damage.get(1))));
      assertEquals(
          "translation.json: "
              + damage.get(2)
              + "; give the translation.json that `twinrig study` wrote, unchanged",
          assertThrows(UnusableInput.class, () -> TranslationFile.read(file, "translation.json"))
              .problems()
              .get(0)
              .text());
    }
  }

  @Test
  void aGraphOfOneSideCountsAsHalfASeatingOfTwo() {
    assertEquals(1.5, averaged(3, 1).asSeatingsOf(2));
    assertEquals(3, averaged(3, 2).asSeatingsOf(2));
    assertEquals(6, averaged(3, 2).asSeatingsOf(1));
    assertEquals(3, CatalogueEntry.Averaged.overSeatings(3).asSeatingsOf(2));
    assertEquals(
        1, new CatalogueEntry.Averaged(OptionalInt.empty(), OptionalInt.empty()).asSeatingsOf(2));
  }

  private static CatalogueEntry.Averaged averaged(int seatings, int sides) {
    return new CatalogueEntry.Averaged(OptionalInt.of(seatings), OptionalInt.of(sides));
  }

  /** {@code t_ν·√(s² + S_A·max(0, 1/m - 1/ñ_A))} with m in seatings of the study. */
  @Test
  void fewerSidesWidenTheInterval() {
    Translation two =
        study
            .translation()
            .withHandling(
                new Translation.Handling(
                    Smoothing.NONE,
                    2,
                    PublishingRule.standard(),
                    Optional.empty(),
                    Optional.empty()));
    CatalogueEntry oneSide =
        new CatalogueEntry(
            "a",
            "a",
            "in-ear",
            "a.csv",
            averaged(1, 1),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            "",
            "",
            2);
    TranslatedGraph graph = new Translator(two).apply(oneSide, study.old().get(0));
    for (int b = 0; b < graph.bands().size(); b++) {
      BandOutcome.Fitted f = (BandOutcome.Fitted) two.kinds().get(0).bands().get(b).outcome();
      BandOutcome.Errors errors = f.prediction().errors();
      double seating = f.scatter().seatVarianceFrom().orElseThrow();
      assertEquals(
          StudentT.twoSided(0.95, errors.degreesOfFreedom())
              * Math.sqrt(errors.varianceDb2() + seating * (2 - 1 / f.scatter().seatingsFrom())),
          graph.bands().get(b).predicted().orElseThrow().halfDb(),
          1e-9);
    }
  }
}
