package org.twinrig.screening;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.response.Levels;

/**
 * The check unit in one session on one fixture. For each seating its level and its octave levels as
 * calibrated, dB.
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
    return IntStream.range(0, seatings())
        .mapToObj(s -> quantity.of(levelsDb.get(s), octaves.get(s)))
        .flatMapToDouble(OptionalDouble::stream)
        .toArray();
  }

  /** What is followed from session to session. */
  interface Quantity {
    /** Its value for a seating, dB. */
    OptionalDouble of(double levelDb, Levels octaves);

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

    static Quantity absolute(int octave) {
      return (levelDb, octaves) -> octaves.level(octave);
    }
  }
}
