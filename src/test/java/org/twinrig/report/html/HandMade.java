package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindEvidence;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.Validation;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.Figure;
import org.twinrig.response.Levels;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Change;
import org.twinrig.translation.Decision;
import org.twinrig.translation.MarkRow;
import org.twinrig.translation.Sketch;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Treatment;

/** Kinds and graphs whose marks are set by hand; ten bands of one octave from 31.5 Hz to 16 kHz. */
final class HandMade {
  private HandMade() {}

  /** R reliable, C caution, U unreliable, - no data; one letter a band. */
  static KindOutcome kind(String name, int units, String marks) {
    BandGrid grid = BandGrid.covering(31.5, 16_000, 1);
    if (marks.length() != grid.size()) {
      throw new IllegalArgumentException("the grid has " + grid.size() + " bands");
    }
    List<MarkedBand> bands = new ArrayList<>();
    for (int b = 0; b < grid.size(); b++) {
      BandOutcome outcome =
          new BandOutcome.NotFitted(grid.band(b), units, BandOutcome.Why.FEWER_THAN_THREE_UNITS);
      bands.add(
          switch (marks.charAt(b)) {
            case 'R' -> new MarkedBand(outcome, Mark.RELIABLE, List.of());
            case 'C' -> new MarkedBand(outcome, Mark.CAUTION, List.of(Reason.WIDE_PREDICTION));
            case 'U' -> new MarkedBand(outcome, Mark.UNRELIABLE, List.of(Reason.FEW_UNITS));
            default -> new MarkedBand(outcome, Mark.UNRELIABLE, List.of(Reason.NO_DATA));
          });
    }
    return new KindOutcome(
        new PairedUnits(
            name, grid, Collections.nCopies(units, "Alder"), flat(grid, units), flat(grid, units)),
        null,
        new TransferFunction(name, Collections.nCopies(units, "Alder"), grid, bands),
        Zone.of(bands),
        List.of(),
        List.of(),
        new MarkStability.Result(
            999, Collections.nCopies(grid.size(), Optional.empty()), List.of()),
        new ErrorBudget(name, List.of(), ErrorBudget.Calibration.CANCELS, 1),
        new Repeatability(name, List.of(), List.of(), 0.95),
        List.of(),
        new KindEvidence(
            new Equivalence(name, 0.5, 0.95, Collections.nCopies(grid.size(), Optional.empty())),
            Validation.none(),
            Validation.none(),
            Optional.empty(),
            new FixtureFeatures.Result(grid, Map.of())));
  }

  private static PairedUnits.OnFixture flat(BandGrid grid, int units) {
    Levels zero = Levels.copyOf(grid, new double[grid.size()]);
    return new PairedUnits.OnFixture(
        Collections.nCopies(units, zero),
        Collections.nCopies(units, Collections.nCopies(grid.size(), 1)),
        zero,
        Collections.nCopies(units, List.of(zero)));
  }

  static CatalogueRun.Line line(String graph, String kind, Decision decision, double lost) {
    return line(graph, kind, decision, lost, lost > 0 ? List.of(Reason.UNITS_DISAGREE) : List.of());
  }

  /** To be measured again for the given reasons. */
  static CatalogueRun.Line again(String graph, String kind, Reason... reasons) {
    return line(graph, kind, Decision.RE_MEASURE, 2, List.of(reasons));
  }

  private static CatalogueRun.Line line(
      String graph, String kind, Decision decision, double lost, List<Reason> reasons) {
    return new CatalogueRun.Line(
        new CatalogueEntry(
            graph,
            "Alder 3",
            kind,
            "g.csv",
            CatalogueEntry.Averaged.unknown(),
            Optional.empty(),
            Optional.of(Smoothing.NONE),
            2),
        decision,
        new CatalogueRun.Octaves(9.97 - lost, 0, lost, 0, lost),
        reasons,
        new MarkRow("UCRRRRRRCU"),
        Treatment.RAW,
        new Change(OptionalDouble.of(1), OptionalDouble.of(1), OptionalDouble.empty()),
        Sketch.empty(10),
        "0".repeat(64));
  }

  static Figure figure(String title) {
    return new Figure(
        title, title, "alt of " + title, "<svg role=\"img\"></svg>", () -> new byte[0]);
  }
}
