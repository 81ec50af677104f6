package org.twinrig.simulation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Laws every passive, reciprocal chain obeys, whatever its parts. */
class TwoPortTest {

  @Property(tries = 300)
  void everyChainIsReciprocal(
      @ForAll @DoubleRange(min = 10, max = 22_000) double hz,
      @ForAll @DoubleRange(min = 0.5, max = 30) double lengthMm,
      @ForAll @DoubleRange(min = 0.5, max = 20) double radiusMm,
      @ForAll @DoubleRange(min = 1e4, max = 1e9) double resistance) {
    double omega = 2 * Math.PI * hz;
    TwoPort chain = chain(omega, new Tube(lengthMm / 1000, radiusMm / 1000), resistance);
    Complex determinant = chain.a().times(chain.d()).plus(chain.b().times(chain.c()).times(-1));
    // ad and bc cancel: their size is the yardstick of rounding.
    double size = Math.sqrt(chain.a().times(chain.d()).power()) + 1;
    assertEquals(1, determinant.re(), 1e-12 * size);
    assertEquals(0, determinant.im(), 1e-12 * size);
  }

  @Property(tries = 300)
  void noPassiveLoadGivesPowerBack(
      @ForAll @DoubleRange(min = 80, max = 22_000) double hz,
      @ForAll @DoubleRange(min = 0.5, max = 30) double lengthMm,
      @ForAll @DoubleRange(min = 0.8, max = 20) double radiusMm,
      @ForAll @DoubleRange(min = 1e4, max = 1e9) double resistance) {
    double omega = 2 * Math.PI * hz;
    for (EarLoad load : new EarLoad[] {EarLoad.occludedEarSimulator(), EarLoad.humanLike()}) {
      TwoPort.Wave ear = load.at(omega);
      assertTrue(impedance(ear).re() >= 0);
      Complex seen =
          impedance(
              chain(omega, new Tube(lengthMm / 1000, radiusMm / 1000), resistance).upstream(ear));
      assertTrue(seen.re() >= 0, () -> "resistance " + seen.re());
    }
  }

  @Test
  void carryingAStateUpstreamIsTheMatrixProduct() {
    double omega = 2 * Math.PI * 3000;
    TwoPort first = new Tube(0.01, 0.002).at(omega);
    TwoPort second = TwoPort.series(new Complex(3e6, -2e7));
    TwoPort.Wave ear = TwoPort.Wave.on(new Complex(1e-8, 4e-8));
    TwoPort.Wave stepwise = first.upstream(second.upstream(ear));
    TwoPort.Wave atOnce = first.then(second).upstream(ear);
    assertEquals(atOnce.pressure().re(), stepwise.pressure().re(), 1e-12);
    assertEquals(atOnce.pressure().im(), stepwise.pressure().im(), 1e-12);
    assertEquals(atOnce.flow().re(), stepwise.flow().re(), 1e-18);
    assertEquals(atOnce.flow().im(), stepwise.flow().im(), 1e-18);
  }

  @Test
  void aBranchIsPassive() {
    assertThrows(IllegalArgumentException.class, () -> new Branch(-1, 0, 1e-12));
    assertThrows(IllegalArgumentException.class, () -> new Branch(0, -1, 1e-12));
    assertThrows(IllegalArgumentException.class, () -> new Branch(0, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new Branch(0, 0, Double.NaN));
    assertEquals(5e6, Branch.opening(5e6, 0).impedance(1000).re());
    assertEquals(0, Branch.opening(5e6, 0).impedance(1000).im());
  }

  private static TwoPort chain(double omega, Tube tube, double resistance) {
    return TwoPort.series(new Branch(resistance, 50, 1e-11).impedance(omega))
        .then(TwoPort.shunt(new Complex(0, omega * Air.compliance(2e-6))))
        .then(tube.at(omega))
        .then(TwoPort.shunt(Branch.opening(resistance, 10).admittance(omega)));
  }

  /** Impedance looking towards the ear, Pa·s/m³. */
  static Complex impedance(TwoPort.Wave wave) {
    return wave.pressure().over(wave.flow());
  }
}
