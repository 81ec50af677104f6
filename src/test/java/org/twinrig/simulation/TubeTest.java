package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Tubes and cavities against closed forms of acoustics textbooks. */
class TubeTest {
  private static final double RADIUS_M = 0.00375;
  private static final double LENGTH_M = 0.025;

  /** Input impedance of a closed lossless tube: {@code -j(ρc/S)·cot kl} (Beranek and Mellow). */
  @Test
  void closedLosslessTubeHasTheImpedanceOfTheClosedForm() {
    Tube tube = new Tube(LENGTH_M, RADIUS_M);
    for (double hz : new double[] {100, 1000, 2500, 5000, 9000, 15_000}) {
      double omega = 2 * Math.PI * hz;
      Complex found =
          TwoPortTest.impedance(lossless(tube, omega).upstream(TwoPort.Wave.on(Complex.ZERO)));
      double kl = omega / Air.SOUND_SPEED * LENGTH_M;
      double expected = -Air.DENSITY * Air.SOUND_SPEED / tube.areaM2() / Math.tan(kl);
      assertEquals(0, found.re(), 1e-6 * Math.abs(expected));
      assertEquals(expected, found.im(), 1e-9 * Math.abs(expected));
    }
  }

  /** A tube closed at one end resonates at c/4L: its input reactance changes sign there. */
  @Test
  void quarterWaveResonanceLiesAtTheSpeedOfSoundOverFourLengths() {
    double expectedHz = Air.SOUND_SPEED / (4 * LENGTH_M);
    Tube tube = new Tube(LENGTH_M, RADIUS_M);
    assertTrue(reactance(lossless(tube, 2 * Math.PI * expectedHz * 0.9999)) < 0);
    assertTrue(reactance(lossless(tube, 2 * Math.PI * expectedHz * 1.0001)) > 0);
  }

  /** Losses slow the wave: the resonance of a real tube lies lower, by about 1.045/r_v. */
  @Test
  void lossesLowerTheResonanceByTheirShareOfThePhaseVelocity() {
    double losslessHz = Air.SOUND_SPEED / (4 * LENGTH_M);
    double series = RADIUS_M * Math.sqrt(Air.DENSITY * 2 * Math.PI * losslessHz / Air.VISCOSITY);
    double expectedHz = losslessHz / (1 + 1.045 / series);
    Tube tube = new Tube(LENGTH_M, RADIUS_M);
    assertTrue(reactance(tube.at(2 * Math.PI * expectedHz * 0.997)) < 0);
    assertTrue(reactance(tube.at(2 * Math.PI * expectedHz * 1.003)) > 0);
  }

  /**
   * Attenuation in a wide tube after Kirchhoff: {@code α = (ω/c)·(1 + (γ-1)/√Pr)/(√2·r_v)} with γ =
   * 1.402 and Pr = 0.71 (Kinsler, Frey, Coppens and Sanders, Fundamentals of Acoustics, chapter 8,
   * from memory).
   */
  @Test
  void attenuationOfAWideTubeIsKirchhoffs() {
    double omega = 2 * Math.PI * 1000;
    double radiusM = 0.05;
    double lengthM = 10;
    double series = radiusM * Math.sqrt(Air.DENSITY * omega / Air.VISCOSITY);
    double expected =
        omega / Air.SOUND_SPEED * (1 + 0.402 / Math.sqrt(0.71)) / (Math.sqrt(2) * series);
    Complex ratio = new Tube(lengthM, radiusM).at(omega).a();
    // a = cosh(α+jβ)l, so |a|² = sinh²αl + cos²βl.
    double phase = omega / Air.SOUND_SPEED * (1 + 1.045 / series) * lengthM;
    double sinhSquared = ratio.power() - Math.cos(phase) * Math.cos(phase);
    double alphaM = Math.log(Math.sqrt(sinhSquared) + Math.sqrt(1 + sinhSquared)) / lengthM;
    assertEquals(expected, alphaM, 0.02 * expected);
  }

  /** Helmholtz: a neck (mass ρl/S) on a cavity (V/ρc²) resonates at {@code (c/2π)·√(S/(Vl))}. */
  @Test
  void neckOnACavityResonatesWhereHelmholtzSays() {
    Tube neck = new Tube(0.004, 0.002);
    double volumeM3 = 5e-6;
    double expectedHz =
        Air.SOUND_SPEED / (2 * Math.PI) * Math.sqrt(neck.areaM2() / (volumeM3 * 0.004));
    assertTrue(neckReactance(neck, volumeM3, expectedHz * 0.99) < 0);
    assertTrue(neckReactance(neck, volumeM3, expectedHz * 1.01) > 0);
    double mass = Air.DENSITY * 0.004 / neck.areaM2();
    Branch branch = new Branch(1e5, mass, Air.compliance(volumeM3));
    assertEquals(0, branch.impedance(2 * Math.PI * expectedHz).im(), 1e-6 * mass * expectedHz);
  }

  @Test
  void aTubeNeedsARadius() {
    assertThrows(IllegalArgumentException.class, () -> new Tube(0.01, 0));
    assertThrows(IllegalArgumentException.class, () -> new Tube(-1e-9, 0.001));
    assertEquals(0, new Tube(0, 0.001).lengthM());
  }

  private static double neckReactance(Tube neck, double volumeM3, double hz) {
    double omega = 2 * Math.PI * hz;
    Complex cavity = new Complex(0, omega * Air.compliance(volumeM3));
    return TwoPortTest.impedance(lossless(neck, omega).upstream(TwoPort.Wave.on(cavity))).im();
  }

  private static TwoPort lossless(Tube tube, double omega) {
    Complex impedance = new Complex(Air.DENSITY * Air.SOUND_SPEED / tube.areaM2(), 0);
    return Tube.line(impedance, 0, omega / Air.SOUND_SPEED * tube.lengthM());
  }

  private static double reactance(TwoPort tube) {
    return TwoPortTest.impedance(tube.upstream(TwoPort.Wave.on(Complex.ZERO))).im();
  }
}
