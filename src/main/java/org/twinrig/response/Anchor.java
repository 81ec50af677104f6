package org.twinrig.response;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;

/** Where the level of a capture is pinned before captures are compared. */
public sealed interface Anchor {

  /** The level to subtract, dB; nothing when the response does not reach the anchor. */
  OptionalDouble levelOf(Response response, int perOctave);

  /** A response with that level subtracted, likewise. */
  default Optional<Response> pinned(Response response, int perOctave) {
    OptionalDouble level = levelOf(response, perOctave);
    return level.isPresent() ? Optional.of(response.plus(-level.getAsDouble())) : Optional.empty();
  }

  /** Band levels of such a response, likewise. */
  default Optional<Levels> pinnedLevels(Response response, BandGrid grid) {
    return pinned(response, grid.perOctave()).map(pinned -> Levels.of(pinned, grid));
  }

  /**
   * Why a response that reaches the anchor cannot be pinned there all the same: what the capture
   * lacks, as the rest of a sentence; nothing when it has no hole there.
   */
  default Optional<String> holeIn(Response response, int perOctave) {
    OptionalInt hole = response.holeIn(stretch(perOctave)[0], stretch(perOctave)[1]);
    if (hole.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "has no point between %s and %s, but the anchor (%s) needs points no further apart than 1/3 octave"
            .formatted(
                Numbers.hertz(response.frequencyHz(hole.getAsInt())),
                Numbers.hertz(response.frequencyHz(hole.getAsInt() + 1)),
                words()));
  }

  /**
   * Whether the anchor makes levels agree at a band, whatever the units: it is narrow or holds one
   * band alone, and the band lies within 1/6 octave of it. That units agree there says nothing.
   */
  default boolean pins(Band band) {
    double[] ends = stretch(band.perOctave());
    double sixth = Math.pow(2, 1.0 / 6);
    boolean narrow =
        ends[0] > 0
            && ends[1] / ends[0]
                <= Math.max(sixth * sixth, band.upperHz() / band.lowerHz() * (1 + 1e-9));
    return narrow && band.lowerHz() < ends[1] * sixth && band.upperHz() > ends[0] / sixth;
  }

  /**
   * Whether a band is one of those that levels are lined up by: fixtures agree there because they
   * are made to, which says nothing of them.
   */
  default boolean linesUp(Band band) {
    double[] ends = stretch(band.perOctave());
    boolean inside = ends[0] <= band.midHz() && band.midHz() <= ends[1];
    return inside || (0 < ends[0] && band.lowerHz() <= ends[0] && band.upperHz() > ends[1]);
  }

  /** What is looked at: lower and upper end, Hz; both 0 where nothing is. */
  double[] stretch(int perOctave);

  /** The anchor in words: for example {@code 500 Hz to 1 kHz}. */
  String words();

  /** What results hold after, as the end of a sentence; nothing where nothing is lined up. */
  default String afterLiningUp() {
    return this instanceof None
        ? ""
        : " after lining up " + (this instanceof Range ? "over " : "at ") + words();
  }

  /** The mean of the band levels over a range, from above 0 Hz. */
  record Range(double fromHz, double toHz) implements Anchor {
    public Range {
      if (!(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
        throw new IllegalArgumentException(
            "an anchor range must satisfy 0 < from < to, but is " + fromHz + " to " + toHz + " Hz");
      }
    }

    @Override
    public String words() {
      return Numbers.hertz(fromHz) + " to " + Numbers.hertz(toHz);
    }

    @Override
    public double[] stretch(int perOctave) {
      BandGrid grid = BandGrid.covering(fromHz, toHz, perOctave);
      return new double[] {grid.lowerHz(), grid.upperHz()};
    }

    @Override
    public OptionalDouble levelOf(Response response, int perOctave) {
      Levels levels = Levels.of(response, BandGrid.covering(fromHz, toHz, perOctave));
      if (levels.present() < levels.grid().size()) {
        return OptionalDouble.empty();
      }
      double sum = 0;
      for (int b = 0; b < levels.grid().size(); b++) {
        sum += levels.db(b);
      }
      return OptionalDouble.of(sum / levels.grid().size());
    }
  }

  /** The level at one frequency, above 0 Hz. */
  record Frequency(double hz) implements Anchor {
    public Frequency {
      Checks.positive(hz, "an anchor frequency in Hz");
    }

    @Override
    public String words() {
      return Numbers.hertz(hz);
    }

    @Override
    public double[] stretch(int perOctave) {
      return new double[] {hz, hz};
    }

    @Override
    public OptionalDouble levelOf(Response response, int perOctave) {
      return response.levelAt(hz);
    }
  }

  /** No anchor: both fixtures are calibrated and levels stand as they are. */
  record None() implements Anchor {
    @Override
    public String words() {
      return "none";
    }

    @Override
    public double[] stretch(int perOctave) {
      return new double[2];
    }

    @Override
    public OptionalDouble levelOf(Response response, int perOctave) {
      return OptionalDouble.of(0);
    }
  }
}
