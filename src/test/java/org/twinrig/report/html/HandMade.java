package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.twinrig.analysis.KindEvidence;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.Validation;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Smoothing;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
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
  /** One figure in each place, named after it. */
  static final StudyDrawings FIGURES =
      new StudyDrawings(
          Stream.of(
                  "transfer-made",
                  "error-made",
                  "budget-made",
                  "captures-made",
                  "unit-made",
                  "units-made",
                  "drift-made",
                  "repeatability-made",
                  "calibration-made",
                  "rank-made",
                  "resonance-made",
                  "feature-made")
              .map(HandMade::figure)
              .toList());

  private HandMade() {}

  /** The report of an outcome without problems, with a figure in each place. */
  static String page(StudyOutcome outcome) {
    return StudyPage.html(
        outcome, new InputFingerprint(List.of(), "0123456789ab"), List.of(), FIGURES);
  }

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
        new MarkStability.Result(
            999, Collections.nCopies(grid.size(), Optional.empty()), List.of()),
        () -> new ErrorBudget(name, List.of(), ErrorBudget.Calibration.CANCELS, 1),
        new Repeatability(name, List.of(), List.of(), 0.95),
        List.of(),
        evidence(
            new Equivalence(
                name,
                new Anchor.None(),
                0.5,
                0.95,
                Collections.nCopies(grid.size(), Optional.empty())),
            Optional.empty()));
  }

  /** Five units whose ranks change: Spearman 1 - 6·12/(5·24) = 0.40; Kendall (7 - 3)/10 = 0.40. */
  static KindOutcome ranked() {
    KindOutcome plain = kind("in-ear", 5, "RRRRRRRRRR");
    BandGrid grid = plain.paired().grid();
    List<String> names = List.of("Alder 1", "Oak 2", "Elm 3", "Fir 4", "Yew 5");
    PairedUnits paired =
        new PairedUnits(
            "in-ear",
            grid,
            names,
            moved(plain.paired().from(), 1, 2, 3, 4, 5),
            moved(plain.paired().to(), 1, 5, 2, 3, 4));
    Levels zero = Levels.copyOf(grid, new double[grid.size()]);
    RankKeeping.Result ranks =
        new RankKeeping(0.95)
            .of(paired, new RankKeeping.References(zero, zero, new FrequencyRange(100, 10_000)));
    return new KindOutcome(
        paired,
        plain.estimate(),
        plain.transfer(),
        plain.zones(),
        plain.wanders(),
        plain.stability(),
        plain.budgeted(),
        plain.repeatability(),
        plain.seatings(),
        evidence(plain.evidence().equivalence(), Optional.of(ranks)));
  }

  private static KindEvidence evidence(
      Equivalence equivalence, Optional<RankKeeping.Result> ranks) {
    return new KindEvidence(
        equivalence,
        new Validation(List.of(), List.of(), List.of()),
        new Validation(List.of(), List.of(), List.of()),
        ranks,
        new FixtureFeatures.Result(
            BandGrid.covering(31.5, 16_000, 1),
            Collections.nCopies(3, new FixtureFeatures.Contrast(List.of(), List.of()))));
  }

  /** A kind with other resonances, marks in draws and equivalence. */
  static KindOutcome with(
      KindOutcome plain,
      List<ResonanceWander> wanders,
      MarkStability.Result stability,
      Equivalence equivalence) {
    return new KindOutcome(
        plain.paired(),
        plain.estimate(),
        plain.transfer(),
        plain.zones(),
        wanders,
        stability,
        plain.budgeted(),
        plain.repeatability(),
        plain.seatings(),
        evidence(equivalence, Optional.empty()));
  }

  private static PairedUnits.OnFixture moved(PairedUnits.OnFixture like, double... levelsDb) {
    BandGrid grid = like.seatingVariance().grid();
    List<Levels> means =
        Arrays.stream(levelsDb)
            .mapToObj(
                db -> {
                  double[] levels = new double[grid.size()];
                  Arrays.fill(levels, db);
                  return Levels.copyOf(grid, levels);
                })
            .toList();
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(5, Collections.nCopies(grid.size(), 1)),
        like.seatingVariance(),
        like.curves());
  }

  private static PairedUnits.OnFixture flat(BandGrid grid, int units) {
    Levels zero = Levels.copyOf(grid, new double[grid.size()]);
    return new PairedUnits.OnFixture(
        Collections.nCopies(units, zero),
        Collections.nCopies(units, Collections.nCopies(grid.size(), 1)),
        zero,
        Collections.nCopies(units, List.of(zero)));
  }

  /** The study of an outcome with other kinds and settings; sessions are not looked at. */
  static StudyOutcome outcome(StudyOutcome like, Settings settings, List<KindOutcome> kinds) {
    return outcome(like, like.study().withSettings(settings), kinds);
  }

  static StudyOutcome outcome(StudyOutcome like, Study study, List<KindOutcome> kinds) {
    return new StudyOutcome(
        study,
        like.fingerprint(),
        List.of(),
        like.screening(),
        kinds,
        Optional.empty(),
        List.of(),
        List::of);
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
            new CatalogueEntry.Averaged(OptionalInt.empty(), OptionalInt.empty()),
            Optional.empty(),
            Optional.of(Smoothing.NONE),
            Optional.empty(),
            "",
            "",
            2),
        decision,
        new CatalogueRun.Octaves(9.97 - lost, 0, lost, 0, lost),
        reasons,
        new MarkRow("UCRRRRRRCU"),
        Treatment.RAW,
        new Change(OptionalDouble.of(1), OptionalDouble.of(1), OptionalDouble.empty()),
        0.4,
        Sketch.empty(10),
        List.of(),
        "0".repeat(64));
  }

  static Figure figure(String title) {
    return new Figure(
        title, title, "alt of " + title, "<svg role=\"img\"></svg>", () -> new byte[0]);
  }
}
