package org.twinrig.screening;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.response.Levels;

/**
 * The check unit in one session on one fixture.
 *
 * @param levelsDb level of each seating, dB, as calibrated
 * @param octaves octave levels of each seating as calibrated
 */
record CheckSession(String session, List<Double> levelsDb, List<Levels> octaves) {
  CheckSession {
    levelsDb = List.copyOf(levelsDb);
    octaves = List.copyOf(octaves);
  }

  int seatings() {
    return levelsDb.size();
  }

  /** The values of all seatings that have one: the level, or an octave. */
  double[] values(Quantity quantity) {
    double[] values = new double[seatings()];
    int count = 0;
    for (int s = 0; s < seatings(); s++) {
      OptionalDouble value = quantity.of(levelsDb.get(s), octaves.get(s));
      if (value.isPresent()) {
        values[count++] = value.getAsDouble();
      }
    }
    return Arrays.copyOf(values, count);
  }

  /** What is followed from session to session. */
  interface Quantity {
    /** Its value for a seating, dB. */
    OptionalDouble of(double levelDb, Levels octaves);

    /** The level itself. */
    static Quantity level() {
      return (levelDb, octaves) -> OptionalDouble.of(levelDb);
    }

    /** An octave relative to the level: the shape of the curve, whatever its level. */
    static Quantity shape(int octave) {
      return (levelDb, octaves) ->
          octaves.has(octave)
              ? OptionalDouble.of(octaves.db(octave) - levelDb)
              : OptionalDouble.empty();
    }

    /** An octave as calibrated. */
    static Quantity absolute(int octave) {
      return (levelDb, octaves) -> octaves.level(octave);
    }
  }
}
