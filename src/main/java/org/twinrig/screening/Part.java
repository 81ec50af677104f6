package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Levels;

/**
 * A part of the frequency axis, as a run of bands. From its first band to before the one after its
 * last.
 */
record Part(double fromHz, double toHz, int first, int end) {
  private static final double[] ENDS_HZ = {20, 200, 4000, 10_000, 20_000};

  /** The bands whose mid-band frequency lies in {@code [fromHz, toHz)}; possibly none. */
  static Part of(BandGrid grid, double fromHz, double toHz) {
    int first = 0;
    while (first < grid.size() && grid.band(first).midHz() < fromHz) {
      first++;
    }
    int end = first;
    while (end < grid.size() && grid.band(end).midHz() < toHz) {
      end++;
    }
    return new Part(fromHz, toHz, first, end);
  }

  /** The four parts 20 Hz–200 Hz–4 kHz–10 kHz–20 kHz, but for those without a band. */
  static List<Part> all(BandGrid grid) {
    List<Part> parts = new ArrayList<>();
    for (int p = 0; p + 1 < ENDS_HZ.length; p++) {
      Part part = of(grid, ENDS_HZ[p], ENDS_HZ[p + 1]);
      if (part.first < part.end) {
        parts.add(part);
      }
    }
    return parts;
  }

  String words() {
    return Numbers.hertz(fromHz) + " to " + Numbers.hertz(toHz);
  }

  /** Mean of the levels present, dB. */
  OptionalDouble mean(Levels levels) {
    return mean(levels, db -> db);
  }

  /** Root mean square of the levels present, dB. */
  OptionalDouble rms(Levels levels) {
    OptionalDouble square = mean(levels, db -> db * db);
    return square.isPresent() ? OptionalDouble.of(Math.sqrt(square.getAsDouble())) : square;
  }

  private OptionalDouble mean(Levels levels, DoubleUnaryOperator of) {
    double sum = 0;
    int count = 0;
    for (int b = first; b < end; b++) {
      if (levels.has(b)) {
        sum += of.applyAsDouble(levels.db(b));
        count++;
      }
    }
    return count == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / count);
  }
}
