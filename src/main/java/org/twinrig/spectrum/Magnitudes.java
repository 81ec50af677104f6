package org.twinrig.spectrum;

import java.util.Arrays;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Response;

/**
 * Levels of a windowed impulse response, {@code 20 lg |Σ h[n] e^(-iωn)|}, at the frequencies its
 * window and its sampling rate support.
 */
final class Magnitudes {
  /** Bins to one step of the window's own resolution: a straight line between them must do. */
  private static final int OVERSAMPLING = 16;

  /** Long windows have enough bins in every band with fewer. */
  private static final int LEAST_OVERSAMPLING = 4;

  private static final long USUAL_LENGTH = 1 << 20;

  /** The last twentieth belongs to the converters' filters (common practice, no source). */
  private static final double NYQUIST_SHARE = 0.95;

  /** The arithmetic resolves no level further below the largest. */
  private static final double RESOLVED = 1e-10;

  private Magnitudes() {}

  /** The frequencies that may be given. */
  record Span(double fromHz, double toHz) {

    static Span of(Segment segment, SoundContent content) {
      double lowestHz = 1000 / segment.lengthMs();
      double highestHz = NYQUIST_SHARE * segment.impulse().rateHz() / 2;
      return content
          .sweep()
          .map(
              sweep ->
                  new Span(
                      Math.max(Math.max(lowestHz, sweep.fromHz()), 2000 / content.beforeOnsetMs()),
                      Math.min(highestHz, sweep.toHz())))
          .orElse(new Span(lowestHz, highestHz));
    }
  }

  static Response of(Segment segment, double offset, Span span) throws UnusableSound {
    int size = length(segment.size());
    double[] samples = new double[size];
    segment.copyTo(samples, offset);
    double[] powers = Fourier.powers(samples);
    double stepHz = segment.impulse().rateHz() / size;
    int first = (int) Math.ceil(span.fromHz() / stepHz - 1e-9);
    int last = Math.min(size / 2, (int) Math.floor(span.toHz() / stepHz + 1e-9));
    if (last < 2 * first) {
      throw new UnusableSound(
          "a window of "
              + Numbers.fixed(segment.lengthMs(), 2)
              + " ms tells less than an octave below "
              + Numbers.hertz(span.toHz()),
          "give a longer sound, or raise `impulse.length_ms`");
    }
    double[] levelsDb = levels(Arrays.copyOfRange(powers, first, last + 1));
    double[] frequenciesHz = new double[levelsDb.length];
    Arrays.setAll(frequenciesHz, i -> (first + i) * stepHz);
    return Thinning.of(frequenciesHz, levelsDb);
  }

  private static int length(long samples) {
    long bounded = Math.min(OVERSAMPLING * samples, USUAL_LENGTH);
    return Fourier.lengthFor(Math.max(LEAST_OVERSAMPLING * samples, bounded));
  }

  private static double[] levels(double[] powers) throws UnusableSound {
    double largest = Arrays.stream(powers).max().orElseThrow();
    if (!(largest > 0)) {
      throw new UnusableSound("the sound has no level at any frequency", "measure again");
    }
    double least = largest * RESOLVED * RESOLVED;
    return Arrays.stream(powers).map(p -> 10 * Math.log10(Math.max(p, least))).toArray();
  }
}
