package org.twinrig.simulation;

import java.util.List;

/**
 * One side of a headphone as an acoustic source.
 *
 * <p>Its source impedance; the air between source and ear, m³; what an in-ear puts into the canal
 * (a cup has none in its chain); the resistance of its seal on a hard plate, Pa·s/m³; how much
 * deeper than the middle of its kind its tip goes, m; the maker's tuning, and the level at its 0
 * dB, dB SPL; cross modes in front of the ear; and how strongly it excites the concha against its
 * kind, in standard deviations.
 */
record SimulatedUnit(
    SimulatedKind kind,
    Branch source,
    double frontVolumeM3,
    Nozzle nozzle,
    double leakResistance,
    double depthM,
    Balance balance,
    double sensitivityDb,
    List<Mode> modes,
    double pinnaScore) {

  /**
   * What an in-ear puts into the canal: the sound tube, the resistance of the mesh at its mouth
   * (Pa·s/m³), and the soft face of the tip, which resonates near 16 kHz and takes up what arrives
   * there.
   */
  record Nozzle(Tube tube, double meshResistance, Branch face) {

    static Nozzle draw(Draws draws) {
      Tube tube = new Tube(draws.between(0.006, 0.011), draws.between(0.0010, 0.0016));
      double mesh = draws.logNormal(4.5e7, 0.35);
      Branch face = new Branch(draws.logNormal(1.6e7, 0.2), 300, draws.logNormal(3e-13, 0.15));
      return new Nozzle(tube, mesh, face);
    }

    /** From the front volume to the canal behind the tip. */
    TwoPort at(double omega) {
      return tube.at(omega)
          .then(TwoPort.series(new Complex(meshResistance, 0)))
          .then(TwoPort.shunt(face.admittance(omega)));
    }
  }

  /** What a tip plays into on a typical ear, for which its maker tunes it. */
  private static final double TYPICAL_EAR_M3 = 1.5e-6;

  /** A typical seal is between that on a plate and that on a head. */
  private static final double TYPICAL_SEAL = 0.5;

  /** One of its two sides: the same design, built twice. */
  SimulatedUnit side(Draws draws) {
    List<Mode> built =
        modes.stream()
            .map(mode -> mode.moved(draws.gaussian(0, 0.01), draws.gaussian(0, 0.3)))
            .toList();
    Branch driver =
        new Branch(
            draws.logNormal(source.resistance(), 0.03),
            draws.logNormal(source.mass(), 0.02),
            draws.logNormal(source.compliance(), 0.03));
    return new SimulatedUnit(
        kind,
        driver,
        frontVolumeM3,
        nozzle,
        draws.logNormal(leakResistance, 0.1),
        depthM,
        balance,
        sensitivityDb + draws.gaussian(0, 0.3),
        built,
        pinnaScore);
  }

  /**
   * The source pressure at a frequency: what the source must give, behind its impedance, for the
   * maker's tuning to come out on a typical ear.
   */
  Complex sourcePressure(double hz) {
    double omega = 2 * Math.PI * hz;
    Complex target = balance.at(hz);
    TwoPort.Wave wave = TwoPort.Wave.on(Complex.ZERO);
    if (kind.ranges().inserted()) {
      wave = wave.shuntedBy(new Complex(0, omega * Air.compliance(TYPICAL_EAR_M3)));
      wave = nozzle.at(omega).upstream(wave);
    } else {
      wave = wave.shuntedBy(new Complex(1 / (TYPICAL_SEAL * leakResistance), 0));
    }
    wave = wave.shuntedBy(new Complex(0, omega * Air.compliance(frontVolumeM3)));
    return TwoPort.series(source.impedance(omega)).upstream(wave).pressure().times(target);
  }
}
