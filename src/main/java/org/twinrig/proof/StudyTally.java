package org.twinrig.proof;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.evidence.Region;

/**
 * What one study adds to the figures, under both models.
 *
 * @param offset sums under the plain offset
 * @param tried sums under the model that is tried beside it
 */
record StudyTally(Map<Cell, Sums> offset, Map<Cell, Sums> tried) {

  /**
   * What is counted apart within a study.
   *
   * @param kind the kind
   * @param graphSeatings how many seatings the old graphs average
   * @param region the part of the axis
   */
  record Cell(String kind, int graphSeatings, Region region) {}

  /**
   * Sums over judgements.
   *
   * @param judgements how many
   * @param squaresDb2 sum of squared errors, dB²
   * @param inside how many errors lie inside their interval
   * @param below how many re-captures lie below their interval
   * @param halvesDb sum of half-widths, dB
   */
  record Sums(long judgements, double squaresDb2, long inside, long below, double halvesDb) {
    static final Sums NONE = new Sums(0, 0, 0, 0, 0);

    static Sums of(Judgement j) {
      return new Sums(
          1, j.errorDb() * j.errorDb(), j.inside() ? 1 : 0, j.below() ? 1 : 0, j.halfDb());
    }

    Sums plus(Sums other) {
      return new Sums(
          judgements + other.judgements,
          squaresDb2 + other.squaresDb2,
          inside + other.inside,
          below + other.below,
          halvesDb + other.halvesDb);
    }
  }

  /** Copies the maps. */
  StudyTally {
    offset = Map.copyOf(offset);
    tried = Map.copyOf(tried);
  }

  /** Sums judgements by cell; a band outside every region counts nowhere. */
  static Map<Cell, Sums> sums(List<Judgement> judgements) {
    Map<Cell, Sums> sums = new HashMap<>();
    for (Judgement j : judgements) {
      for (Region region : Region.values()) {
        if (region.holds(j.band())) {
          sums.merge(new Cell(j.kind(), j.graphSeatings(), region), Sums.of(j), Sums::plus);
        }
      }
    }
    return sums;
  }
}
