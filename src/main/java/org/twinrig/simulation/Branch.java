package org.twinrig.simulation;

import org.twinrig.internal.Checks;

/**
 * An acoustic resistance (Pa·s/m³) and mass (kg/m⁴), 0 or more, and compliance (m³/Pa, above 0) in
 * a row: a side resonator or a membrane, or a leak, whose compliance is infinite as nothing closes
 * it.
 */
record Branch(double resistance, double mass, double compliance) {

  Branch {
    Checks.notNegative(resistance, "an acoustic resistance");
    Checks.notNegative(mass, "an acoustic mass");
    if (!(compliance > 0)) {
      throw new IllegalArgumentException("a compliance must be above 0, but is " + compliance);
    }
  }

  /** An opening to the ambient air. */
  static Branch opening(double resistance, double mass) {
    return new Branch(resistance, mass, Double.POSITIVE_INFINITY);
  }

  /** A resonator from its compliance in m³/Pa and what is heard of it. */
  static Branch resonant(double complianceM3PerPa, double resonanceHz, double quality) {
    double omega = 2 * Math.PI * resonanceHz;
    double mass = 1 / (omega * omega * complianceM3PerPa);
    return new Branch(omega * mass / quality, mass, complianceM3PerPa);
  }

  /** {@code R + jωM + 1/(jωC)}, Pa·s/m³. */
  Complex impedance(double omega) {
    return new Complex(resistance, omega * mass - 1 / (omega * compliance));
  }

  Complex admittance(double omega) {
    return impedance(omega).reciprocal();
  }
}
