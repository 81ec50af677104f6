package org.twinrig.simulation;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * A study whose truth is known. Immutable; made by {@link SimulationPlan#draw()}.
 *
 * <p>Captures hold what their files will hold: levels to 0.01 dB, before any correction. Their
 * content hash is a stand-in until they are written.
 *
 * @param benches the old and the new fixture, ready on the plan's axis
 * @param members the units and what is behind them, kind by kind
 * @param sessions in the order of sessions.csv
 * @param simulated the captures, those the lab excluded among them, in the order of captures.csv
 * @param catalogue graphs of units that are not in the study, in the order of its table
 */
public record SimulatedStudy(
    SimulationPlan plan,
    List<Bench> benches,
    List<Member> members,
    List<Session> sessions,
    List<SimulatedCapture> simulated,
    List<SimulatedGraph> catalogue) {

  public SimulatedStudy {
    benches = List.copyOf(benches);
    members = List.copyOf(members);
    sessions = List.copyOf(sessions);
    simulated = List.copyOf(simulated);
    catalogue = List.copyOf(catalogue);
  }

  /** The fixture the old graphs were made on: the flat plate. */
  public Fixture from() {
    return benches.get(0).fixture().identity();
  }

  public Fixture to() {
    return benches.get(1).fixture().identity();
  }

  /** The units, kind by kind: in the order of units.csv. */
  public List<Unit> units() {
    return members.stream().map(Member::unit).toList();
  }

  /** The captures, those the lab excluded among them: in the order of captures.csv. */
  public List<Capture> captures() {
    return simulated.stream().map(SimulatedCapture::capture).toList();
  }

  /**
   * The true mean transfer of a kind: the expectation, over all units of the kind and all good
   * seatings of each, of anchored band level on the new fixture minus the same on the old one. It
   * is what a study estimates. It belongs to the kind, the fixtures and the frequency axis, not to
   * the seed: work it out once for many studies.
   *
   * @return dB per band, with a Monte Carlo error well below the spread between units over √2000
   */
  public Levels trueMeanTransfer(SimulatedKind kind, BandGrid grid, Anchor anchor) {
    return new TrueLevels(benches, grid, anchor).meanTransfer(kind, TrueLevels.POPULATION);
  }

  /**
   * A unit's own transfer, dB per band: the expectation over its good seatings, and the mean over
   * its measured sides, of anchored band level on the new fixture minus the same on the old one.
   */
  public Levels trueUnitTransfer(String unit, BandGrid grid, Anchor anchor) {
    Member member =
        members.stream()
            .filter(m -> m.unit().name().equals(unit))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no unit is called " + unit));
    return new TrueLevels(benches, grid, anchor).transfer(member.specimen());
  }

  /**
   * What the new fixture would show of a catalogue's unit, raw: its band levels there, dB relative
   * to the anchor, in expectation over good seatings.
   */
  public Levels trueOnNewFixture(String graph, BandGrid grid, Anchor anchor) {
    int index = catalogue.stream().map(SimulatedGraph::graph).toList().indexOf(graph);
    if (index < 0) {
      throw new IllegalArgumentException("no graph is called " + graph);
    }
    return new TrueLevels(benches, grid, anchor).on(1, CatalogueDraw.specimen(plan, index));
  }

  /**
   * The study without files, as a lab would have declared it, ready to be analysed with {@link
   * #captures}.
   */
  public Study declared(Settings settings) {
    Path nowhere = Path.of(".");
    return new Study(
        nowhere,
        "simulated",
        from(),
        to(),
        units(),
        captures().stream().map(Capture::entry).toList(),
        sessions(),
        Optional.empty(),
        settings,
        nowhere,
        List.of(),
        Map.of());
  }

  /**
   * Writes the study as a folder, new or empty, that holds {@code study.yaml}, the tables, the
   * capture files, the catalogue and the truth. Written beside the target and then moved into
   * place.
   *
   * @throws UnusableInput when the folder exists and is not empty, or is a file
   */
  public void writeTo(Path folder) throws UnusableInput, IOException {
    new StudyWriter(this).writeTo(folder);
  }

  /**
   * The text of a study file for data that stand elsewhere: at the end of a path from its folder
   * that is empty or ends in a slash.
   */
  public String studyFile(String dataPrefix) {
    return new SimulatedTables(this).studyFile(dataPrefix);
  }
}
