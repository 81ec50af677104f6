package org.twinrig.evidence;

import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * The errors on one unit that a rule never saw, over part of the frequency axis.
 *
 * @param unit its name
 * @param biasDb mean error over the bands, measured minus predicted, dB
 * @param rmsOffsetDb root mean square error of the plain offset, dB
 * @param rmsDb the same of the model, dB
 * @param inside share of its judged bands inside the prediction interval; nothing when none could
 *     be judged
 */
public record UnitErrors(
    String unit,
    int bands,
    double biasDb,
    double rmsOffsetDb,
    double rmsDb,
    OptionalDouble inside) {
  public UnitErrors {
    Checks.finite(biasDb, "bias_db");
    Checks.notNegative(rmsOffsetDb, "rms_offset_db");
    Checks.notNegative(rmsDb, "rms_db");
  }
}
