package org.twinrig.evidence;

import java.util.Objects;
import java.util.OptionalDouble;
import org.twinrig.internal.Checks;

/**
 * The errors made on units that a rule never saw, over one region of the frequency axis. Every band
 * of every unit counts once; what that says about coverage, and what not, stands at {@link
 * Coverage}.
 *
 * <p>Bias is measured minus predicted; the errors of the plain offset stand beside those of the
 * model, its choice included, all in dB; coverage is the share of errors inside the prediction
 * interval, nothing where no band has one.
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
