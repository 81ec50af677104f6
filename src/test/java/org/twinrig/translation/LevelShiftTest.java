package org.twinrig.translation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.twinrig.PlannedStudy;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Setup;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

class LevelShiftTest {
  private static final Fixture PLATE = new Fixture("plate", "Plate", "", 100, 10_000);
  private static final Fixture HEAD = new Fixture("head", "Head", "", 20, 20_000);
  private final List<AnchoredCapture> captures = new ArrayList<>();

  private void add(String unit, Fixture fixture, int seating, double levelDb, String session) {
    CaptureEntry entry =
        new CaptureEntry(
            unit, fixture.name(), Side.M, seating, "c", session, "", "", "", captures.size() + 2);
    Response flat = Response.copyOf(new double[] {10, 20_000}, new double[2]);
    Levels bands = Levels.copyOf(BandGrid.covering(20, 20_000, 1), new double[10]);
    captures.add(new AnchoredCapture(new Capture(entry, flat, "x"), bands, levelDb));
  }

  private static Session session(String name, Fixture fixture) {
    return new Session(
        name,
        "2026-03-02",
        fixture.name(),
        94,
        94,
        Calibrator.LEVEL_CONTROLLED,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "",
        "",
        2);
  }

  private Study study(Settings settings, List<String> kindOfUnit) {
    List<Unit> units = new ArrayList<>();
    for (String unitAndKind : kindOfUnit) {
      String[] parts = unitAndKind.split("/", -1);
      units.add(new Unit(parts[0], parts[1], Unit.Role.FIT, "", "", units.size() + 2));
    }
    return new Study(
        Path.of("."),
        "made",
        PLATE,
        HEAD,
        units,
        captures.stream().map(c -> c.capture().entry()).toList(),
        List.of(session("p", PLATE), session("h", HEAD)),
        Optional.empty(),
        settings,
        Path.of("."),
        List.of(),
        Map.of());
  }

  /**
   * level_shift.R beside the values: metafor 3.8-1, REML and Hartung-Knapp, on simulated levels.
   */
  @Test
  void agreesWithMetafor() {
    List<String> units = new ArrayList<>();
    for (Map<String, String> row : ReferenceTable.rows("level_shift_levels.csv")) {
      String unit = row.get("unit") + "/" + row.get("kind");
      if (!units.contains(unit)) {
        units.add(unit);
      }
      add(
          row.get("unit"),
          row.get("fixture").equals("plate") ? PLATE : HEAD,
          Integer.parseInt(row.get("seating")),
          number(row, "level_db"),
          row.get("fixture").substring(0, 1));
    }
    List<LevelShift> found = LevelShift.of(study(Settings.defaults(), units), captures);
    List<Map<String, String>> expected = ReferenceTable.rows("level_shift.csv");
    assertEquals(expected.size(), found.size());
    for (int k = 0; k < found.size(); k++) {
      Map<String, String> row = expected.get(k);
      assertEquals(row.get("kind"), found.get(k).kind());
      assertEquals(number(row, "shift_db"), found.get(k).mean().meanDb(), 1e-9);
      assertEquals(number(row, "ci_low_db"), found.get(k).mean().lowDb(), 1e-8);
      assertEquals(number(row, "ci_high_db"), found.get(k).mean().highDb(), 1e-8);
      assertEquals(number(row, "prediction_half_db"), found.get(k).predictionHalfDb(), 1e-8);
      assertEquals(number(row, "variance_one_seating"), found.get(k).varianceDb2(1), 1e-8);
    }
  }

  /**
   * A unit whose captures name no session has no known level; below three units nothing is said.
   */
  @Test
  void needsCalibratedSessionsOnBothFixtures() {
    List<String> units = new ArrayList<>();
    for (int u = 1; u <= 4; u++) {
      units.add("Oak " + u + "/open");
      add("Oak " + u, PLATE, 1, 90 + u, "p");
      add("Oak " + u, HEAD, 1, 92 + u, u == 4 ? "" : "h");
    }
    LevelShift found = LevelShift.of(study(Settings.defaults(), units), captures).get(0);
    assertEquals(3, found.mean().units());
    assertEquals(2, found.mean().meanDb(), 1e-12);
    assertEquals(0, found.predictionHalfDb(), 1e-12);
    captures.remove(captures.size() - 3); // the third unit's capture on the head
    assertEquals(List.of(), LevelShift.of(study(Settings.defaults(), units), captures));
    Settings none = Settings.defaults().with(Setting.ANCHOR, new Anchor.None());
    assertEquals(List.of(), LevelShift.of(study(none, units), captures));
  }

  /** Units driven with 2 V on the head read 6 dB more there for that alone. */
  @Test
  void unequalDrivesAreAllowedFor() {
    List<String> units = new ArrayList<>();
    for (int u = 1; u <= 3; u++) {
      units.add("Oak " + u + "/open");
      add("Oak " + u, PLATE, 1, 90 + u, "p");
      add("Oak " + u, HEAD, 1, 92 + u + 20 * Math.log10(2), "h");
    }
    Study study = study(Settings.defaults(), units);
    Study driven = driven(study, OptionalDouble.of(1), OptionalDouble.of(2));
    assertEquals(2, LevelShift.of(driven, captures).get(0).mean().meanDb(), 1e-12);
    Study half = driven(study, OptionalDouble.of(1), OptionalDouble.empty());
    assertEquals(List.of(), LevelShift.of(half, captures));
  }

  private static Study driven(Study study, OptionalDouble plate, OptionalDouble head) {
    return new Study(
        study.folder(),
        study.title(),
        study.from(),
        study.to(),
        study.units(),
        study.captures(),
        List.of(driven(study.sessions().get(0), plate), driven(study.sessions().get(1), head)),
        study.catalogue(),
        study.settings(),
        study.capturesFolder(),
        study.inputs(),
        study.references());
  }

  private static Session driven(Session s, OptionalDouble drive) {
    OptionalDouble none = OptionalDouble.empty();
    return new Session(
        s.name(),
        s.date(),
        s.fixture(),
        s.calibratorNominalDb(),
        s.calibratorReadDb(),
        s.calibrator(),
        none,
        none,
        "",
        "",
        "",
        2,
        new Setup("", "", "", none, drive, none, none, none, none, Map.of()));
  }

  /**
   * The mean shift is the mean over all units of a kind, and a new unit's lies within the
   * prediction interval, in about 95 of 100 studies: 60 studies of each of three kinds. The truth
   * is the transfer without an anchor, averaged over the anchor's bands.
   */
  @Test
  void intervalsHoldOnSimulatedStudies() {
    SimulationPlan plan =
        PlannedStudy.heldOut(SimulationPlan.standard(), 3)
            .withUnitsPerKind(8)
            .withAxis(new SimulationPlan.Axis(60, 200, 2000));
    BandGrid anchor = BandGrid.covering(500, 1000, 12);
    Map<String, Double> truth = new HashMap<>();
    for (SimulationPlan.Group group : plan.groups()) {
      Levels mean = plan.draw().trueMeanTransfer(group.kind(), anchor, new Anchor.None());
      truth.put(group.kind().label(), mean(mean));
    }
    int studies = 60;
    int meansHeld = 0;
    int unitsHeld = 0;
    for (int seed = 1; seed <= studies; seed++) {
      SimulatedStudy drawn = plan.withSeed(31_000 + seed).draw();
      Study study = drawn.declared(Settings.defaults());
      List<AnchoredCapture> pinned =
          Anchoring.of(study.settings(), 2).apply(study.corrected(drawn.captures())).value();
      for (LevelShift shift : LevelShift.of(study, pinned)) {
        double miss = Math.abs(shift.mean().meanDb() - truth.get(shift.kind()));
        meansHeld += miss <= shift.mean().halfWidthDb() ? 1 : 0;
        for (Unit unit : study.units()) {
          if (unit.role() == Unit.Role.HOLDOUT && unit.kind().equals(shift.kind())) {
            double own = level(pinned, unit, HEAD) - level(pinned, unit, PLATE);
            unitsHeld += Math.abs(own - shift.mean().meanDb()) <= shift.predictionHalfDb() ? 1 : 0;
          }
        }
      }
    }
    double means = meansHeld / (3.0 * studies);
    double units = unitsHeld / (9.0 * studies);
    System.out.printf(
        Locale.ROOT, "level shift: mean held in %.3f, new units in %.3f%n", means, units);
    // Three standard errors, 0.016 and 0.009, about 0.95.
    assertTrue(means > 0.90, () -> "mean shift held in " + means);
    assertTrue(units > 0.92 && units < 0.98, () -> "new units held in " + units);
  }

  private static double level(List<AnchoredCapture> captures, Unit unit, Fixture fixture) {
    return captures.stream()
        .filter(c -> c.capture().entry().unit().equals(unit.name()))
        .filter(c -> c.capture().entry().fixture().equals(fixture.name()))
        .mapToDouble(AnchoredCapture::anchorDb)
        .average()
        .orElseThrow();
  }

  private static double mean(Levels levels) {
    double sum = 0;
    for (int b = 0; b < levels.grid().size(); b++) {
      sum += levels.db(b);
    }
    return sum / levels.grid().size();
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
