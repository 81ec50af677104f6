package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.evidence.UncertaintyBudget;

/** The rows of error-budget.csv; an empty cell is not defined or not known, never zero. */
final class BudgetTable {
  private BudgetTable() {}

  static ResultTable of(List<KindOutcome> kinds) {
    ResultTable table =
        new ResultTable(
            ("kind,band_hz,seating_from_db,seating_to_db,units_db,fit_db,calibrator_db,drift_db,combined_db,"
                    + "effective_dof,coverage_factor,expanded_db,not_known,monte_carlo_sd_db,"
                    + "monte_carlo_expanded_db,monte_carlo_agrees")
                .split(","));
    for (KindOutcome kind : kinds) {
      for (BandBudget band : kind.budget().bands()) {
        table.text(kind.kind()).hz(band.band().midHz());
        row(table, band);
      }
    }
    return table;
  }

  private static void row(ResultTable table, BandBudget band) {
    table
        .number(root(band.variance(ErrorSource.SEATING_FROM)))
        .number(root(band.variance(ErrorSource.SEATING_TO)))
        .number(root(band.variance(ErrorSource.UNITS)))
        .number(root(band.variance(ErrorSource.FIT)))
        .number(root(band.calibratorVariance()))
        .number(root(band.variance(ErrorSource.DRIFT)));
    total(table, band.total());
    table.word(band.unknown().stream().map(ErrorSource::word).collect(Collectors.joining("; ")));
    Optional<BandBudget.MonteCarloCheck> check = band.monteCarlo();
    if (check.isPresent()) {
      table
          .number(check.get().standardDeviationDb())
          .number(check.get().expandedDb())
          .word(check.get().agrees() ? "yes" : "no")
          .endRow();
    } else {
      table.empty(3).endRow();
    }
  }

  private static void total(ResultTable table, Optional<UncertaintyBudget> total) {
    if (total.isEmpty()) {
      table.empty(4);
      return;
    }
    double freedom = total.get().effectiveDegreesOfFreedom();
    table.number(total.get().combined());
    if (Double.isInfinite(freedom)) {
      table.word("Inf");
    } else {
      table.number(freedom);
    }
    double factor = total.get().coverageFactor();
    table.number(factor).number(factor * total.get().combined());
  }

  private static OptionalDouble root(OptionalDouble variance) {
    return variance.isPresent()
        ? OptionalDouble.of(Math.sqrt(variance.getAsDouble()))
        : OptionalDouble.empty();
  }
}
