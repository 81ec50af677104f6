package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.spectrum.SoundContent;
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
    assertThrows(IllegalArgumentException.class, () -> settings.withConfidence(0));
    assertThrows(IllegalArgumentException.class, () -> settings.withConfidence(1));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(1000, 1000));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(0, 1000));
    assertThrows(IllegalArgumentException.class, () -> new FrequencyRange(1, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new DeclaredZone(" ", "plate", 1, 2));
    assertThrows(IllegalArgumentException.class, () -> new DeclaredZone("z", "plate", 2, 1));
  }

  @Test
  void everyChangeKeepsTheRest() {
    Settings settings = Settings.defaults();
    assertEquals(
        settings,
        settings
            .withConfidence(0.8)
            .withSeed(9)
            .withModel(PredictionModel.OFFSET)
            .withScreening(ScreeningMode.EXCLUDE)
            .withZones(List.of(new DeclaredZone("z", "plate", 1, 2)))
            .withConfidence(0.95)
            .withSeed(1)
            .withModel(PredictionModel.AUTO)
            .withScreening(ScreeningMode.SUGGEST)
            .withZones(List.of()));
    assertEquals(9, settings.withSeed(9).seed());
    assertEquals(PredictionModel.OFFSET, settings.withModel(PredictionModel.OFFSET).model());
    SoundContent swept = SoundContent.defaults().withSweep(new Sweep(10, 22_000, 10, 0, 0));
    assertEquals(swept, settings.withSound(swept).withSeed(9).sound());
    assertEquals(settings, settings.withSound(swept).withSound(SoundContent.defaults()));
    Settings classed = settings.withCalibratorClass(CalibratorClass.LS);
    assertEquals(
        classed, classed.withSeed(9).withGrid(settings.grid()).withConfidence(0.95).withSeed(1));
  }
}
