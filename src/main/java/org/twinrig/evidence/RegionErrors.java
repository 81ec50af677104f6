package org.twinrig.evidence;

import java.util.Objects;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * The errors made on units that a rule never saw, over one region of the frequency axis. Every band
 * of every unit counts once; what that says about coverage, and what not, stands at {@link
 * Coverage}.
 *
 * @param biasDb mean error over units and bands, measured minus predicted, dB
 * @param rmsOffsetDb root mean square error of the plain offset, dB
 * @param rmsDb root mean square error of the model, its choice included, dB
 * @param coverage share of errors inside the prediction interval; nothing where no band has one
 */
public record RegionErrors(
    Region region,
    int units,
    double biasDb,
    double rmsOffsetDb,
    double rmsDb,
    OptionalDouble coverage) {

  public RegionErrors {
    Checks.finite(biasDb, "bias_db");
    Checks.notNegative(rmsOffsetDb, "rms_offset_db");
    Checks.notNegative(rmsDb, "rms_db");
    Objects.requireNonNull(coverage, "coverage");
  }
}
