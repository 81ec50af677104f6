package org.twinrig.evidence;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.twinrig.internal.Checks;

/**
 * The errors made on units that a rule never saw, of one unit or of several together, over part of
 * the frequency axis (nothing for all bands). Every band of every unit counts once; what that says
 * about coverage, and what not, stands at {@link Coverage}.
 *
 * <p>How many bands have an error; bias, measured minus predicted; the errors of the plain offset
 * beside those of the model, its choice included, all in dB; and the share of errors inside the
 * prediction interval, nothing where no band has one.
 */
public record PredictionErrors(
    Optional<Region> region,
    Set<String> units,
    int bands,
    double biasDb,
    double rmsOffsetDb,
    double rmsDb,
    OptionalDouble inside) {
  public PredictionErrors {
    units = Set.copyOf(units);
    Checks.finite(biasDb, "bias_db");
    Checks.notNegative(rmsOffsetDb, "rms_offset_db");
    Checks.notNegative(rmsDb, "rms_db");
  }

  /** The name of the one unit. */
  public String unit() {
    return units.iterator().next();
  }
}
