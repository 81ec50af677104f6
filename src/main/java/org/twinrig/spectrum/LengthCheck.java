package org.twinrig.spectrum;

import java.util.Optional;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * Whether a response has died away where its window ends. A low resonance rings long at a level
 * that is nothing beside the peak of the sound, so the sound itself does not show it; what shows it
 * is that the levels of the low bands would be others under a window a quarter shorter.
 */
final class LengthCheck {
  /** A third of the tolerance a reliable translation has by default. */
  private static final double WORTH_A_NOTE_DB = 0.5;

  /** Below, no study looks unless its lab widens the bands. */
  private static final double LOWEST_HZ = 20;

  private static final double HIGHEST_HZ = 1000;
  private static final int PER_OCTAVE = 3;

  private LengthCheck() {}

  static Optional<String> note(
      Response response, Segment segment, double offset, Magnitudes.Span span)
      throws UnusableSound {
    if (span.fromHz() > HIGHEST_HZ / 2) {
      return Optional.empty();
    }
    BandGrid grid = BandGrid.covering(Math.max(LOWEST_HZ, span.fromHz()), HIGHEST_HZ, PER_OCTAVE);
    Levels whole = Levels.of(response, grid);
    Levels shorter = Levels.of(Magnitudes.of(segment.shorter(), offset, span), grid);
    double mostDb = 0;
    Band highest = grid.band(0);
    for (int b = 0; b < grid.size(); b++) {
      double changeDb = whole.has(b) && shorter.has(b) ? Math.abs(whole.db(b) - shorter.db(b)) : 0;
      if (changeDb > WORTH_A_NOTE_DB) {
        mostDb = Math.max(mostDb, changeDb);
        highest = grid.band(b);
      }
    }
    return mostDb == 0 ? Optional.empty() : Optional.of(words(highest, mostDb, segment));
  }

  private static String words(Band highest, double mostDb, Segment segment) {
    String told =
        "levels up to %s change by up to %s dB when the window is a quarter shorter: there the sound"
            + " has not died away %s ms after its onset, or is noise; record longer and raise"
            + " `impulse.length_ms`";
    return told.formatted(
        Numbers.hertz(highest.upperHz()),
        Numbers.against(mostDb, WORTH_A_NOTE_DB, 1),
        Numbers.fixed(segment.lengthMs(), 1));
  }
}
