package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.RandomEffects;
import org.twinrig.translation.LevelShift;

class AnchorEffectTest {
  private static final BandGrid THIRDS = BandGrid.covering(20, 20_000, 3);

  /** -3 dB up to 200 Hz; in the bands from 315 Hz to 1 kHz 1, 1, 0, 0, 0 and 0.5 dB; above 7. */
  private static double meanDb(double hz) {
    if (hz < 210) {
      return -3;
    }
    if (hz < 260) {
      return 40; // 250 Hz belongs to neither
    }
    return hz < 450 ? 1 : hz < 900 ? 0 : hz < 1100 ? 0.5 : 7;
  }

  private static BandOutcome band(Band band, double missingHz) {
    if (band.lowerHz() < missingHz && missingHz < band.upperHz()) {
      return new BandOutcome.NotFitted(band, 2, BandOutcome.Why.FEWER_THAN_THREE_UNITS);
    }
    BandOutcome.Errors errors = new BandOutcome.Errors(1, 1, 5, 1);
    return new BandOutcome.Fitted(
        band,
        new RandomEffects.Result(meanDb(band.midHz()), 0.1, 0, 6, 0.95, 0.2),
        0.3,
        new BandOutcome.Prediction(Optional.empty(), 1, errors, errors),
        new BandOutcome.Scatter(0.1, OptionalDouble.empty(), OptionalDouble.empty(), 1),
        new BandOutcome.UnitSpread(0, 1, 0));
  }

  private static List<BandOutcome> bands(double missingHz) {
    return THIRDS.bands().stream().map(b -> band(b, missingHz)).toList();
  }

  private static AnchorEffect effect(double missingHz, Optional<LevelShift> shift) {
    return AnchorEffect.of("in-ear", bands(missingHz), shift);
  }

  private static LevelShift shift(double db) {
    return new LevelShift(
        "in-ear", new RandomEffects.Result(db, 0.1, 0, 6, 0.95, 0.2), 1, OptionalDouble.empty(), 0);
  }

  /** Less 2.5/6, 0.5/4 and 0.5 dB; calibrated, two dB more than lined up. */
  @Test
  void anotherAnchorTakesItsOwnMeanOff() {
    AnchorEffect effect = effect(0.1, Optional.of(shift(2)));
    assertEquals("in-ear", effect.kind());
    assertEquals(
        List.of("300 Hz to 1 kHz", "500 Hz to 1 kHz", "1 kHz"),
        AnchorEffect.ANCHORS.stream().map(a -> a.words()).toList());
    assertEquals(-3 - 2.5 / 6, effect.lined().get(0).orElseThrow(), 1e-9);
    assertEquals(-3 - 0.5 / 4, effect.lined().get(1).orElseThrow(), 1e-9);
    assertEquals(-3.5, effect.lined().get(2).orElseThrow(), 1e-9);
    assertEquals(-1, effect.calibrated().orElseThrow(), 1e-9);
    assertEquals(OptionalDouble.empty(), effect(0.1, Optional.empty()).calibrated());
  }

  /** A mean over the bands that happen to have an estimate would be of other bands. */
  @Test
  void aBandWithoutAnEstimateLeavesOutWhatNeedsIt() {
    AnchorEffect middle = effect(400, Optional.of(shift(2)));
    assertEquals(OptionalDouble.empty(), middle.lined().get(0));
    assertEquals(-3 - 0.5 / 4, middle.lined().get(1).orElseThrow(), 1e-9);
    AnchorEffect bass = effect(63, Optional.of(shift(2)));
    assertEquals(
        List.of(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
        bass.lined());
    assertEquals(OptionalDouble.empty(), bass.calibrated());
  }
}
