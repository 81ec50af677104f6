package org.twinrig.simulation;

import java.util.Arrays;

/**
 * The chain from a unit's source to a fixture's microphone, solved at every frequency of an axis.
 *
 * <p>From the ear outwards, unit pressure at the microphone is carried upstream through the ear
 * load, the canal, the leak and front volume, and the source impedance; its inverse times the
 * source pressure is the pressure the microphone sees:
 *
 * <pre>
 * source pressure - source impedance -+- front volume -[nozzle]-+- leak - canal - ear load (mic)
 * </pre>
 *
 * Cross modes multiply the transfer between front volume and canal.
 */
final class Chain {
  private final double[] hz;
  private final FittedUnit fitted;
  private final TwoPort.Wave[] load;
  private final Complex[] sourcePressure;
  private final Complex[] sourceImpedance;
  private final TwoPort[] nozzle;

  /** The chain of a unit on the fixture of a bench. */
  Chain(Bench bench, FittedUnit fitted) {
    this.hz = bench.hz();
    this.load = bench.load();
    this.fitted = fitted;
    this.sourcePressure = new Complex[hz.length];
    this.sourceImpedance = new Complex[hz.length];
    this.nozzle = new TwoPort[hz.length];
    SimulatedUnit unit = fitted.unit();
    for (int i = 0; i < hz.length; i++) {
      double omega = 2 * Math.PI * hz[i];
      sourcePressure[i] = unit.sourcePressure(hz[i]);
      sourceImpedance[i] = unit.source().impedance(omega);
      nozzle[i] = unit.nozzle().at(omega);
    }
  }

  /**
   * Pressure at the microphone for one seating, relative to the unit's 0 dB, one value per
   * frequency.
   */
  Complex[] pressure(FittedUnit.Seated seated) {
    Complex[] pressure = new Complex[hz.length];
    double[] gains = seated.modes().stream().mapToDouble(Mode::gain).toArray();
    for (int i = 0; i < hz.length; i++) {
      pressure[i] = pressure(i, seated, gains);
    }
    return pressure;
  }

  /** Level at the microphone for one seating, dB re the unit's 0 dB. */
  double[] levelsDb(FittedUnit.Seated seated) {
    return Arrays.stream(pressure(seated)).mapToDouble(Complex::decibels).toArray();
  }

  private Complex pressure(int i, FittedUnit.Seated seated, double[] gains) {
    double omega = 2 * Math.PI * hz[i];
    TwoPort.Wave wave = seated.canal().at(omega).upstream(load[i]);
    if (!fitted.inserted()) {
      wave = TwoPort.series(openEnd(omega, seated.canal())).upstream(wave);
    }
    wave = wave.shuntedBy(seated.leak().admittance(omega));
    if (fitted.inserted()) {
      wave = nozzle[i].upstream(wave);
    }
    wave = wave.shuntedBy(new Complex(0, omega * Air.compliance(seated.frontM3())));
    Complex upstream = wave.pressure().plus(sourceImpedance[i].times(wave.flow()));
    Complex pressure = sourcePressure[i].over(upstream);
    for (int m = 0; m < gains.length; m++) {
      pressure = pressure.times(seated.modes().get(m).factor(hz[i], gains[m]));
    }
    return pressure;
  }

  /**
   * Radiation impedance of the open canal entrance as a small opening in a baffle: {@code ρω²/(2πc)
   * + jω·8ρ/(3π²r)} (Beranek and Mellow, piston in an infinite baffle, {@code kr << 1}).
   */
  private static Complex openEnd(double omega, Tube canal) {
    double resistance = Air.DENSITY * omega * omega / (2 * Math.PI * Air.SOUND_SPEED);
    double mass = 8 * Air.DENSITY / (3 * Math.PI * Math.PI * canal.radiusM());
    return new Complex(resistance, omega * mass);
  }
}
