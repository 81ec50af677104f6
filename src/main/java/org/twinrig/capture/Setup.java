package org.twinrig.capture;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a lab may note of a session beyond its calibrator's reading; all of it may be missing.
 *
 * @param earSimulator which one was in use, by its serial number; so are microphone and pinna
 * @param humidityPct relative humidity in %
 * @param driveV voltage the units were driven with, V
 * @param sourceOhm output impedance of the amplifier, Ω
 * @param levelDb level aimed at, dB SPL
 * @param calibratorAdapterDb what the load volume of the ear simulator adds to the calibrator's
 *     stated level, dB
 * @param calibratorEndDb the calibrator read again at the end of the session, dB SPL
 * @param own the lab's own columns, which begin with {@code x_}, in the order of the table
 */
public record Setup(
    String earSimulator,
    String microphone,
    String pinna,
    OptionalDouble humidityPct,
    OptionalDouble driveV,
    OptionalDouble sourceOhm,
    OptionalDouble levelDb,
    OptionalDouble calibratorAdapterDb,
    OptionalDouble calibratorEndDb,
    Map<String, String> own) {

  /** Nothing is noted. */
  public static final Setup NOT_NOTED =
      new Setup(
          "",
          "",
          "",
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Map.of());

  public Setup {
    own = Collections.unmodifiableMap(new LinkedHashMap<>(own));
  }
}
