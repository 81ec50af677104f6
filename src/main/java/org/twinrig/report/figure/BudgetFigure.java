package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.RegionBudget;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.MarkedBand;

/** Where the error of a translated level comes from: variances stacked over frequency. */
public final class BudgetFigure {
  /** A smaller axis, in dB², would blow up what is of no account. */
  private static final double LEAST_TOP = 0.5;

  private BudgetFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param caption what the drawing carries
   * @return the drawing
   */
  public static Figure of(KindOutcome kind, Caption caption) {
    List<MarkedBand> marked = kind.transfer().bands();
    double[] hz = marked.stream().mapToDouble(b -> b.band().midHz()).toArray();
    VarianceStack stack = VarianceStack.of(hz, kind.budget());
    Panel.Range range = Panel.Range.ofVariances(Math.max(LEAST_TOP, stack.greatest()));
    String title = title(kind);
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted() + "; variance of one unit's translated level" + note(kind),
                    "Variance, dB²",
                    caption.fingerprint()),
                range)
            .withoutScale();
    stack.paint(panel, range);
    panel.withStrip(TransferFigure.cells(marked));
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("budget", kind.kind()),
            title,
            "Variances by source, stacked, against frequency, with marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  /** Where the variance is greatest, and what most of it there is. */
  static String title(KindOutcome kind) {
    String who = TransferFigure.capital(kind.kind()) + ": ";
    Optional<RegionBudget> worst =
        RegionBudget.of(kind.budget()).stream()
            .max(Comparator.comparingDouble(RegionBudget::knownVariance));
    if (worst.isEmpty()) {
      return who + "no band has an estimate";
    }
    RegionBudget region = worst.get();
    Optional<ErrorSource> first =
        Arrays.stream(ErrorSource.values())
            .filter(s -> region.share(s).isPresent())
            .max(Comparator.comparingDouble(s -> region.share(s).orElse(0)));
    if (first.isEmpty()) {
      return who + "the fixtures differ by the same for every unit";
    }
    return who
        + "most error from "
        + Numbers.hertz(region.region().fromHz())
        + " to "
        + Numbers.hertz(region.region().toHz())
        + ", "
        + Numbers.fixed(100 * region.share(first.get()).orElseThrow(), 0)
        + " % "
        + VarianceStack.word(first.get());
  }

  private static String note(KindOutcome kind) {
    String calibrators =
        switch (kind.budget().calibration()) {
          case CANCELS -> "; the calibrators cancel";
          case BY_CLASS -> "";
          case NOT_KNOWN -> "; without the calibrators, which are not known";
        };
    boolean seating =
        kind.budget().bands().stream()
            .anyMatch(
                b ->
                    b.variance(ErrorSource.SEATING_FROM).isEmpty()
                        || b.variance(ErrorSource.SEATING_TO).isEmpty());
    return calibrators + (seating ? "; seating not repeated counts as units" : "");
  }
}
