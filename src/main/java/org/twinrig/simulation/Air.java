package org.twinrig.simulation;

/**
 * Air in a measurement room at 23 °C, 50 % relative humidity and 101.325 kPa, the reference
 * conditions of IEC 60318-4:2010.
 *
 * <p>Values from Beranek and Mellow, Acoustics: Sound Fields, Transducers and Vibration, 2nd ed.,
 * chapter 1 (static density and speed of sound), and Keefe, J. Acoust. Soc. Am. 75 (1984), 58-62
 * (viscosity); both from memory, rounded.
 */
final class Air {
  /** Density, kg/m³. */
  static final double DENSITY = 1.192;

  /** Speed of sound, m/s. */
  static final double SOUND_SPEED = 345.1;

  /** Shear viscosity, Pa·s. */
  static final double VISCOSITY = 1.83e-5;

  /** Adiabatic bulk modulus {@code ρc²}, Pa. */
  static final double BULK_MODULUS = DENSITY * SOUND_SPEED * SOUND_SPEED;

  private Air() {}

  /** Acoustic compliance of a rigid cavity in m³/Pa, {@code V/(ρc²)}. */
  static double compliance(double volumeM3) {
    return volumeM3 / BULK_MODULUS;
  }
}
