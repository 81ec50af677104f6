package org.twinrig.evidence;

import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * The errors on one unit that a rule never saw, over part of the frequency axis.
 *
 * <p>Bias is measured minus predicted; the errors of the plain offset stand beside those of the
 * model, all in dB; the share of its judged bands inside the prediction interval is missing where
 * none could be judged.
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
