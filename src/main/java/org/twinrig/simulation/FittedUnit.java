package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * A unit's side on a fixture, before the chance of one seating.
 *
 * @param unit the source
 * @param fixture what it sits on
 * @param leakResistance of its seal here, Pa·s/m³
 * @param canalM canal between tip or entrance and the reference plane, m
 * @param modes its cross modes as they come out here
 * @param pinna concha and canal entrance; empty for in-ears
 */
record FittedUnit(
    SimulatedUnit unit,
    SimulatedFixture fixture,
    double leakResistance,
    double canalM,
    List<Mode> modes,
    List<Mode> pinna) {

  /** How a seal came out. */
  enum Seal {
    /** As the unit usually sits. */
    GOOD,
    /** The cushion or tip stands off somewhere. */
    LOST
  }

  FittedUnit {
    modes = List.copyOf(modes);
    pinna = List.copyOf(pinna);
  }

  /** One seating. */
  Seated seated(Placement placement, Seal seal) {
    SimulatedFixture.Scatter scatter = fixture.scatter();
    SimulatedFixture.Seal typical = inserted() ? fixture.tipSeal() : fixture.cupSeal();
    double leak = leakResistance * Math.exp(typical.seatingNepers() * placement.leak());
    if (seal == Seal.LOST) {
      leak *= typical.lostFactor();
    }
    double movedM = inserted() ? scatter.depthM() * placement.depth() : 0.0002 * placement.depth();
    Tube canal = new Tube(Math.max(0.0005, canalM + movedM), fixture.canal().radiusM());
    double frontM3 = unit.frontVolumeM3() * Math.exp(inserted() ? 0 : -0.02 * placement.press());
    List<Mode> struck = new ArrayList<>();
    for (int m = 0; m < modes.size(); m++) {
      double side = m % 2 == 0 ? placement.height() : placement.tilt();
      double strength = m % 2 == 0 ? placement.cavity() : placement.press();
      KindRanges.Stray stray = unit.kind().ranges().modes().get(m).seating();
      struck.add(
          modes
              .get(m)
              .moved(
                  scatter.seatingShare() * stray.octaves() * side,
                  scatter.seatingShare() * stray.gainDb() * strength));
    }
    for (Mode mode : pinna) {
      struck.add(
          mode.moved(
              0.015 * scatter.seatingShare() * placement.height(),
              0.25 * scatter.seatingShare() * placement.press()));
    }
    Branch opening = Branch.opening(leak, leak * unit.kind().ranges().leakSeconds());
    return new Seated(opening, canal, frontM3, struck);
  }

  boolean inserted() {
    return unit.kind().ranges().inserted();
  }

  /**
   * One seating, ready for the chain.
   *
   * @param leak of the seal
   * @param canal outside the reference plane
   * @param frontM3 air between source and ear, m³
   * @param modes all modes as struck
   */
  record Seated(Branch leak, Tube canal, double frontM3, List<Mode> modes) {}
}
