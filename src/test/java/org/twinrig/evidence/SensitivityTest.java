package org.twinrig.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Setup;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

class SensitivityTest {
  private static final Fixture PLATE = new Fixture("plate", "Plate", "", 100, 10_000);
  private static final Fixture HEAD = new Fixture("head", "Head", "", 20, 20_000);
  private final List<AnchoredCapture> captures = new ArrayList<>();

  /** A capture, pinned, that was so loud at the anchor. */
  private void add(String unit, Fixture fixture, double levelDb, String session) {
    CaptureEntry entry =
        new CaptureEntry(
            unit,
            fixture.name(),
            Side.M,
            captures.size() + 1,
            "c",
            session,
            "",
            "",
            "",
            captures.size() + 2);
    Response curve = Dense.curve(new double[] {10, 200, 2000, 20_000}, new double[] {6, 0, 0, 9});
    Levels bands = Levels.copyOf(BandGrid.covering(20, 20_000, 1), new double[10]);
    captures.add(new AnchoredCapture(new Capture(entry, curve, "x"), bands, levelDb));
  }

  private static Session session(String name, Fixture fixture, OptionalDouble driveV) {
    OptionalDouble none = OptionalDouble.empty();
    return new Session(
        name,
        "2026-03-02",
        fixture.name(),
        94,
        94,
        Calibrator.LEVEL_CONTROLLED,
        none,
        none,
        "",
        "",
        "",
        2,
        new Setup("", "", "", none, driveV, none, none, none, none, Map.of()));
  }

  private List<Sensitivity> found() {
    Study study =
        new Study(
            Path.of("."),
            "made",
            PLATE,
            HEAD,
            List.of(
                new Unit("Oak", "in-ear", Unit.Role.FIT, "", OptionalDouble.of(32), "", "", 2),
                new Unit("Ash", "in-ear", Unit.Role.FIT, "", "", 3)),
            captures.stream().map(c -> c.capture().entry()).toList(),
            List.of(
                session("half", PLATE, OptionalDouble.of(0.5)),
                session("one", HEAD, OptionalDouble.of(1)),
                session("not noted", HEAD, OptionalDouble.empty())),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    return Sensitivity.of(study, captures);
  }

  /**
   * Two captures of 90 and 92 dB at 0.5 V: 91 + 6.0206 dB at 1 V; 1 mW takes √(0.001·32) = 0.17889
   * V, 14.9485 dB less.
   */
  @Test
  void levelsAreReferredToOneVoltAndOneMilliwatt() {
    add("Oak", PLATE, 90, "half");
    add("Oak", PLATE, 92, "half");
    add("Ash", HEAD, 100, "one");
    List<Sensitivity> found = found();
    assertEquals(2, found.size());
    Sensitivity oak = found.get(0);
    assertEquals("Oak", oak.unit().name());
    assertEquals("plate", oak.fixture());
    assertEquals(2, oak.captures());
    assertEquals(97.0206, oak.levelAt1VoltDb(), 1e-4);
    assertEquals(82.0721, oak.levelAt1MilliwattDb().orElseThrow(), 1e-4);
    assertEquals(100, found.get(1).levelAt1VoltDb(), 1e-9);
    assertEquals(OptionalDouble.empty(), found.get(1).levelAt1MilliwattDb());
  }

  /** A mean over captures of which one has no known drive would be of other captures. */
  @Test
  void aUnitWithoutTheDriveOfEveryCaptureIsLeftOut() {
    add("Oak", PLATE, 90, "half");
    add("Oak", HEAD, 90, "one");
    add("Oak", HEAD, 90, "not noted");
    add("Ash", HEAD, 90, "");
    assertEquals(List.of("plate"), found().stream().map(Sensitivity::fixture).toList());
  }
}
