package org.twinrig.scripting;

import java.util.List;
import java.util.Optional;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;

/**
 * The transfer of a kind at one band, new minus old.
 *
 * @param units how many units have a level there on both fixtures
 * @param estimate the transfer with its intervals; nothing with fewer than three units
 * @param mark how far a level translated there may be trusted
 * @param reasons why the mark is below reliable; empty when it is reliable
 */
public record TransferBand(
    Band band, int units, Optional<Estimate> estimate, Mark mark, List<Reason> reasons) {

  /**
   * The mean transfer of the kind in dB, with half-widths in dB of three intervals at the study's
   * confidence: of the mean at this band by itself; of the mean at all bands at once; and of a
   * single unit, where a new measurement of it, averaged over as many seatings as in the study, is
   * expected about what is predicted for it.
   */
  public record Estimate(
      double meanDb, double meanHalfDb, double simultaneousHalfDb, double predictionHalfDb) {}

  public double midHz() {
    return band.midHz();
  }

  static TransferBand of(MarkedBand marked) {
    Optional<Estimate> estimate =
        marked.outcome() instanceof BandOutcome.Fitted fitted
            ? Optional.of(
                new Estimate(
                    fitted.mean().meanDb(),
                    fitted.mean().halfWidthDb(),
                    fitted.simultaneousHalfDb(),
                    fitted.prediction().halfDb()))
            : Optional.empty();
    return new TransferBand(
        marked.band(), marked.outcome().units(), estimate, marked.mark(), marked.reasons());
  }
}
