package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;

/**
 * One band of a re-expressed graph.
 *
 * @param band the band
 * @param fromDb level of the old graph in dB; nothing where it does not cover the band
 * @param predicted level on the new fixture with its prediction interval; nothing where the old
 *     graph or the study has no level
 * @param mark how far it may be trusted
 * @param reasons why the mark is below reliable
 */
public record TranslatedBand(
    Band band,
    OptionalDouble fromDb,
    Optional<Predicted> predicted,
    Mark mark,
    List<Reason> reasons) {

  /** Copies the reasons. */
  public TranslatedBand {
    reasons = List.copyOf(reasons);
  }

  /**
   * A predicted level.
   *
   * @param toDb level on the new fixture, dB
   * @param halfDb half-width of the prediction interval, dB
   */
  public record Predicted(double toDb, double halfDb) {
    /** Refuses anything that is not a number. */
    public Predicted {
      Checks.finite(toDb, "a translated level in dB");
      Checks.notNegative(halfDb, "a prediction half-width in dB");
    }

    /**
     * Lower end of the prediction interval.
     *
     * @return dB
     */
    public double lowDb() {
      return toDb - halfDb;
    }

    /**
     * Upper end of the prediction interval.
     *
     * @return dB
     */
    public double highDb() {
      return toDb + halfDb;
    }
  }

  /**
   * Whether there is no level to mark.
   *
   * @return true when the old graph does not cover the band
   */
  public boolean missing() {
    return fromDb.isEmpty();
  }
}
