package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Equivalence;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.RankFigure;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.screening.Screening;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * What the report says of equivalence, held-out units and ranks; see StudyPageTest for the rest.
 */
class EvidenceSheetsTest {
  private static final BandGrid GRID = BandGrid.covering(31.5, 16_000, 1);

  /** Six units that differ between the fixtures by {@code differences} and little else. */
  private static Equivalence equivalence(double... differences) {
    PairedUnits plain = HandMade.kind("in-ear", 6, "RRRRRRRRRR").paired();
    List<Levels> to =
        IntStream.range(0, 6)
            .mapToObj(
                i -> {
                  double[] db = differences.clone();
                  Arrays.setAll(db, b -> differences[b] + 0.03 * Math.sin(i * (b + 1)));
                  return Levels.copyOf(GRID, db);
                })
            .toList();
    PairedUnits paired =
        new PairedUnits(
            "in-ear",
            GRID,
            plain.units(),
            plain.from(),
            new PairedUnits.OnFixture(
                to, plain.to().seatings(), plain.to().seatingVariance(), plain.to().curves()));
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(paired);
    return Equivalence.of(estimate, new Anchor.None(), 0.5, 0.95);
  }

  @Test
  void whereTheMeanNeedsNoTranslationIsTold() {
    KindOutcome plain = HandMade.kind("in-ear", 6, "RRRRRRRRRR");
    List<KindOutcome> kinds =
        Stream.of(
                equivalence(3, 3, 0, 0, 0, 3, 3, 0.2, 2, 2),
                equivalence(3, 3, 3, 3, 3, 3, 3, 3, 3, 3))
            .map(e -> HandMade.with(plain, List.of(), plain.stability(), e))
            .toList();
    assertEquals(
        List.of(
            "In-ear: over 4.0 octaves the mean difference is shown to lie within ± 0.5 dB, at all"
                + " these bands at once.",
            "In-ear: at no band is the mean difference shown to lie within ± 0.5 dB when all bands"
                + " are looked at together."),
        PageChecks.items(HandMade.page(outcome(kinds)), "<h2>Where old graphs can stand</h2>")
            .subList(0, 2));
  }

  private static StudyOutcome outcome(List<KindOutcome> kinds, Unit... units) {
    Study study =
        new Study(
            Path.of("."),
            "Plate to head",
            new Fixture("plate", "Plate", "", 100, 10_000),
            new Fixture("head", "Head", "", 20, 20_000),
            List.of(units),
            List.of(),
            List.of(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    return new StudyOutcome(
        study,
        "0123456789ab",
        List.of(),
        Screening.of(study, List.of()),
        kinds,
        Optional.empty(),
        List.of(),
        List::of);
  }

  private static Unit unit(String name, Unit.Role role) {
    return new Unit(name, "in-ear", role, "", "", 2);
  }

  @Test
  void whatBecameOfHeldOutUnitsIsTold() {
    List<KindOutcome> kinds = List.of(HandMade.kind("in-ear", 3, "RRRRRRRRRR"));
    assertEquals(
        List.of("The lab held out no unit (role holdout in units.csv)."),
        heldOut(outcome(kinds, unit("Alder 3", Unit.Role.FIT))));
    assertEquals(
        List.of(
            "0 units that entered no fit were predicted like graphs of the catalogue and compared"
                + " with their captures on the new fixture.",
            "Held out but not judged, for want of captures on both fixtures or of a fit for their"
                + " kind: Oak 2, Elm 5."),
        heldOut(
            outcome(kinds, unit("Oak 2", Unit.Role.HOLDOUT), unit("Elm 5", Unit.Role.HOLDOUT))));
  }

  private static List<String> heldOut(StudyOutcome outcome) {
    return PageChecks.items(HandMade.page(outcome), "<h3>Units held out</h3>");
  }

  @Test
  void ranksAreToldInOneRowAKind() {
    // Spearman 1 - 6·12/(5·24) = 0.40; Kendall (7 - 3)/10 = 0.40.
    assertEquals(
        List.of(
            List.of(
                "Kind",
                "Units",
                "Spearman",
                "Kendall tau-b",
                "Ranks that change most",
                "Not ranked"),
            List.of(
                "in-ear",
                "5",
                "0.40 (-0.77 to 0.95)",
                "0.40 (-0.70 to 0.94)",
                "Oak 2 from 2 to 5; Elm 3 from 3 to 2; Fir 4 from 4 to 3",
                "none")),
        PageChecks.table(
            HandMade.page(outcome(List.of(HandMade.ranked()))),
            "How far the order of units keeps"));
  }

  @Test
  void ranksHaveTheirDrawing() {
    Figure drawn =
        RankFigure.of(HandMade.ranked(), new Caption("in-ear", 5, 0.95, "0123456789ab"))
            .orElseThrow();
    assertEquals("In-ear: 1 of 5 units keep their rank (Spearman 0.40)", drawn.title());
    assertTrue(drawn.svg().contains("Oak 2"), "the unit that falls most is named");
    assertTrue(drawn.svg().contains("Kendall tau-b 0.40 (-0.70 to 0.94, 95 %)"), drawn.svg());
    assertEquals(
        Optional.empty(),
        RankFigure.of(
            HandMade.kind("in-ear", 3, "RRRRRRRRRR"), new Caption("in-ear", 3, 0.95, "0")));
  }
}
