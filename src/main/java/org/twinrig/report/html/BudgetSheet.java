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
import org.twinrig.study.CalibratorClass;
import org.twinrig.study.Settings;

/** The error budget by kind and region, and how to read it. */
final class BudgetSheet {
  private BudgetSheet() {}

  static StudyView.Budget view(StudyOutcome outcome) {
    Settings settings = outcome.study().settings();
    return new StudyView.Budget(
        List.of(howToRead(settings.confidence()), calibrator(settings)),
        sheet(outcome),
        outcome.kinds().stream().map(BudgetCheckSentence::of).toList());
  }

  static String howToRead(double confidence) {
    return "This is the budget of one quantity: how far the difference that a single new unit of the"
        + " kind shows between the fixtures, averaged over as many seatings on each as in this study,"
        + " lies from the mean transfer. The table gives the share of the variance that each source"
        + " adds. Where units have the greatest share, more seatings do not help; where seating has"
        + " it, more seatings do; where the fit of the mean has it, more units do. The combined"
        + " standard uncertainty is the root of the mean variance over the bands of a region; times"
        + " the coverage factor it is the expanded uncertainty, ± at "
        + Numbers.fixed(100 * confidence, 0)
        + " %. Few degrees of freedom mean that the uncertainty itself is badly known, and raise the"
        + " factor. Seating that was never repeated cannot be told from the units and is counted with"
        + " them. The marks do not rest on this budget but on the errors above.";
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

  private static Sheet sheet(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      RegionBudget.of(kind.budget()).forEach(r -> rows.add(row(kind.kind(), r)));
    }
    return new Sheet(
        "Shares of the variance of one unit's translated level, and the whole",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Region"),
            Sheet.numbers("Units (%)"),
            Sheet.numbers("Seating, old (%)"),
            Sheet.numbers("Seating, new (%)"),
            Sheet.numbers("Fit (%)"),
            Sheet.numbers("Calibra\u00adtors (%)"),
            Sheet.numbers("Com\u00adbined (dB)"),
            Sheet.numbers("Degrees of freedom"),
            Sheet.numbers("Factor"),
            Sheet.numbers("Ex\u00adpanded (dB)")),
        rows);
  }

  private static List<Sheet.Cell> row(String kind, RegionBudget region) {
    List<Sheet.Cell> cells = new ArrayList<>();
    cells.add(Sheet.text(kind));
    cells.add(Sheet.ordered(region.region().word(), region.region().fromHz()));
    cells.add(share(region.share(ErrorSource.UNITS), "none"));
    cells.add(share(region.share(ErrorSource.SEATING_FROM), "in units"));
    cells.add(share(region.share(ErrorSource.SEATING_TO), "in units"));
    cells.add(share(region.share(ErrorSource.FIT), "none"));
    OptionalDouble one = region.share(ErrorSource.CALIBRATOR_FROM);
    OptionalDouble other = region.share(ErrorSource.CALIBRATOR_TO);
    cells.add(
        share(
            one.isPresent() && other.isPresent()
                ? OptionalDouble.of(one.getAsDouble() + other.getAsDouble())
                : OptionalDouble.empty(),
            "not known"));
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
    return List.of(
        Sheet.hundredths(rms(bands, UncertaintyBudget::combined)),
        range(bands, UncertaintyBudget::effectiveDegreesOfFreedom, 0),
        range(bands, UncertaintyBudget::coverageFactor, 2),
        Sheet.hundredths(rms(bands, UncertaintyBudget::expanded)));
  }

  private static double rms(List<UncertaintyBudget> bands, ToDoubleFunction<UncertaintyBudget> of) {
    double mean = bands.stream().mapToDouble(of).map(x -> x * x).average().orElseThrow();
    return Math.sqrt(mean);
  }

  /** From the least to the greatest over the bands, sorted by the least. */
  private static Sheet.Cell range(
      List<UncertaintyBudget> bands, ToDoubleFunction<UncertaintyBudget> of, int decimals) {
    double least = bands.stream().mapToDouble(of).min().orElseThrow();
    double most = bands.stream().mapToDouble(of).max().orElseThrow();
    String from = text(least, decimals);
    String to = text(most, decimals);
    double order = Double.isInfinite(least) ? Double.MAX_VALUE : least;
    return Sheet.ordered(from.equals(to) ? from : from + " to " + to, order);
  }

  private static String text(double value, int decimals) {
    return Double.isInfinite(value) ? "∞" : Numbers.fixed(value, decimals);
  }
}
