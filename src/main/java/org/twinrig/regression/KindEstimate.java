package org.twinrig.regression;

import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;

/**
 * The transfer of one kind, band by band, with the errors it made on its own units.
 *
 * @param units the units that entered, in order
 * @param bands one outcome per band
 * @param offsetErrors for each unit, the offset's leave-one-unit-out error {@code r_i(b)} in dB;
 *     missing where the unit has no level or the band no estimate
 * @param errors for each unit, the same for the model in force, its weights found without the unit,
 *     {@code r̃_i(b)}
 */
public record KindEstimate(
    String kind,
    BandGrid grid,
    List<String> units,
    List<BandOutcome> bands,
    List<Levels> offsetErrors,
    List<Levels> errors) {

  /** Units that are missed by less than this do not differ. */
  private static final double LEAST_SCATTER_DB = 0.01;

  public KindEstimate {
    units = List.copyOf(units);
    bands = List.copyOf(bands);
    offsetErrors = List.copyOf(offsetErrors);
    errors = List.copyOf(errors);
    if (bands.size() != grid.size() || errors.size() != units.size()) {
      throw new IllegalArgumentException("one outcome per band and one error curve per unit");
    }
  }

  /**
   * Whether any unit differs from the others at a band by 0.01 dB or more, or the band has no
   * errors to judge by: scatter is the only witness that curves were measured, each by itself.
   */
  public boolean scatters(int band) {
    List<Levels> known = errors.stream().filter(e -> e.has(band)).toList();
    return known.isEmpty()
        || known.stream().anyMatch(e -> Math.abs(e.db(band)) >= LEAST_SCATTER_DB);
  }
}
