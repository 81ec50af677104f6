package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.BandBudget;
import org.twinrig.internal.Numbers;

/** One sentence per kind: what the Monte Carlo run says of the budget. */
final class BudgetCheckSentence {
  private BudgetCheckSentence() {}

  static String of(KindOutcome kind) {
    List<BandBudget> checked =
        kind.budget().bands().stream().filter(b -> b.monteCarlo().isPresent()).toList();
    String who = VerdictSentence.capital(kind.kind()) + ": ";
    if (checked.isEmpty()) {
      return who + "no band has a combined uncertainty to check.";
    }
    long agree = checked.stream().filter(b -> check(b).agrees()).count();
    return who
        + "with "
        + String.format(Locale.ROOT, "%,d", kind.budget().trials())
        + " draws a band, one band per octave, a Monte Carlo run after JCGM 101 agrees in "
        + agree
        + " of "
        + Numbers.count(checked.size(), "band", "bands")
        + " to one significant digit of the combined uncertainty; "
        + distance(checked)
        + noDeviation(checked);
  }

  private static BandBudget.MonteCarloCheck check(BandBudget band) {
    return band.monteCarlo().orElseThrow();
  }

  private static double difference(BandBudget band) {
    return check(band).expandedDb() / band.total().orElseThrow().expanded() - 1;
  }

  private static String distance(List<BandBudget> checked) {
    double least = checked.stream().mapToDouble(BudgetCheckSentence::difference).min().orElse(0);
    double most = checked.stream().mapToDouble(BudgetCheckSentence::difference).max().orElse(0);
    return "its expanded uncertainty is between "
        + percent(least)
        + " and "
        + percent(most)
        + " of the budget's.";
  }

  private static String percent(double difference) {
    return Numbers.fixed(100 * (1 + difference), 0) + " %";
  }

  private static String noDeviation(List<BandBudget> checked) {
    return checked.stream().allMatch(b -> check(b).standardDeviationDb().isPresent())
        ? ""
        : " With so few units or repeats the distribution has no standard deviation; only the"
            + " intervals are compared.";
  }
}
