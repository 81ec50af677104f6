package org.twinrig.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * The pressure term against the physics it follows from: a piston that moves a volume dV in a
 * cavity V makes the sound pressure γ·p·dV/V, with γ = 1.402 for air (from memory).
 */
class CalibratorTest {
  private static Session session(Calibrator calibrator, OptionalDouble kPa, double read) {
    return new Session(
        "s", "d", "plate", 124, read, calibrator, kPa, OptionalDouble.empty(), "", "", 2);
  }

  @Test
  void theTermIsTheRatioOfTheSoundPressures() {
    double atReference = 1.402 * 101_325 * 3e-9 / 20e-6;
    for (double kPa : new double[] {60, 84.5, 95, 101.325, 104}) {
      double here = 1.402 * kPa * 1000 * 3e-9 / 20e-6;
      assertEquals(20 * Math.log10(here / atReference), Calibrator.pressureTermDb(kPa), 1e-12);
    }
    assertEquals(0, Calibrator.pressureTermDb(101.325));
    // Half the pressure is half the sound pressure, 6.02 dB less.
    assertEquals(-6.0206, Calibrator.pressureTermDb(101.325 / 2), 5e-5);
    assertThrows(IllegalArgumentException.class, () -> Calibrator.pressureTermDb(0));
  }

  /** At 1500 m, about 84.5 kPa, a good microphone reads 1.58 dB less and needs no correction. */
  @Test
  void onAMountainAPistonphoneIsSofterAndTheChainIsInOrder() {
    Session high = session(Calibrator.PISTONPHONE, OptionalDouble.of(84.5), 122.42);
    assertEquals(122.4228, high.calibratorTrueDb(), 1e-4);
    assertTrue(Math.abs(high.correctionDb()) < 0.01);
    Session controlled = session(Calibrator.LEVEL_CONTROLLED, OptionalDouble.of(84.5), 122.42);
    assertEquals(1.58, controlled.correctionDb(), 1e-9);
  }

  @Test
  void aPistonphoneNeedsThePressure() {
    assertThrows(
        IllegalArgumentException.class,
        () -> session(Calibrator.PISTONPHONE, OptionalDouble.empty(), 124));
  }
}
