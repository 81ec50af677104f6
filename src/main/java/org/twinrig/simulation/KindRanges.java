package org.twinrig.simulation;

import java.util.List;

/**
 * What the units of a kind are drawn from. Orders of magnitude are common practice, no source: no
 * product was measured for them.
 *
 * <p>Inserted means that a tip seals in the canal instead of a cup that stands over the ear. The
 * compliance of the source is given as a volume of air, with the resonance of its mass with it;
 * leak resistance is that of the seal on the hard plate, Pa·s/m³, and the mass of the leak over it
 * is in s; lowest and highest are the roll-offs of the kind.
 */
record KindRanges(
    boolean inserted,
    Spread sourceVolumeCm3,
    Spread sourceHz,
    Spread sourceQuality,
    Spread frontVolumeCm3,
    Spread leakResistance,
    double leakSeconds,
    double lowestHz,
    double highestHz,
    List<ModeRange> modes) {

  /** A positive quantity's median and its log-normal spread in nepers. */
  record Spread(double median, double nepers) {
    double draw(Draws draws) {
      return draws.logNormal(median, nepers);
    }
  }

  /** Standard deviations of a mode's frequency and of its gain. */
  record Stray(double octaves, double gainDb) {}

  /**
   * What a mode is drawn from: median frequency and its spread between units, quality factor, mean
   * gain and its spread, and how far a unit's mode strays from the lawful shift between fixtures
   * and between seatings.
   */
  record ModeRange(
      double hz,
      double octaves,
      double quality,
      double gainDb,
      double gainSdDb,
      Stray fixture,
      Stray seating) {
    Mode draw(Draws draws) {
      double drawnHz = hz * StrictMath.pow(2, draws.gaussian(0, octaves));
      return new Mode(drawnHz, draws.logNormal(quality, 0.15), draws.gaussian(gainDb, gainSdDb));
    }
  }

  private static final List<ModeRange> CUP_MODES =
      List.of(
          new ModeRange(1_900, 0.15, 1.4, 0, 1.2, new Stray(0.010, 0.65), new Stray(0.010, 0.40)),
          new ModeRange(5_000, 0.14, 3.0, 1, 2.8, new Stray(0.012, 0.40), new Stray(0.010, 0.40)),
          new ModeRange(7_200, 0.12, 4.0, -1, 3.0, new Stray(0.015, 0.50), new Stray(0.012, 0.50)),
          new ModeRange(11_600, 0.12, 4.0, -2, 4.0, new Stray(0.10, 2.0), new Stray(0.035, 1.8)),
          new ModeRange(15_800, 0.12, 4.0, -1, 4.5, new Stray(0.12, 2.4), new Stray(0.045, 2.2)));

  private static final List<ModeRange> TIP_MODES =
      List.of(
          new ModeRange(2_700, 0.20, 1.2, 0, 1.0, new Stray(0.010, 0.70), new Stray(0.010, 0.60)),
          new ModeRange(11_800, 0.10, 5.0, -1, 1.6, new Stray(0.06, 1.5), new Stray(0.020, 0.9)),
          new ModeRange(16_200, 0.09, 5.0, 1, 2.0, new Stray(0.10, 2.0), new Stray(0.030, 1.3)));

  /** How long the mass of a slit holds out against its resistance, and that of open pads. */
  private static final double SLIT_SECONDS = 1.5e-5;

  private static final double OPEN_PAD_SECONDS = 1.5e-3;

  static final KindRanges OPEN_OVER_EAR =
      new KindRanges(
          false,
          new Spread(330_000, 0.12),
          new Spread(58, 0.10),
          new Spread(0.022, 0.10),
          new Spread(75, 0.15),
          new Spread(1.1e6, 0.18),
          OPEN_PAD_SECONDS,
          32,
          30_000,
          CUP_MODES);

  static final KindRanges CLOSED_OVER_EAR =
      new KindRanges(
          false,
          new Spread(100, 0.35),
          new Spread(480, 0.20),
          new Spread(0.8, 0.20),
          new Spread(60, 0.18),
          new Spread(1.3e7, 0.30),
          SLIT_SECONDS,
          12,
          30_000,
          CUP_MODES);

  static final KindRanges ON_EAR =
      new KindRanges(
          false,
          new Spread(35, 0.35),
          new Spread(600, 0.20),
          new Spread(0.8, 0.20),
          new Spread(9, 0.20),
          new Spread(1.4e7, 0.40),
          SLIT_SECONDS,
          18,
          25_000,
          CUP_MODES);

  static final KindRanges IN_EAR =
      new KindRanges(
          true,
          new Spread(0.7, 0.70),
          new Spread(2600, 0.22),
          new Spread(0.9, 0.20),
          new Spread(0.09, 0.30),
          new Spread(1.4e9, 0.40),
          SLIT_SECONDS,
          9,
          5_000,
          TIP_MODES);

  SimulatedUnit draw(SimulatedKind kind, Draws draws) {
    Branch source =
        Branch.resonant(
            Air.compliance(sourceVolumeCm3.draw(draws) * 1e-6),
            sourceHz.draw(draws),
            sourceQuality.draw(draws));
    double frontM3 = frontVolumeCm3.draw(draws) * 1e-6;
    SimulatedUnit.Nozzle nozzle = SimulatedUnit.Nozzle.draw(draws);
    double leak = leakResistance.draw(draws);
    double depthM = inserted ? draws.gaussian(0, 0.0024) : 0;
    Balance balance = Balance.draw(draws, lowestHz, highestHz);
    double sensitivityDb = draws.gaussian(94, 3);
    List<Mode> drawn = modes.stream().map(range -> range.draw(draws)).toList();
    double pinnaDb = inserted ? 0 : draws.gaussian();
    return new SimulatedUnit(
        kind, source, frontM3, nozzle, leak, depthM, balance, sensitivityDb, drawn, pinnaDb);
  }
}
