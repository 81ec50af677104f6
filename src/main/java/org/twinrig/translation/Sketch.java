package org.twinrig.translation;

import java.util.Arrays;
import org.twinrig.response.Levels;

/**
 * Band levels of an old graph pinned to the study's anchor, in single precision: what is kept of
 * every graph of a catalogue, to tell which of them the study knows least about.
 */
public final class Sketch {
  /** NaN marks a missing level in here, and never leaves. */
  private final float[] db;

  private Sketch(float[] db) {
    this.db = db;
  }

  /** A sketch of levels. */
  public static Sketch of(Levels levels) {
    float[] db = new float[levels.grid().size()];
    for (int b = 0; b < db.length; b++) {
      db[b] = levels.has(b) ? (float) levels.db(b) : Float.NaN;
    }
    return new Sketch(db);
  }

  /** A sketch of no level at all. */
  public static Sketch empty(int bands) {
    float[] db = new float[bands];
    Arrays.fill(db, Float.NaN);
    return new Sketch(db);
  }

  /** How many bands it has: as many as the study's grid. */
  public int size() {
    return db.length;
  }

  /** Whether a band has a level. */
  public boolean has(int band) {
    return !Float.isNaN(db[band]);
  }

  /**
   * The level of a band that has one.
   *
   * @throws IllegalStateException when it is missing
   */
  public double db(int band) {
    if (!has(band)) {
      throw new IllegalStateException("band " + band + " has no level");
    }
    return db[band];
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Sketch that && Arrays.equals(db, that.db);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(db);
  }
}
