package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Fixture;

/**
 * A fixture: what a headphone meets when it is put on. The ear simulator from its reference plane
 * inwards, what lies between it and the canal entrance, how cups and tips seal, gain of the concha
 * and resonance at the canal entrance under cups, and how much seatings and units vary on it.
 */
record SimulatedFixture(
    Fixture identity,
    EarLoad load,
    Canal canal,
    Seal cupSeal,
    Seal tipSeal,
    Mode concha,
    Mode notch,
    Scatter scatter) {

  /**
   * The canal outside the reference plane. Its length when the entrance is open; what is left of it
   * behind a tip that goes in as far as the middle of its kind; how much of a unit's own extra
   * depth it allows.
   */
  record Canal(double radiusM, double underCupM, double behindTipM, double depthShare) {}

  /**
   * A seal: median leak resistance against the hard plate's, spread of that factor between units
   * and between seatings in nepers, and what is left of it when the seal is lost.
   */
  record Seal(double factor, double unitNepers, double seatingNepers, double lostFactor) {}

  /**
   * Scatter of one fixture. Share of their stray that units' modes show here, and between seatings;
   * spread of the tip's depth between seatings, and between units beyond their own, m; lawful shift
   * of every mode.
   */
  record Scatter(
      double unitShare,
      double seatingShare,
      double depthM,
      double unitDepthM,
      double modeOctaves) {}

  /** The old fixture: a hard flat plate with an occluded-ear simulator. */
  static SimulatedFixture plate() {
    return new SimulatedFixture(
        new Fixture(
            "plate",
            "Flat-plate ear simulator",
            "IEC 60318-4",
            Optional.of(new FrequencyRange(100, 10_000)),
            Optional.of(new FrequencyRange(20, 16_000)),
            "",
            Optional.empty()),
        EarLoad.occludedEarSimulator(),
        new Canal(0.00375, 0.0085, 0.0092, 1.0),
        new Seal(1.0, 0.10, 0.15, 0.04),
        new Seal(1.0, 0.10, 0.25, 0.012),
        new Mode(4300, 1.2, 3.0),
        new Mode(9000, 6.0, -7.0),
        new Scatter(0, 0.7, 0.0004, 0.0002, 0));
  }

  /** The new fixture: a head with soft cheeks, a pinna and a more human-like ear. */
  static SimulatedFixture head() {
    return new SimulatedFixture(
        new Fixture(
            "head",
            "Head with soft cheeks",
            "ITU-T P.57 type 4.3",
            Optional.of(new FrequencyRange(20, 20_000)),
            Optional.empty(),
            "",
            Optional.empty()),
        EarLoad.humanLike(),
        new Canal(0.0038, 0.0090, 0.0134, 0.85),
        new Seal(0.30, 0.30, 0.40, 0.08),
        new Seal(0.18, 0.30, 0.40, 0.05),
        new Mode(4000, 1.3, 4.5),
        new Mode(8000, 4.0, 3.0),
        new Scatter(1, 1, 0.0006, 0.0007, 0.10));
  }

  /** A fixture of the same build with another entrance to its canal. */
  SimulatedFixture variant(Fixture other, Mode entrance) {
    return new SimulatedFixture(other, load, canal, cupSeal, tipSeal, concha, entrance, scatter);
  }

  /** A unit's side as this fixture takes it: everything but the chance of one seating. */
  FittedUnit take(SimulatedUnit unit, Draws draws) {
    boolean inserted = unit.kind().ranges().inserted();
    Seal seal = inserted ? tipSeal : cupSeal;
    double leak = draws.logNormal(unit.leakResistance() * seal.factor(), seal.unitNepers());
    double canalM =
        inserted
            ? canal.behindTipM()
                - canal.depthShare() * unit.depthM()
                + draws.gaussian(0, scatter.unitDepthM())
            : canal.underCupM();
    List<Mode> modes = new ArrayList<>();
    List<KindRanges.ModeRange> ranges = unit.kind().ranges().modes();
    for (int m = 0; m < ranges.size(); m++) {
      KindRanges.Stray stray = ranges.get(m).fixture();
      double octaves =
          scatter.modeOctaves() + draws.gaussian(0, scatter.unitShare() * stray.octaves());
      double gainDb = draws.gaussian(0, scatter.unitShare() * stray.gainDb());
      modes.add(unit.modes().get(m).moved(octaves, gainDb));
    }
    List<Mode> pinna =
        inserted
            ? List.of()
            : List.of(
                concha.moved(0, 0.3 * unit.pinnaScore()),
                notch.moved(draws.gaussian(0, 0.04), 1.2 * unit.pinnaScore()));
    return new FittedUnit(unit, this, leak, Math.max(0.001, canalM), modes, pinna);
  }
}
