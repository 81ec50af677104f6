package org.twinrig.regression;

import java.util.List;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;

/**
 * The transfer of one kind, band by band, with the errors it made on its own units.
 *
 * @param kind the kind
 * @param grid the bands
 * @param units the units that entered, in order
 * @param bands one outcome per band
 * @param simultaneous how the simultaneous interval was found
 * @param offsetErrors for each unit, the offset's leave-one-unit-out error {@code r_i(b)} in dB;
 *     missing where the unit has no level or the band no estimate
 * @param errors for each unit, the same for the model, its choice included {@code r̃_i(b)}
 */
public record KindEstimate(
    String kind,
    BandGrid grid,
    List<String> units,
    List<BandOutcome> bands,
    SignFlipInterval.Result simultaneous,
    List<Levels> offsetErrors,
    List<Levels> errors) {

  /** Copies the lists and checks the sizes. */
  public KindEstimate {
    units = List.copyOf(units);
    bands = List.copyOf(bands);
    offsetErrors = List.copyOf(offsetErrors);
    errors = List.copyOf(errors);
    if (bands.size() != grid.size() || errors.size() != units.size()) {
      throw new IllegalArgumentException("one outcome per band and one error curve per unit");
    }
  }
}
