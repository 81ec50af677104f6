package org.twinrig.response;

import java.util.Arrays;
import java.util.BitSet;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;

/**
 * Levels in dB on the bands of a grid; a band may have none. Immutable, compared by content.
 *
 * <p>A missing level is missing in every result it enters; it is never taken as zero.
 */
public final class Levels {
  private final BandGrid grid;

  /** NaN marks a missing level in here, and never leaves. */
  private final double[] db;

  private final BitSet coarse;

  private Levels(BandGrid grid, double[] db, BitSet coarse) {
    this.grid = grid;
    this.db = db;
    this.coarse = coarse;
  }

  /**
   * The mean-square level of a response in each band, missing where it did not measure the band.
   *
   * <p>{@code L_b = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} over the band from
   * edge {@code u1} to edge {@code u2}, where {@code L(u)} in dB is the response, piecewise linear
   * in {@code u}; integrated in closed form.
   *
   * <p>A band that the response's frequency range does not reach to the edges of has no level, but
   * for a quarter of a band, over which the response goes on at its outermost level: a sweep from
   * the nominal 20 Hz has the band that begins at 19.95 Hz. Nor has one a level that a hole reaches
   * into; where the points around and across a band are further apart than 1/6 octave ({@link
   * Response} says how far that is), or the band is narrower than the response's resolution, its
   * level is coarse.
   */
  public static Levels of(Response response, BandGrid grid) {
    double[] levels = new double[grid.size()];
    BitSet coarse = new BitSet();
    double quarter = Math.pow(Band.OCTAVE_RATIO, 0.25 / grid.perOctave()) * (1 + 1e-12);
    int piece = 0;
    for (int b = 0; b < levels.length; b++) {
      Band band = grid.band(b);
      if (band.lowerHz() * quarter < response.fromHz()
          || band.upperHz() / quarter > response.toHz()) {
        levels[b] = Double.NaN;
        continue;
      }
      while (response.frequencyHz(piece + 1) <= band.lowerHz()) {
        piece++;
      }
      boolean hole = false;
      coarse.set(b, response.blurs(band));
      double endHz = Math.min(band.upperHz(), response.toHz());
      for (int p = piece; p == piece || response.frequencyHz(p) < endHz; p++) {
        hole |= response.isHole(p);
        coarse.set(b, coarse.get(b) || response.isCoarse(p));
      }
      levels[b] = hole ? Double.NaN : response.meanSquareDb(band, piece);
    }
    return copyOf(grid, levels, coarse);
  }

  /** Levels of which none is coarse. */
  public static Levels copyOf(BandGrid grid, double[] db) {
    return copyOf(grid, db, new BitSet());
  }

  /**
   * Levels of which some are known from points far apart only.
   *
   * @param db one level per band in dB, NaN where there is none; copied
   * @param coarse the bands whose points are further apart than 1/6 octave, or that are narrower
   *     than the resolution; those without a level do not count
   * @throws IllegalArgumentException when the lengths differ or a level is infinite
   */
  public static Levels copyOf(BandGrid grid, double[] db, BitSet coarse) {
    if (db.length != grid.size()) {
      throw new IllegalArgumentException(
          "one level per band is needed: " + grid.size() + " bands, " + db.length + " levels");
    }
    for (double level : db) {
      if (Double.isInfinite(level)) {
        throw new IllegalArgumentException("a level must be finite or missing, but is infinite");
      }
    }
    BitSet present = new BitSet();
    coarse.stream().filter(b -> !Double.isNaN(db[b])).forEach(present::set);
    return new Levels(grid, db.clone(), present);
  }

  public BandGrid grid() {
    return grid;
  }

  /** Whether a band has a level. */
  public boolean has(int band) {
    return !Double.isNaN(db[band]);
  }

  /** Whether a band has a level that is only interpolated, see {@link #of}. */
  public boolean isCoarse(int band) {
    return coarse.get(band);
  }

  /** The level of a band: dB, or nothing when it is missing. */
  public OptionalDouble level(int band) {
    return has(band) ? OptionalDouble.of(db[band]) : OptionalDouble.empty();
  }

  /** The level of a band that is known to have one, in dB. */
  public double db(int band) {
    if (!has(band)) {
      throw new IllegalStateException("band " + grid.band(band).midHz() + " Hz has no level");
    }
    return db[band];
  }

  /** How many bands have a level: 0 to the grid's size. */
  public int present() {
    return (int) Arrays.stream(db).filter(level -> !Double.isNaN(level)).count();
  }

  /** Every level that is present, changed by one rule from dB to dB. */
  public Levels map(DoubleUnaryOperator rule) {
    double[] changed = new double[db.length];
    Arrays.setAll(changed, b -> has(b) ? rule.applyAsDouble(db[b]) : Double.NaN);
    return copyOf(grid, changed, coarse);
  }

  /** This minus other levels on the same grid, missing where either is. */
  public Levels minus(Levels other) {
    if (!grid.equals(other.grid)) {
      throw new IllegalArgumentException("levels on different grids cannot be subtracted");
    }
    double[] difference = new double[db.length];
    // NaN in either operand gives NaN: missing stays missing.
    Arrays.setAll(difference, b -> db[b] - other.db[b]);
    BitSet either = (BitSet) coarse.clone();
    either.or(other.coarse);
    return copyOf(grid, difference, either);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Levels that
        && grid.equals(that.grid)
        && Arrays.equals(db, that.db)
        && coarse.equals(that.coarse);
  }

  @Override
  public int hashCode() {
    return 31 * grid.hashCode() + Arrays.hashCode(db);
  }

  @Override
  public String toString() {
    return "Levels[" + present() + " of " + db.length + " bands]";
  }
}
