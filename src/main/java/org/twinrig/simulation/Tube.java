package org.twinrig.simulation;

import org.twinrig.internal.Checks;

/**
 * A round tube with visco-thermal losses at its rigid wall.
 *
 * <p>Characteristic impedance and propagation constant after Keefe, J. Acoust. Soc. Am. 75 (1984),
 * 58-62, large-tube series in {@code r_v = r·√(ρω/η)} (coefficients from memory; he gives them for
 * 26.85 °C):
 *
 * <pre>
 * Re Zc = (ρc/S)(1 + 0.369/r_v)     Im Zc = -(ρc/S)(0.369/r_v + 1.149/r_v² + 0.303/r_v³)
 * β = (ω/c)(1 + 1.045/r_v)          α = (ω/c)(1.045/r_v + 1.080/r_v² + 0.750/r_v³)
 * </pre>
 *
 * <p>The series holds for {@code r_v > 2}; below, {@code r_v} is held at 2. That happens under 80
 * Hz in a nozzle of 0.5 mm radius, where so short a tube is a small mass and its loss does not
 * matter.
 *
 * @param lengthM length in m, 0 or more
 */
record Tube(double lengthM, double radiusM) {

  private static final double SMALLEST_SERIES_ARGUMENT = 2;

  Tube {
    Checks.notNegative(lengthM, "a tube's length in m");
    Checks.positive(radiusM, "a tube's radius in m");
  }

  double areaM2() {
    return Math.PI * radiusM * radiusM;
  }

  /** The chain matrix at an angular frequency in rad/s. */
  TwoPort at(double omega) {
    double series = radiusM * Math.sqrt(Air.DENSITY * omega / Air.VISCOSITY);
    double v = 1 / Math.max(SMALLEST_SERIES_ARGUMENT, series);
    double lossless = Air.DENSITY * Air.SOUND_SPEED / areaM2();
    Complex impedance =
        new Complex(lossless * (1 + 0.369 * v), -lossless * v * (0.369 + v * (1.149 + v * 0.303)));
    double wavenumber = omega / Air.SOUND_SPEED;
    double alpha = wavenumber * v * (1.045 + v * (1.080 + v * 0.750));
    return line(impedance, alpha * lengthM, wavenumber * (1 + 1.045 * v) * lengthM);
  }

  /** Uniform line: {@code a = d = cosh γl, b = Zc·sinh γl, c = sinh γl / Zc}. */
  static TwoPort line(Complex impedance, double attenuation, double phase) {
    double grow = Math.exp(attenuation);
    double cosh = (grow + 1 / grow) / 2;
    double sinh = (grow - 1 / grow) / 2;
    double cos = Math.cos(phase);
    double sin = Math.sin(phase);
    Complex ratio = new Complex(cosh * cos, sinh * sin);
    Complex slope = new Complex(sinh * cos, cosh * sin);
    return new TwoPort(ratio, impedance.times(slope), slope.over(impedance), ratio);
  }
}
