package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.evidence.UncertaintyBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.CalibratorClass;
import org.twinrig.study.Settings;

/** The error budget by kind and region, and how to read it. */
final class BudgetSheet {
  private BudgetSheet() {}

  static StudyView.Budget view(StudyOutcome outcome) {
    Settings settings = outcome.study().settings();
    return new StudyView.Budget(
        howToRead(outcome, settings),
        sheet(outcome),
        outcome.kinds().stream().map(BudgetCheckSentence::of).toList());
  }

  private static List<String> howToRead(StudyOutcome outcome, Settings settings) {
    List<String> words =
        new ArrayList<>(List.of(what(), howToRead(settings.confidence()), calibrator(settings)));
    if (outcome.sessions().flatMap(SessionReview::correction).isPresent()) {
      words.add(
          "Drift stands for what the correction of the sessions brings in: the check unit's own seating"
              + " scatter. As far as units were captured in different sessions it is in the scatter"
              + " between units too, so that the whole is on the cautious side.");
    }
    return words;
  }

  static String what() {
    return "This is the budget of one quantity: how far the difference that a single new unit of the"
        + " kind shows between the fixtures, averaged over as many seatings on each as in this study,"
        + " lies from the mean transfer. Seating that was never repeated cannot be told from the units"
        + " and is counted with them. The marks do not rest on this budget but on the errors above.";
  }

  static String howToRead(double confidence) {
    return "The table gives the share of the variance that each source adds. Where units have the greatest share, more seatings do not help; where seating has"
        + " it, more seatings do; where the fit of the mean has it, more units do. The combined"
        + " standard uncertainty is the root of the mean variance over the bands of a region; times"
        + " the factor it is the expanded uncertainty, ± at "
        + Numbers.fixed(100 * confidence, 0)
        + " %. Few degrees of freedom (d.f., the fewest of any band) mean that the uncertainty itself"
        + " is badly known, and raise the factor.";
  }

  static String calibrator(Settings settings) {
    return switch (ErrorBudget.Calibration.of(settings)) {
      case CANCELS ->
          "The calibrators add nothing: every capture is pinned to the anchor, "
              + settings.anchor().words()
              + ", and the level of either measuring chain cancels.";
      case BY_CLASS -> byClass(settings.calibratorClass().orElseThrow());
      case NOT_KNOWN ->
          "There is no anchor, so the calibrators' errors count in full, and their class is not"
              + " known: nothing is combined. Write `calibrator_class` (`1`, `2` or `LS`, after IEC"
              + " 60942) into study.yaml. The shares are those of the sources that are known.";
    };
  }

  private static String byClass(CalibratorClass c) {
    return "There is no anchor, so the calibrators' errors count in full: class "
        + c.word()
        + " of IEC 60942, rectangular within ± "
        + Numbers.fixed(c.levelLimitDb(), 2)
        + " dB, once for each fixture as if they were independent. If one calibrator served both"
        + " fixtures, its own error cancels and this is on the cautious side.";
  }

  /** Which sources have a column that is not always there. */
  private record Shown(boolean calibrators, boolean drift) {}

  private static Sheet sheet(StudyOutcome outcome) {
    boolean calibrators =
        ErrorBudget.Calibration.of(outcome.study().settings()) != ErrorBudget.Calibration.CANCELS;
    boolean drift = outcome.sessions().flatMap(SessionReview::correction).isPresent();
    Shown shown = new Shown(calibrators, drift);
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      RegionBudget.of(kind.budget()).forEach(r -> rows.add(row(kind.kind(), r, shown)));
    }
    List<Sheet.Column> columns = new ArrayList<>();
    columns.add(Sheet.names("Kind"));
    columns.add(Sheet.names("Region"));
    columns.add(Sheet.numbers("Units (%)"));
    columns.add(Sheet.numbers("Seat\u00ading, old (%)"));
    columns.add(Sheet.numbers("Seat\u00ading, new (%)"));
    columns.add(Sheet.numbers("Fit (%)"));
    if (calibrators) {
      columns.add(Sheet.numbers("Cali\u00adbra\u00adtors (%)"));
    }
    if (drift) {
      columns.add(Sheet.numbers("Drift (%)"));
    }
    columns.add(Sheet.numbers("Com\u00adbined (dB)"));
    columns.add(Sheet.numbers("Least d.f."));
    columns.add(Sheet.numbers("Fac\u00adtor"));
    columns.add(Sheet.numbers("Ex\u00adpanded (dB)"));
    return new Sheet(
        "Shares of the variance of one unit's translated level, and the whole", columns, rows);
  }

  private static List<Sheet.Cell> row(String kind, RegionBudget region, Shown shown) {
    List<Sheet.Cell> cells = new ArrayList<>();
    cells.add(Sheet.text(kind));
    cells.add(Sheet.ordered(region.region().word(), region.region().fromHz()));
    cells.add(share(region.share(ErrorSource.UNITS), "none"));
    cells.add(share(region.share(ErrorSource.SEATING_FROM), "in units"));
    cells.add(share(region.share(ErrorSource.SEATING_TO), "in units"));
    cells.add(share(region.share(ErrorSource.FIT), "none"));
    if (shown.calibrators) {
      cells.add(share(region.calibratorShare(), "not known"));
    }
    if (shown.drift) {
      cells.add(share(region.share(ErrorSource.DRIFT), "none"));
    }
    cells.addAll(region.totals().map(BudgetSheet::whole).orElseGet(BudgetSheet::noTotal));
    return cells;
  }

  private static Sheet.Cell share(OptionalDouble share, String otherwise) {
    return share.isPresent()
        ? Sheet.ordered(Numbers.fixed(100 * share.getAsDouble(), 0), share.getAsDouble())
        : Sheet.ordered(otherwise, -1);
  }

  private static List<Sheet.Cell> noTotal() {
    Sheet.Cell cell = Sheet.ordered("not known", -1);
    return List.of(cell, cell, cell, cell);
  }

  private static List<Sheet.Cell> whole(List<UncertaintyBudget> bands) {
    double combined = rms(bands, UncertaintyBudget::combined);
    double expanded = rms(bands, UncertaintyBudget::expanded);
    double least =
        bands.stream()
            .mapToDouble(UncertaintyBudget::effectiveDegreesOfFreedom)
            .min()
            .orElseThrow();
    return List.of(
        Sheet.hundredths(combined),
        Double.isInfinite(least)
            ? Sheet.ordered("∞", Double.MAX_VALUE)
            : Sheet.ordered(Numbers.fixed(least, 1), least),
        combined == 0 ? Sheet.ordered("none", -1) : Sheet.hundredths(expanded / combined),
        Sheet.hundredths(expanded));
  }

  private static double rms(List<UncertaintyBudget> bands, ToDoubleFunction<UncertaintyBudget> of) {
    double squares = bands.stream().mapToDouble(of).map(x -> x * x).sum();
    return Math.sqrt(squares / bands.size());
  }
}
