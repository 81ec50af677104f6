package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * What the units of a kind are drawn from. Orders of magnitude are common practice, no source: no
 * product was measured for them.
 *
 * @param inserted true when a tip seals in the canal, false when a cup stands over the ear
 * @param sourceVolumeCm3 compliance of the source as a volume of air
 * @param sourceHz resonance of the source's mass with that compliance
 * @param sourceQuality its quality factor
 * @param frontVolumeCm3 air between source and ear
 * @param leakResistance of the seal on the hard plate, Pa·s/m³
 * @param leakSeconds mass of the leak over its resistance, s
 * @param lowestHz bass roll-off of the kind
 * @param highestHz treble roll-off of the kind
 * @param modes cross modes in front of the ear
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

  /**
   * Standard deviations of a mode's frequency and gain.
   *
   * @param octaves of its frequency
   */
  record Stray(double octaves, double gainDb) {}

  /**
   * What a mode is drawn from.
   *
   * @param hz median frequency
   * @param octaves spread of the frequency between units
   * @param quality quality factor
   * @param gainDb mean gain
   * @param gainSdDb spread of the gain between units
   * @param fixture how far a unit's mode strays from the lawful shift between fixtures
   * @param seating how far it strays between seatings
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

  /** Draws one unit of the kind. */
  SimulatedUnit draw(SimulatedKind kind, Draws draws) {
    Branch source =
        Branch.resonant(
            Air.compliance(sourceVolumeCm3.draw(draws) * 1e-6),
            sourceHz.draw(draws),
            sourceQuality.draw(draws));
    double frontM3 = frontVolumeCm3.draw(draws) * 1e-6;
    Nozzle nozzle = Nozzle.draw(draws);
    double leak = leakResistance.draw(draws);
    double depthM = inserted ? draws.gaussian(0, 0.0024) : 0;
    Balance balance = Balance.draw(draws, lowestHz, highestHz);
    double sensitivityDb = draws.gaussian(94, 3);
    List<Mode> drawn = new ArrayList<>();
    for (ModeRange range : modes) {
      drawn.add(range.draw(draws));
    }
    double pinnaDb = inserted ? 0 : draws.gaussian();
    return new SimulatedUnit(
        kind, source, frontM3, nozzle, leak, depthM, balance, sensitivityDb, drawn, pinnaDb);
  }
}
