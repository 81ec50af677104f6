package org.twinrig.simulation;

/**
 * One acoustic two-port at one frequency, as its chain (ABCD) matrix from the source side (1) to
 * the ear side (2): {@code p1 = a·p2 + b·U2}, {@code U1 = c·p2 + d·U2}, with sound pressures in Pa
 * and volume velocities in m³/s.
 *
 * <p>A reciprocal two-port has determinant 1. Source: Beranek and Mellow, 2nd ed., two-port
 * networks and transmission matrices.
 */
record TwoPort(Complex a, Complex b, Complex c, Complex d) {

  /** An impedance (Pa·s/m³) that the flow passes through. */
  static TwoPort series(Complex impedance) {
    return new TwoPort(Complex.ONE, impedance, Complex.ZERO, Complex.ONE);
  }

  /** An admittance (m³/(Pa·s)) that branches off to the ambient pressure or into a cavity. */
  static TwoPort shunt(Complex admittance) {
    return new TwoPort(Complex.ONE, Complex.ZERO, admittance, Complex.ONE);
  }

  /** This two-port followed, on its ear side, by another. */
  TwoPort then(TwoPort next) {
    return new TwoPort(
        a.times(next.a).plus(b.times(next.c)),
        a.times(next.b).plus(b.times(next.d)),
        c.times(next.a).plus(d.times(next.c)),
        c.times(next.b).plus(d.times(next.d)));
  }

  /** What must stand on the source side for a given state on the ear side. */
  Wave upstream(Wave ear) {
    return new Wave(
        a.times(ear.pressure()).plus(b.times(ear.flow())),
        c.times(ear.pressure()).plus(d.times(ear.flow())));
  }

  /** Sound pressure in Pa and volume velocity towards the ear in m³/s at one place. */
  record Wave(Complex pressure, Complex flow) {
    /** Unit pressure on a load of this admittance. */
    static Wave on(Complex admittance) {
      return new Wave(Complex.ONE, admittance);
    }

    /** The same place with an admittance branching off it. */
    Wave shuntedBy(Complex admittance) {
      return new Wave(pressure, flow.plus(pressure.times(admittance)));
    }
  }
}
