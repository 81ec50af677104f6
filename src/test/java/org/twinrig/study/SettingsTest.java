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

  @Test
  void resonancesAreSearchedByKind(@TempDir Path folder) throws Exception {
    FrequencyRange low = new FrequencyRange(4000, 15_000);
    FrequencyRange high = new FrequencyRange(5000, 12_000);
    assertEquals(low, Settings.defaults().resonanceSearch("In-ear, shallow, ANC on"));
    assertEquals(high, Settings.defaults().resonanceSearch("closed over-ear"));
    LabFolder lab = LabFolder.in(folder);
    Study one = StudyReader.read(lab.study()).value();
    assertEquals(new FrequencyRange(4000, 11_000), one.settings().resonanceSearch("in-ear"));
    assertEquals("4 kHz to 11 kHz", Setting.RESONANCE_SEARCH_HZ.words(one));
    lab.spoil(
        "study.yaml", "[4000, 11000]", "{ over-ear: [5000, 9000], open over-ear: [6000, 10000] }");
    Study some = StudyReader.read(lab.study()).value();
    assertEquals(List.of(), lab.problems());
    assertEquals(
        new FrequencyRange(6000, 10_000), some.settings().resonanceSearch("open over-ear"));
    assertEquals(
        new FrequencyRange(5000, 9000), some.settings().resonanceSearch("closed over-ear"));
    assertEquals(low, some.settings().resonanceSearch("in-ear"));
    assertEquals(high, some.settings().resonanceSearch("on-ear"));
    assertEquals(
        "in-ear 4 kHz to 15 kHz; open over-ear 6 kHz to 10 kHz; over-ear 5 kHz to 9 kHz; default"
            + " 5 kHz to 12 kHz",
        Setting.RESONANCE_SEARCH_HZ.words(some));
    assertEquals(
        "{ in-ear: [4000, 15000], open over-ear: [6000, 10000], over-ear: [5000, 9000], default:"
            + " [5000, 12000] }",
        StudyText.flow(Setting.RESONANCE_SEARCH_HZ.value(some.settings())));
  }

  @Test
  void aSearchForAKindThatIsNotThereIsNotedAndAWrongRangeRefused(@TempDir Path folder)
      throws Exception {
    LabFolder lab =
        LabFolder.in(folder)
            .spoil("study.yaml", "[4000, 11000]", "{ open over-aer: [5000, 9000] }");
    assertEquals(
        List.of(
            "NOTE study.yaml: `resonance_search_hz` names `open over-aer`, which is part of the name"
                + " of no kind here, and is not used; did you mean `open over-ear`? the kinds of"
                + " the study are `in-ear`, `open over-ear`"),
        lab.problems());
    assertEquals(
        List.of(
            "FATAL study.yaml:22: `resonance_search_hz.in-ear` runs from 9000 Hz to 5000 Hz; the"
                + " first frequency must be the lower one"),
        lab.spoil("study.yaml", "open over-aer: [5000, 9000]", "in-ear: [9000, 5000]").problems());
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
