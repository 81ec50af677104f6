package org.twinrig.reliability;

import java.util.List;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;

/**
 * A band's estimate together with how far it may be trusted.
 *
 * <p>Reasons say why the mark is below reliable, in the order of {@link Reason}; a reliable band
 * has none but {@linkplain Reason#note() notes}.
 */
public record MarkedBand(BandOutcome outcome, Mark mark, List<Reason> reasons) {

  public MarkedBand {
    reasons = reasons.stream().distinct().sorted().toList();
    if ((mark == Mark.RELIABLE) != reasons.stream().allMatch(Reason::note)) {
      throw new IllegalArgumentException(
          "a mark below reliable needs a reason and a reliable one has none: %s %s"
              .formatted(mark, reasons));
    }
  }

  public Band band() {
    return outcome.band();
  }

  /** Whether there is nothing to mark: neither estimate nor level. */
  public boolean empty() {
    return reasons.contains(Reason.NO_DATA);
  }
}
