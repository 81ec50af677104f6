package org.twinrig.analysis;

import java.util.List;
import java.util.function.Supplier;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.PredictionErrors;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.regression.KindEstimate;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.TransferFunction;

/**
 * Everything a study found about one kind.
 *
 * @param zones runs of bands with the same mark
 * @param wanders resonances looked at, notch before peak; those too rarely seen are left out
 * @param stability how often bands keep their marks and zones their edges
 * @param budgeted gives where the error of a translated level comes from; its Monte Carlo run takes
 *     longer than all else, and only a report asks for it
 * @param repeatability how far seatings scatter
 * @param seatings what more seatings buy, by region
 * @param evidence whether all this supports its use
 */
public record KindOutcome(
    PairedUnits paired,
    KindEstimate estimate,
    TransferFunction transfer,
    List<Zone> zones,
    List<ResonanceWander> wanders,
    MarkStability.Result stability,
    Supplier<ErrorBudget> budgeted,
    Repeatability repeatability,
    List<SeatingsNeeded> seatings,
    KindEvidence evidence) {

  public KindOutcome {
    zones = List.copyOf(zones);
    wanders = List.copyOf(wanders);
    seatings = List.copyOf(seatings);
  }

  /** Errors on units that did not enter, by region. */
  public List<PredictionErrors> errors() {
    return evidence.leftOut().regions();
  }

  /** Where the error of a translated level comes from. */
  public ErrorBudget budget() {
    return budgeted.get();
  }

  /** The kind: its name. */
  public String kind() {
    return paired.kind();
  }
}
