package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.band.FrequencyRange;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.Sweep;

class SettingsTest {
  private static final DbLimit STEPS =
      new DbLimit(List.of(new DbLimit.Step(100, 1), new DbLimit.Step(4000, 2.5)));

  @Test
  void aLimitHoldsFromItsStepOnAndBelowTheFirst() {
    assertEquals(1, STEPS.atHz(20));
    assertEquals(1, STEPS.atHz(3999.9));
    assertEquals(2.5, STEPS.atHz(4000));
    assertEquals(2.5, STEPS.atHz(20_000));
    assertEquals(1, STEPS.smallestDb());
    assertEquals(3, DbLimit.everywhere(3).atHz(1e-3));
  }

  @Test
  void limitsRefuseNonsense() {
    assertThrows(IllegalArgumentException.class, () -> new DbLimit(List.of()));
    assertThrows(IllegalArgumentException.class, () -> DbLimit.everywhere(0));
    assertThrows(IllegalArgumentException.class, () -> DbLimit.everywhere(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> STEPS.atHz(Double.NaN));
    DbLimit.Step step = new DbLimit.Step(100, 1);
    assertThrows(IllegalArgumentException.class, () -> new DbLimit(List.of(step, step)));
  }

  @Test
  void cautionMayEqualReliableButNowhereLieBelow() {
    assertEquals(STEPS, new Tolerance(STEPS, STEPS, 0.5).caution());
    assertThrows(
        IllegalArgumentException.class, () -> new Tolerance(STEPS, DbLimit.everywhere(2.4), 0.5));
    assertThrows(
        IllegalArgumentException.class, () -> new Tolerance(DbLimit.everywhere(1.1), STEPS, 0.5));
    assertThrows(
        IllegalArgumentException.class, () -> new Tolerance(STEPS, DbLimit.everywhere(2.5), 0));
  }

  @Test
  void confidenceAndRangesRefuseTheirBounds() {
    Settings settings = Settings.defaults();
    assertThrows(IllegalArgumentException.class, () -> settings.with(Setting.CONFIDENCE, 0.0));
    assertThrows(IllegalArgumentException.class, () -> settings.with(Setting.CONFIDENCE, 1.0));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(1000, 1000));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(0, 1000));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new DeclaredZone(" ", "plate", 1, 2));
    assertThrows(IllegalArgumentException.class, () -> new DeclaredZone("z", "plate", 2, 1));
  }

  @Test
  void everyChangeKeepsTheRest() {
    Settings settings = Settings.defaults();
    Settings changed =
        settings
            .with(Setting.SEED, 9L)
            .with(Setting.MODEL, PredictionModel.OFFSET)
            .with(Setting.SWEEP, Optional.of(new Sweep(10, 22_000, 10, 0, 0)));
    assertEquals(9, changed.seed());
    assertEquals(PredictionModel.OFFSET, changed.get(Setting.MODEL));
    assertEquals(new Sweep(10, 22_000, 10, 0, 0), changed.sound().sweep().orElseThrow());
    assertNotEquals(settings, changed);
    assertEquals(
        settings,
        changed
            .with(Setting.SEED, 1L)
            .with(Setting.MODEL, PredictionModel.AVERAGE)
            .with(Setting.SWEEP, Optional.empty()));
  }

  /** Whatever is changed must be read back from what the settings page and run.json say of it. */
  @Test
  void everyValueInForceIsWrittenAsStudyYamlTakesIt(@TempDir Path folder) throws Exception {
    LabFolder lab = LabFolder.in(folder);
    Settings read = StudyReader.read(lab.study()).value().settings();
    StudyText yaml = new StudyText(Files.readString(lab.study().resolve("study.yaml")));
    for (Setting<?> setting : Setting.ALL) {
      if (setting.value(read) != null) {
        yaml = yaml.with(setting.key(), StudyText.flow(setting.value(read)));
      }
    }
    lab.write("study.yaml", yaml.text());
    assertEquals(read, StudyReader.read(lab.study()).value().settings());
  }

  @Test
  void valuesInForceAreToldInWords(@TempDir Path folder) throws Exception {
    Study study = StudyReader.read(LabFolder.in(folder).study()).value();
    Settings impulses = study.settings().with(Setting.IMPULSE, new ImpulseWindow(1, 150, 5));
    assertEquals("impulse responses", Setting.SWEEP.words(study.withSettings(impulses)));
    assertEquals(
        "from 1.0 ms before to 150.0 ms after the onset, ends of 5.0 ms",
        Setting.IMPULSE.words(study.withSettings(impulses)));
    Study swept =
        study.withSettings(
            impulses.with(Setting.SWEEP, Optional.of(new Sweep(20, 20_000, 1, 0, 0))));
    assertEquals(
        "recordings of a sweep from 20 Hz to 20 kHz in 1.00 s", Setting.SWEEP.words(swept));
    assertEquals(
        "from 50.2 ms before to 150.0 ms after the onset, ends of 5.0 ms",
        Setting.IMPULSE.words(swept));
    assertEquals(
        "reliable: half-width up to 1.0 dB at first, 2.0 dB from 4 kHz; caution: half-width up to"
            + " 4.0 dB; equivalent: mean difference up to 0.4 dB",
        Setting.TOLERANCE.words(study));
    assertEquals("canal entrance resonance: 8 kHz to 10 kHz", Setting.ZONES.words(study));
    assertEquals(
        "graphs that lose at most 0.5 octaves of 200 Hz to 8 kHz", Setting.PUBLISHING.words(study));
    assertEquals("smoothed to 1/24 octave", Setting.CAPTURE_SMOOTHING.words(study));
    assertEquals("none", Setting.CHECK_UNIT.words(study));
    assertEquals(
        "0 dB beside the calibrator's own limit", Setting.MICROPHONE_DRIFT_DB.words(study));
  }
}
