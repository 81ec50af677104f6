package org.twinrig.simulation;

import java.util.List;

/**
 * The inner end of an ear: tube sections from the reference plane inwards with side branches, read
 * by a microphone or felt by an eardrum at the far end.
 */
record EarLoad(List<Section> sections) {

  /** A tube and what branches off at its inner end. */
  record Section(Tube tube, List<Branch> branches) {}

  /**
   * An occluded-ear simulator of the type of IEC 60318-4: a cavity of 7.5 mm diameter (clause 4.2)
   * with two side resonators near 1.2 kHz and 3.5 kHz. Division of the cavity and the resonators
   * follow the lumped circuit published with that type (from memory); the two side compliances are
   * set so that the effective volume at 500 Hz comes to 1.26 cm³.
   */
  static EarLoad occludedEarSimulator() {
    double radius = 0.00375;
    return new EarLoad(
        List.of(
            new Section(new Tube(0.0030, radius), List.of(resonator(2.30e-12, 1210, 50.6e6))),
            new Section(new Tube(0.0048, radius), List.of(resonator(2.50e-12, 3500, 31.1e6))),
            new Section(new Tube(0.0048, radius), List.of())));
  }

  /**
   * An ear closer to a human one: a longer, slightly narrower canal ended by an eardrum (middle-ear
   * branch near 1 kHz) and soft tissue that yields below 200 Hz only. The size of a human ear, not
   * a copy of one device.
   */
  static EarLoad humanLike() {
    Branch middleEar = new Branch(36e6, 1800, 4.2e-12);
    Branch eardrum = new Branch(5e7, 300, 0.9e-12);
    // Yields with a corner at 1/(2πRC) = 150 Hz.
    Branch softTissue = new Branch(2.6e8, 0, 4.0e-12);
    return new EarLoad(
        List.of(
            new Section(new Tube(0.0070, 0.0037), List.of()),
            new Section(new Tube(0.0065, 0.0035), List.of(middleEar, eardrum, softTissue))));
  }

  private static Branch resonator(double compliance, double resonanceHz, double resistance) {
    double omega = 2 * Math.PI * resonanceHz;
    return new Branch(resistance, 1 / (omega * omega * compliance), compliance);
  }

  /** State at the reference plane for unit pressure at the far end. */
  TwoPort.Wave at(double omega) {
    TwoPort.Wave wave = TwoPort.Wave.on(Complex.ZERO);
    for (int s = sections.size() - 1; s >= 0; s--) {
      for (Branch branch : sections.get(s).branches()) {
        wave = wave.shuntedBy(branch.admittance(omega));
      }
      wave = sections.get(s).tube().at(omega).upstream(wave);
    }
    return wave;
  }
}
