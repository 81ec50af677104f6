package org.twinrig.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.Figure;
import org.twinrig.proof.PlanProofRow;
import org.twinrig.proof.PlanTrials;

/**
 * What a proof of plans gave, as a table and sentences for a terminal.
 *
 * @param trials what was tried
 * @param rows what it gave
 */
public record PlanProofWords(PlanTrials trials, List<PlanProofRow> rows) {
  /** Copies the rows. */
  public PlanProofWords {
    rows = List.copyOf(rows);
  }

  /**
   * Table and sentences; the last one says whether the promise is kept.
   *
   * @return line by line
   */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        trials.studies()
            + " small studies of "
            + Numbers.count(trials.units(), "unit", "units")
            + " with "
            + trials.seatings()
            + " seatings on each fixture, planned for "
            + Numbers.fixed(trials.toleranceDb(), 2)
            + " dB and gone on with");
    lines.add(
        format("kind", "claim", "zones", "within 10 %, %", "within, %", "reached/asked", "units"));
    for (PlanProofRow row : rows) {
      lines.add(
          format(
              row.kind(),
              row.claim().word(),
              row.zones(),
              withError(row.withinSlack(), 100, 1),
              withError(row.withinTolerance(), 100, 1),
              withError(row.ratio(), 1, 3),
              Numbers.fixed(row.meanUnits(), 1)));
    }
    lines.add("± is one Monte Carlo standard error between studies.");
    lines.add(verdict());
    lines.addAll(newly());
    return lines;
  }

  private String verdict() {
    List<PlanProofRow> broken = rows.stream().filter(r -> !r.kept()).toList();
    return broken.isEmpty()
        ? "Of the zones a plan promises, 90 % or more come within 10 % of the tolerance, for every"
            + " kind."
        : "The promise that 90 % of the zones come within 10 % of the tolerance is broken for "
            + String.join(", ", broken.stream().map(PlanProofRow::kind).toList())
            + ".";
  }

  /** What was promised beyond what the small studies met, told apart: there is little of it. */
  private List<String> newly() {
    return rows.stream()
        .filter(r -> r.kind().equals(PlanProofRow.ALL_KINDS))
        .filter(r -> r.claim() == PlanProofRow.Claim.NEWLY_PROMISED)
        .map(
            r ->
                "Of those the small study did not meet, "
                    + Numbers.count(r.zones(), "was", "were")
                    + " promised, and "
                    + Math.round(r.withinSlack().value() * r.zones())
                    + " came within 10 %.")
        .toList();
  }

  private static String withError(Figure figure, double scale, int decimals) {
    return Numbers.fixed(figure.value() * scale, decimals)
        + " ± "
        + Numbers.fixed(figure.monteCarloSe() * scale, decimals);
  }

  private static String format(Object... cells) {
    return String.format(Locale.ROOT, "%-16s %-15s %6s %15s %15s %15s %7s", cells);
  }
}
