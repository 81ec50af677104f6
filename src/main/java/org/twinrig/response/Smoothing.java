package org.twinrig.response;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fractional-octave smoothing, or none: every point of a curve becomes the mean over the {@code
 * 1/n} octave around it, every part of that stretch of log frequency counting alike (a rectangular
 * kernel, not a filter of IEC 61260-1).
 *
 * <p>Of squares, {@code L'(f) = 10·lg( mean of 10^(L/10) per unit ln f over [f·G^(-1/2n),
 * f·G^(1/2n)] )}, or of decibels, {@code L'(f) = mean of L}; {@code G = 10^(3/10)}, the octave of
 * IEC 61260-1:2014. The first keeps peaks, the second notches: over 1/6 octave a notch of 15 dB,
 * {@code (s²+10^(-15/20)·s/8+1)/(s²+s/8+1)}, reads -6.6 or -7.9 dB. Near the ends of the curve the
 * mean is taken over the part of the stretch the curve covers (common practice, no source); a hole
 * has ends too.
 *
 * @param fraction {@code n} of {@code 1/n} octave, 1 to 48; 0 for a curve that is not smoothed
 * @param domain what is averaged; powers where nothing is smoothed
 */
public record Smoothing(int fraction, Domain domain) {
  /** A curve as measured. */
  public static final Smoothing NONE = new Smoothing(0);

  /** How a smoothing is to be written, for remedies. */
  public static final String FORM =
      "write `none`, or a part of an octave from `1/1` to `1/48`, with ` db` behind it where"
          + " decibels were averaged and not powers: `1/6 db`";

  /** What is averaged. */
  public enum Domain {
    /** Squared sound pressure, as a band filter does. */
    POWER,
    /** Levels in decibels. */
    DB
  }

  private static final int NARROWEST = 48;
  private static final double OCTAVE = Math.pow(10, 0.3);
  private static final Pattern PART = Pattern.compile("1/([1-9][0-9]?)( (?:power|db))?");

  /** Of squares. */
  public Smoothing(int fraction) {
    this(fraction, Domain.POWER);
  }

  public Smoothing {
    Objects.requireNonNull(domain, "domain");
    if (fraction == 0 && domain != Domain.POWER) {
      throw new IllegalArgumentException("what is not smoothed averages nothing");
    }
    if (fraction < 0 || fraction > NARROWEST) {
      throw new IllegalArgumentException(
          "smoothing must be 1/1 to 1/48 octave or none, but is 1/" + fraction);
    }
  }

  /**
   * Reads {@code none}, or for example {@code 1/12}, which is {@code 1/12 power}, or {@code 1/12
   * db}; nothing when the text is none of these.
   */
  public static Optional<Smoothing> of(String text) {
    if (text.strip().equals("none")) {
      return Optional.of(NONE);
    }
    Matcher part = PART.matcher(text.strip().toLowerCase(Locale.ROOT));
    return part.matches() && Integer.parseInt(part.group(1)) <= NARROWEST
        ? Optional.of(
            new Smoothing(
                Integer.parseInt(part.group(1)),
                " db".equals(part.group(2)) ? Domain.DB : Domain.POWER))
        : Optional.empty();
  }

  /**
   * The smoothing as files write it: {@code none} or for example {@code 1/12} or {@code 1/6 db}.
   */
  public String word() {
    return fraction == 0 ? "none" : "1/" + fraction + (domain == Domain.DB ? " db" : "");
  }

  /** The smoothing in a sentence: for example {@code smoothed to 1/12 octave in decibels}. */
  public String plain() {
    return fraction == 0
        ? "not smoothed"
        : "smoothed to 1/" + fraction + " octave" + (domain == Domain.DB ? " in decibels" : "");
  }

  /** Whether curves smoothed so show less detail: this one averages over more of the axis. */
  public boolean widerThan(Smoothing other) {
    return fraction > 0 && (other.fraction == 0 || fraction < other.fraction);
  }

  /**
   * Whether curves smoothed so can never be made alike: both average over as much of the axis, but
   * not the same quantity, and neither can be undone.
   */
  public boolean contradicts(Smoothing other) {
    return fraction == other.fraction && domain != other.domain;
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
      db[k] = lowerHz < upperHz ? meanDb(curve, lowerHz, upperHz, piece) : curve.levelDb(k);
    }
    return curve.withLevels(db);
  }

  private double meanDb(Response curve, double lowerHz, double upperHz, int firstPiece) {
    return domain == Domain.DB
        ? curve.meanLevelDb(lowerHz, upperHz, firstPiece)
        : curve.meanSquareDb(lowerHz, upperHz, firstPiece);
  }
}
