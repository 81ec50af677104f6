package org.twinrig.band;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Labels of bands as readers expect them. */
public final class NominalFrequencies {

  /** Nominal third-octave frequencies of one decade from 1 kHz, ISO 266:1997, Table 1. */
  private static final double[] THIRD_OCTAVES_1_KHZ = {
    1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000
  };

  private NominalFrequencies() {}

  /**
   * The nominal mid-band frequency, Hz: ISO 266:1997 values for whole and third octaves; for
   * narrower bands the exact value rounded after IEC 61260-1:2014, Annex E.3 (three significant
   * digits where the first is 1 to 4, two otherwise).
   */
  public static double of(Band band) {
    int n = band.perOctave();
    if (n == 1 || n == 3) {
      int third = band.index() * (n == 1 ? 3 : 1);
      int decade = Math.floorDiv(third, 10);
      return BigDecimal.valueOf(THIRD_OCTAVES_1_KHZ[Math.floorMod(third, 10)])
          .scaleByPowerOfTen(decade)
          .doubleValue();
    }
    BigDecimal exact = new BigDecimal(band.midHz());
    int firstDigit = exact.unscaledValue().toString().charAt(0) - '0';
    int digits = firstDigit <= 4 ? 3 : 2;
    return exact.round(new MathContext(digits, RoundingMode.HALF_UP)).doubleValue();
  }

  /** The nominal mid-band frequency as a text, for example {@code 31.5 Hz} or {@code 1.25 kHz}. */
  public static String label(Band band) {
    double hz = of(band);
    return hz < 1000 ? plain(hz) + " Hz" : plain(hz / 1000) + " kHz";
  }

  private static String plain(double value) {
    return new BigDecimal(String.format(Locale.ROOT, "%.6g", value))
        .stripTrailingZeros()
        .toPlainString();
  }
}
