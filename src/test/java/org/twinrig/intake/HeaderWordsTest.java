package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.intake.HeaderWords.Role;

/** Titles as instruments and spreadsheets write them; common practice, no source. */
class HeaderWordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "Frequency; FREQUENCY",
        "freq.; FREQUENCY",
        "f; FREQUENCY",
        "f/Hz; FREQUENCY",
        "Hz; FREQUENCY",
        "FREQUENZ [kHz]; FREQUENCY",
        "Fréquence; FREQUENCY",
        "częstotliwość; FREQUENCY",
        "Level; LEVEL",
        "dB; LEVEL",
        "dBSPL; LEVEL",
        "dB(A); LEVEL",
        "dBV; LEVEL",
        "Level at 1 kHz (dB); LEVEL",
        "Frequency response; LEVEL",
        "Frequency response (dB); LEVEL",
        "Sound pressure level; LEVEL",
        "Level re 20 µPa; LEVEL",
        "Schalldruckpegel; LEVEL",
        "Nivå; LEVEL",
        "レベル; LEVEL",
        "Magnitude; LEVEL",
        "Phase; PHASE",
        "Phase (°); PHASE",
        "deg; PHASE",
        "Grad; PHASE",
        "Pressure; LINEAR",
        "Pressure (Pa); LINEAR",
        "Pa; LINEAR",
        "Amplitude (mV); LINEAR",
        "Magnitude (linear); LINEAR",
        "Spannung [V]; LINEAR",
        "Level %; LINEAR",
        "THD (dB); OTHER",
        "Noise (dB); OTHER",
        "Coherence; OTHER",
        "No.; OTHER",
        "Alder no 3; UNKNOWN",
        "Alder 3 V; UNKNOWN",
        "Beech F; UNKNOWN",
        "Left; UNKNOWN"
      })
  void titleMeans(String title, Role role) {
    assertEquals(role, HeaderWords.of(title).role());
  }
}
