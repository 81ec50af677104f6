package org.twinrig.simulation;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

/**
 * The texts of a simulated study: its study file, and its tables, one line of text per row, with
 * the truth on the default bands and anchor.
 */
record SimulatedTables(SimulatedStudy study) {
  /** The curve that compensated graphs had subtracted, relative to catalogue.csv. */
  static final String REFERENCE_FILE = "catalogue/" + CatalogueDraw.REFERENCE + ".csv";

  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);
  private static final Anchor ANCHOR = new Anchor.Range(500, 1000);

  /** The study file for data that stand at the end of a path from its folder. */
  String studyFile(String data) {
    String catalogue = study.catalogue().isEmpty() ? "" : "catalogue: " + data + "catalogue.csv\n";
    return """
        # A simulated study: its truth is known and stands in %1$struth/.
        title: Plate to head
        from: %2$s
        to: %3$s
        fixtures:
        %4$s
        %5$s
        units: %1$sunits.csv
        captures: %1$scaptures.csv
        sessions: %1$ssessions.csv
        %6$szones:
          - { name: canal entrance resonance, fixture: %2$s, from_hz: 8000, to_hz: 10000 }
        screening: { apply: exclude }
        seed: 1
        """
        .formatted(
            data,
            study.from().name(),
            study.to().name(),
            fixture(study.from()),
            fixture(study.to()),
            catalogue);
  }

  private static String fixture(Fixture fixture) {
    return "  %s: { label: %s, ear_simulator: %s%s%s }"
        .formatted(
            fixture.name(),
            fixture.label(),
            fixture.earSimulator(),
            range("simulates_hz", fixture.simulates()),
            range("usable_hz", fixture.usable()));
  }

  private static String range(String key, Optional<FrequencyRange> range) {
    return range
        .map(
            r ->
                String.format(
                    ", %s: [%s, %s]",
                    key, Numbers.fixed(r.fromHz(), 0), Numbers.fixed(r.toHz(), 0)))
        .orElse("");
  }

  List<String> units() {
    return table(
        "unit,kind,role,note",
        study.units().stream().map(u -> row(u.name(), u.kind(), word(u.role()), u.note())));
  }

  List<String> captures() {
    return table(
        "unit,fixture,side,seating,file,session,exclude,note",
        study.captures().stream()
            .map(Capture::entry)
            .map(e -> place(e) + row(e.file(), e.session(), e.exclude(), e.note())));
  }

  List<String> sessions() {
    return table(
        "session,date,fixture,calibrator_nominal_db,calibrator_read_db,pressure_kpa,"
            + "temperature_c,operator,note",
        study.sessions().stream()
            .map(
                s ->
                    row(
                        s.name(),
                        s.date(),
                        s.fixture(),
                        Numbers.fixed(s.calibratorNominalDb(), 1),
                        Numbers.fixed(s.calibratorReadDb(), 2),
                        Numbers.fixed(s.pressureKpa().orElseThrow(), 1),
                        Numbers.fixed(s.temperatureC().orElseThrow(), 1),
                        s.operator(),
                        s.note())));
  }

  List<String> catalogue() {
    return table(
        "graph,unit,kind,file,seatings,form,reference,smoothing",
        study.catalogue().stream()
            .map(
                g ->
                    row(
                        g.graph(),
                        g.unit(),
                        g.kind(),
                        graphFile(g),
                        g.seatings(),
                        word(g.form()),
                        g.form() == SimulatedGraph.Form.COMPENSATED ? REFERENCE_FILE : "",
                        "none")));
  }

  static String graphFile(SimulatedGraph graph) {
    return "catalogue/" + graph.graph().toLowerCase(Locale.ROOT) + ".csv";
  }

  List<String> troubles() {
    return table(
        """
        # What was planted, so that screening can be held against it.
        unit,fixture,side,seating,trouble,excluded_by_lab""",
        study.simulated().stream()
            .filter(made -> made.planted().isPresent())
            .map(
                made ->
                    place(made.capture().entry())
                        + row(
                            word(made.planted().get()),
                            made.capture().entry().excludedByLab() ? "yes" : "no")));
  }

  List<String> claims() {
    return table(
        """
        # Old graphs that are not what catalogue.csv lists them as.
        graph,truth""",
        study.catalogue().stream()
            .filter(g -> !g.truth().isEmpty())
            .map(g -> row(g.graph(), g.truth())));
  }

  List<String> trueMeanTransfer() {
    return table(
        """
        # The true mean transfer of each kind: the expectation, over all units of the kind
        # and over the good seatings of each, of anchored level on the new fixture minus
        # anchored level on the old one. Anchor: mean of the bands from 500 Hz to 1000 Hz.
        # Lost seals, drift and noise have no part in it.
        # Monte Carlo over %s units per kind.
        kind,band_hz,lower_hz,upper_hz,true_db"""
            .formatted(TrueLevels.POPULATION),
        study.plan().groups().stream()
            .map(SimulationPlan.Group::kind)
            .flatMap(
                kind ->
                    bands(
                        study.trueMeanTransfer(kind, GRID, ANCHOR),
                        b -> row(kind.label(), hz(b.midHz()), hz(b.lowerHz()), hz(b.upperHz())))));
  }

  List<String> trueUnitTransfer() {
    return table(
        """
        # Each unit's own transfer in expectation over its good seatings, mean over its
        # measured sides; anchored as in mean-transfer.csv.
        unit,kind,band_hz,true_db""",
        study.units().parallelStream()
            .flatMap(
                u ->
                    bands(
                        study.trueUnitTransfer(u.name(), GRID, ANCHOR),
                        b -> row(u.name(), u.kind(), hz(b.midHz())))));
  }

  List<String> trueCatalogue() {
    return table(
        """
        # What the new fixture would show of each catalogue unit, raw: band levels relative
        # to their own mean from 500 Hz to 1000 Hz, in expectation over good seatings. To
        # compare, subtract the same mean from a translated graph. For a compensated graph
        # this is the curve before any reference is subtracted.
        graph,band_hz,true_to_db""",
        study.catalogue().parallelStream()
            .flatMap(
                g ->
                    bands(
                        study.trueOnNewFixture(g.graph(), GRID, ANCHOR),
                        b -> row(g.graph(), hz(b.midHz())))));
  }

  /** A row per band that ends with its level. */
  private static Stream<String> bands(Levels levels, Function<Band, String> cells) {
    return IntStream.range(0, GRID.size())
        .mapToObj(b -> cells.apply(GRID.band(b)) + "," + Numbers.fixed(levels.db(b), 3));
  }

  private static List<String> table(String head, Stream<String> rows) {
    return Stream.concat(head.lines(), rows).toList();
  }

  private static String place(CaptureEntry e) {
    return row(e.unit(), e.fixture(), e.side().name(), e.seating()) + ",";
  }

  /** No cell holds a quote. */
  private static String row(Object... cells) {
    return Stream.of(cells)
        .map(Object::toString)
        .map(cell -> cell.indexOf(',') < 0 ? cell : '"' + cell + '"')
        .collect(Collectors.joining(","));
  }

  private static String hz(double hz) {
    return Numbers.fixed(hz, 2);
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
