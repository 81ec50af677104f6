package org.twinrig.screening;

import java.util.List;
import java.util.stream.IntStream;
import org.twinrig.response.Levels;

/**
 * The check unit in one session on one fixture. For each seating its level and its octave levels as
 * calibrated, dB.
 */
record CheckSession(String session, List<Double> levelsDb, List<Levels> octaves) {

  int seatings() {
    return levelsDb.size();
  }

  double[] levels() {
    return levelsDb.stream().mapToDouble(db -> db).toArray();
  }

  /** An octave in all seatings that have it, as calibrated. */
  double[] absolute(int octave) {
    return octaves.stream().flatMapToDouble(o -> o.level(octave).stream()).toArray();
  }

  /** The same relative to the level: the shape of the curve, whatever its level. */
  double[] shape(int octave) {
    return IntStream.range(0, seatings())
        .filter(s -> octaves.get(s).has(octave))
        .mapToDouble(s -> octaves.get(s).db(octave) - levelsDb.get(s))
        .toArray();
  }
}
