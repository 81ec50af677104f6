package org.twinrig.simulation;

/**
 * What an in-ear puts into the canal.
 *
 * @param tube the sound tube
 * @param meshResistance of the mesh at its mouth, Pa·s/m³
 * @param face the soft face of the tip, which resonates near 16 kHz and takes up what arrives there
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
