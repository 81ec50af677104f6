package org.twinrig.response;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fractional-octave smoothing, or none: every point of a curve becomes the mean-square level over
 * the {@code 1/n} octave around it.
 *
 * <p>{@code L'(f) = 10·lg( mean of 10^(L/10) per unit ln f over [f·G^(-1/2n), f·G^(1/2n)] )},
 * {@code G = 10^(3/10)}, the octave of IEC 61260-1:2014. Near the ends of the curve the mean is
 * taken over the part of the stretch the curve covers (common practice, no source); a hole has ends
 * too.
 *
 * @param fraction {@code n} of {@code 1/n} octave, 1 to 48; 0 for a curve that is not smoothed
 */
public record Smoothing(int fraction) {
  /** A curve as measured. */
  public static final Smoothing NONE = new Smoothing(0);

  /** How a smoothing is to be written, for remedies. */
  public static final String FORM = "write `none`, or a part of an octave from `1/1` to `1/48`";

  private static final int NARROWEST = 48;
  private static final double OCTAVE = Math.pow(10, 0.3);
  private static final Pattern PART = Pattern.compile("1/([1-9][0-9]?)");

  public Smoothing {
    if (fraction < 0 || fraction > NARROWEST) {
      throw new IllegalArgumentException(
          "smoothing must be 1/1 to 1/48 octave or none, but is 1/" + fraction);
    }
  }

  /** Reads {@code none} or for example {@code 1/12}; nothing when the text is neither. */
  public static Optional<Smoothing> of(String text) {
    if (text.strip().equals("none")) {
      return Optional.of(NONE);
    }
    Matcher part = PART.matcher(text.strip());
    return part.matches() && Integer.parseInt(part.group(1)) <= NARROWEST
        ? Optional.of(new Smoothing(Integer.parseInt(part.group(1))))
        : Optional.empty();
  }

  /** The smoothing as files write it: {@code none} or for example {@code 1/12}. */
  public String word() {
    return fraction == 0 ? "none" : "1/" + fraction;
  }

  /** The smoothing in a sentence: for example {@code smoothed to 1/12 octave}. */
  public String plain() {
    return fraction == 0 ? "not smoothed" : "smoothed to " + word() + " octave";
  }

  /** Whether curves smoothed so show less detail: this one averages over more of the axis. */
  public boolean widerThan(Smoothing other) {
    return fraction > 0 && (other.fraction == 0 || fraction < other.fraction);
  }

  /** Smooths a curve: levels at the same frequencies. */
  public Response apply(Response curve) {
    if (fraction == 0) {
      return curve;
    }
    double half = Math.pow(OCTAVE, 0.5 / fraction);
    double[] db = new double[curve.size()];
    int piece = 0;
    int first = 0;
    int last = -1;
    for (int k = 0; k < db.length; k++) {
      if (k > last) {
        first = k;
        last = k;
        while (last + 1 < db.length && !curve.isHole(last)) {
          last++;
        }
      }
      double lowerHz = Math.max(curve.frequencyHz(first), curve.frequencyHz(k) / half);
      double upperHz = Math.min(curve.frequencyHz(last), curve.frequencyHz(k) * half);
      while (lowerHz < upperHz && curve.frequencyHz(piece + 1) <= lowerHz) {
        piece++;
      }
      // A point alone between two holes has nothing to be averaged with.
      db[k] = lowerHz < upperHz ? curve.meanSquareDb(lowerHz, upperHz, piece) : curve.levelDb(k);
    }
    return curve.withLevels(db);
  }
}
