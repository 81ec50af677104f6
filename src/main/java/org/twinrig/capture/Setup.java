package org.twinrig.capture;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

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

  /** The parts of a fixture that have serials, by column. */
  public static final Map<String, Function<Setup, String>> PARTS = parts();

  private static Map<String, Function<Setup, String>> parts() {
    Map<String, Function<Setup, String>> parts = new LinkedHashMap<>();
    parts.put("ear_simulator", Setup::earSimulator);
    parts.put("microphone", Setup::microphone);
    parts.put("pinna", Setup::pinna);
    return Collections.unmodifiableMap(parts);
  }

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

  /** A part whose serial two notes give differently: its column and both serials. */
  public Optional<String> contradiction(Setup other) {
    for (Map.Entry<String, Function<Setup, String>> part : PARTS.entrySet()) {
      String here = part.getValue().apply(this);
      String there = part.getValue().apply(other);
      if (!here.isEmpty() && !there.isEmpty() && !here.equals(there)) {
        return Optional.of("`%s`: %s there, %s here".formatted(part.getKey(), here, there));
      }
    }
    return Optional.empty();
  }

  public Setup {
    own = Collections.unmodifiableMap(new LinkedHashMap<>(own));
  }
}
