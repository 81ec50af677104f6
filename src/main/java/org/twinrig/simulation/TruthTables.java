package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

/** The truth of a simulated study on the default bands and anchor. */
final class TruthTables {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);
  private static final Anchor ANCHOR = new Anchor.Range(300, 1000);

  private TruthTables() {}

  static List<String> meanTransfer(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add("# The true mean transfer of each kind: the expectation, over all units of the kind");
    lines.add("# and over the good seatings of each, of anchored level on the new fixture minus");
    lines.add("# anchored level on the old one. Anchor: mean of the bands from 300 Hz to 1000 Hz.");
    lines.add("# Lost seals, drift and noise have no part in it.");
    lines.add("# Monte Carlo over " + PopulationTruth.UNITS + " units per kind.");
    lines.add("kind,band_hz,lower_hz,upper_hz,true_db");
    for (SimulationPlan.Group group : study.plan().groups()) {
      Levels levels = study.trueMeanTransfer(group.kind(), GRID, ANCHOR);
      for (int b = 0; b < GRID.size(); b++) {
        Band band = GRID.band(b);
        lines.add(
            StudyTables.row(
                group.kind().label(),
                Numbers.fixed(band.midHz(), 2),
                Numbers.fixed(band.lowerHz(), 2),
                Numbers.fixed(band.upperHz(), 2),
                Numbers.fixed(levels.db(b), 3)));
      }
    }
    return lines;
  }

  static List<String> unitTransfer(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add("# Each unit's own transfer in expectation over its good seatings, mean over its");
    lines.add("# measured sides; anchored as in mean-transfer.csv.");
    lines.add("unit,kind,band_hz,true_db");
    List<List<String>> perUnit =
        study.units().parallelStream().map(unit -> unitRows(study, unit)).toList();
    perUnit.forEach(lines::addAll);
    return lines;
  }

  private static List<String> unitRows(SimulatedStudy study, Unit unit) {
    Levels levels = study.trueUnitTransfer(unit.name(), GRID, ANCHOR);
    return rows(List.of(unit.name(), unit.kind()), levels);
  }

  static List<String> catalogue(SimulatedStudy study) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "# What the new fixture would show of each catalogue unit, raw: band levels relative");
    lines.add("# to their own mean from 300 Hz to 1000 Hz, in expectation over good seatings. To");
    lines.add("# compare, subtract the same mean from a translated graph. For a compensated graph");
    lines.add("# this is the curve before any reference is subtracted.");
    lines.add("graph,band_hz,true_to_db");
    List<List<String>> perGraph =
        study.catalogue().parallelStream()
            .map(g -> rows(List.of(g.graph()), study.trueOnNewFixture(g.graph(), GRID, ANCHOR)))
            .toList();
    perGraph.forEach(lines::addAll);
    return lines;
  }

  /** A row per band: the first cells, mid-band frequency, level. */
  private static List<String> rows(List<String> first, Levels levels) {
    List<String> rows = new ArrayList<>();
    for (int b = 0; b < GRID.size(); b++) {
      List<String> cells = new ArrayList<>(first);
      cells.add(Numbers.fixed(GRID.band(b).midHz(), 2));
      cells.add(Numbers.fixed(levels.db(b), 3));
      rows.add(StudyTables.row(cells.toArray(String[]::new)));
    }
    return rows;
  }
}
