package org.twinrig.proof;

import java.util.List;

/**
 * A kind of {@link CurveLab}. Every figure is common practice, no source: it is what laboratories
 * tell each other of their fixtures, and no product was measured for it.
 *
 * @param number tells its random numbers from those of other kinds
 * @param label as study files write it
 * @param tuningDb standard deviation of the makers' tunings about the kind's mean curve: they
 *     differ by some decibels an octave apart
 * @param detailDb the same within a fifth of an octave
 * @param transferDb size of the kind's transfer in the middle; twice that below 200 Hz, three times
 *     above 8 kHz, where fixtures differ most
 * @param strayDb standard deviation of what is a unit's own in the transfer and nothing foretells:
 *     a tenth to a half of a decibel in the middle, twice that below 200 Hz, four times above 8 kHz
 * @param seatingDb standard deviation of a seating in the middle; three times that below 200 Hz,
 *     four times above 8 kHz
 * @param leakHz below it a leak takes full effect: a gap under a cushion 100 to 200 Hz, under a tip
 *     lower
 * @param oldLeakDb mean of a unit's leak on the old fixture, in deep bass; skewed, since a leak can
 *     only take away
 * @param leakRatio what the same leak takes away on the new fixture, a soft one, for every decibel
 * @param newLeakDb mean of a further leak of the unit there; skewed
 * @param oldSeatLeakDb mean of a seating's leak on the old fixture; skewed
 * @param newSeatLeakDb the same on the new one
 */
record CurveKind(
    int number,
    String label,
    double tuningDb,
    double detailDb,
    double transferDb,
    double strayDb,
    double seatingDb,
    double leakHz,
    double oldLeakDb,
    double leakRatio,
    double newLeakDb,
    double oldSeatLeakDb,
    double newSeatLeakDb,
    List<Resonance> resonances) {

  /**
   * A peak or notch whose place and size are each unit's own, and others on the new fixture.
   *
   * @param hz median of its centre on the old fixture
   * @param octaves standard deviation of its centre between units
   * @param width of the bell in dB over log frequency: its standard deviation, octaves; 0.1 is a
   *     quality factor of about 6
   * @param nepers log-normal spread of the width between units
   * @param heightDb mean height on the old fixture
   * @param heightSdDb standard deviation of the height: units may have a notch where others peak
   * @param shift how much higher it stands on the new fixture, octaves: another canal or concha
   * @param shiftSd the unit's own part of the shift
   * @param kept how much of its height the new fixture shows
   * @param strayDb the unit's own part of the height there
   */
  record Resonance(
      double hz,
      double octaves,
      double width,
      double nepers,
      double heightDb,
      double heightSdDb,
      double shift,
      double shiftSd,
      double kept,
      double strayDb) {}

  CurveKind {
    resonances = List.copyOf(resonances);
  }

  double seatLeakDb(boolean onNew) {
    return onNew ? newSeatLeakDb : oldSeatLeakDb;
  }

  /** Under cups: cross modes of the cushion's air, concha and canal entrance. */
  private static final List<Resonance> CUP =
      List.of(
          new Resonance(3200, 0.20, 0.25, 0.2, 2, 2.0, 0.05, 0.02, 0.9, 0.4),
          new Resonance(5600, 0.15, 0.15, 0.2, -2, 3.0, -0.08, 0.03, 1.1, 0.6),
          new Resonance(8700, 0.10, 0.10, 0.2, -5, 3.0, 0.10, 0.03, 0.7, 1.0),
          new Resonance(13_000, 0.15, 0.12, 0.2, 1, 3.5, -0.06, 0.06, 0.9, 1.5));

  /** Behind tips: the half-wave of the canal, which depth moves, and the tube's own modes. */
  private static final List<Resonance> TIP =
      List.of(
          new Resonance(2700, 0.15, 0.30, 0.2, 3, 1.5, 0.04, 0.02, 1.0, 0.4),
          new Resonance(7600, 0.15, 0.12, 0.2, 6, 2.5, 0.12, 0.04, 0.8, 0.8),
          new Resonance(12_500, 0.12, 0.12, 0.2, -2, 3.0, -0.10, 0.06, 1.0, 1.5));

  /** Open cups hardly care what they stand on, and leak by design. */
  private static final CurveKind OPEN =
      new CurveKind(
          0, "open over-ear", 2.5, 0.7, 0.8, 0.25, 0.12, 100, 0.2, 1.0, 0.2, 0.1, 0.1, CUP);

  /** Closed cups: the cushion's seal decides the bass. */
  private static final CurveKind CLOSED =
      new CurveKind(
          1, "closed over-ear", 2.5, 0.7, 1.2, 0.35, 0.15, 150, 0.6, 1.5, 0.8, 0.3, 0.8, CUP);

  /** Tips: what the canal does matters most, and a leak is rare but large. */
  private static final CurveKind INSERTED =
      new CurveKind(2, "in-ear", 2.0, 0.5, 1.5, 0.45, 0.20, 80, 0.4, 1.6, 0.8, 0.3, 0.5, TIP);

  /** Every kind, as {@link Lab#KINDS} has them. */
  static final List<CurveKind> ALL = List.of(OPEN, CLOSED, INSERTED);
}
