package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;

/**
 * A unit's side on a fixture, before the chance of one seating: the leak resistance of its seal
 * here (Pa·s/m³), the canal between tip or entrance and the reference plane (m), its cross modes as
 * they come out here, and concha and canal entrance, which in-ears have not.
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
    GOOD,
    /** The cushion or tip stands off somewhere. */
    LOST
  }

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
   * One seating, ready for the chain: the seal's leak, the canal outside the reference plane, the
   * air between source and ear, and all modes as struck.
   */
  record Seated(Branch leak, Tube canal, double frontM3, List<Mode> modes) {}
}
