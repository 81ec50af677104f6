package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.doubt.KindProfile;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;

/**
 * The transfer of one kind with its marks: the only thing that can be applied to a graph.
 *
 * @param unitNames the units of the kind that were measured on both fixtures
 * @param profile what old graphs of the kind look like; nothing where that is not known
 */
public record TransferFunction(
    String kind,
    List<String> unitNames,
    BandGrid grid,
    List<MarkedBand> bands,
    Optional<KindProfile> profile) {

  /** A kind of which nobody knows what its old graphs look like. */
  public TransferFunction(
      String kind, List<String> unitNames, BandGrid grid, List<MarkedBand> bands) {
    this(kind, unitNames, grid, bands, Optional.empty());
  }

  public TransferFunction {
    unitNames = List.copyOf(unitNames);
    bands = List.copyOf(bands);
    if (bands.size() != grid.size()) {
      throw new IllegalArgumentException("one marked band per band of the grid is needed");
    }
  }

  /** How many units the transfer rests on: 0 or more. */
  public int units() {
    return unitNames.size();
  }

  /** How much of the axis carries a mark: octaves of bands that have data and this mark. */
  public double octaves(Mark mark) {
    double sum = 0;
    for (MarkedBand band : bands) {
      if (band.mark() == mark && !band.empty()) {
        sum += band.band().octaves();
      }
    }
    return sum;
  }
}
