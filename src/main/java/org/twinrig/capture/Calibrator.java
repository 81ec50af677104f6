package org.twinrig.capture;

import java.util.Locale;
import org.twinrig.internal.Checks;

/** What sort of sound calibrator gave the level of a session. */
public enum Calibrator {
  /** Holds its level by a loop of its own; within its class, static pressure does not change it. */
  LEVEL_CONTROLLED,
  /**
   * A piston that moves the same volume at any static pressure: its sound pressure is in proportion
   * to the static pressure.
   */
  PISTONPHONE;

  /** Static pressure at which levels are stated, kPa (IEC 60942, reference conditions). */
  public static final double REFERENCE_KPA = 101.325;

  /** The sort as sessions.csv writes it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * How far the level of a pistonphone lies above its stated one at a static pressure in kPa, above
   * 0; absolute at the place, not reduced to sea level as weather reports give it.
   *
   * <p>{@code 20·lg(p/101.325 kPa)} in dB: the stroke changes the volume {@code V} by the same
   * {@code ΔV} at any static pressure {@code p}, and adiabatic compression gives {@code γ·p·ΔV/V}.
   * It is negative below 101.325 kPa: on a mountain the pistonphone is softer than it states, and a
   * microphone that reads less there is in order. The small effect of pressure on the microphone
   * itself is left out. Source: the physics above; that a level is stated for 101.325 kPa is from
   * IEC 60942.
   */
  public static double pressureTermDb(double pressureKpa) {
    return 20 * Math.log10(Checks.positive(pressureKpa, "pressure_kpa") / REFERENCE_KPA);
  }
}
