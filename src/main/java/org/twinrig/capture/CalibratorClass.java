package org.twinrig.capture;

import java.util.Arrays;
import java.util.Optional;

/**
 * The class of a sound calibrator after IEC 60942:2017; named as study.yaml writes it.
 *
 * <p>The limits hold for nominal frequencies from 160 Hz to 1250 Hz (Table 2), where calibrators of
 * ear simulators work (common practice, no source). They are acceptance limits of the measured
 * level; the uncertainty of that measurement, which Table A.1 bounds, is not part of them.
 *
 * <p>A class marked {@code /M} is that of a calibrator, most often a pistonphone, whose level
 * follows the static pressure and meets the limits of the class once it is corrected for the
 * pressure that was measured (from memory; the edition of 2003 marked such classes {@code /C}, from
 * memory too).
 */
public enum CalibratorClass {
  LS("LS", 0.1),
  CLASS_1("1", 0.25),
  CLASS_2("2", 0.4),
  LS_M("LS/M", LS.levelLimitDb),
  CLASS_1_M("1/M", CLASS_1.levelLimitDb),
  CLASS_2_M("2/M", CLASS_2.levelLimitDb);

  private final String word;
  private final double levelLimitDb;

  CalibratorClass(String word, double levelLimitDb) {
    this.word = word;
    this.levelLimitDb = levelLimitDb;
  }

  public String word() {
    return word;
  }

  /** How far the level may lie from the stated one: half-width of the limits in dB. */
  public double levelLimitDb() {
    return levelLimitDb;
  }

  /** Whether the limits hold only once the level is corrected for the static pressure. */
  public boolean followsPressure() {
    return word.endsWith("/M");
  }

  public static Optional<CalibratorClass> of(String word) {
    return Arrays.stream(values()).filter(c -> c.word.equals(word)).findFirst();
  }
}
