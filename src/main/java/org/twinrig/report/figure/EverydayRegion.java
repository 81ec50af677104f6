package org.twinrig.report.figure;

/**
 * The frequency axis in everyday words. Where bass ends and treble begins is common practice, no
 * source; the page shows the borders.
 */
public enum EverydayRegion {
  /** Low tones. */
  BASS("bass", 20, 250),
  /** Voices and most tunes. */
  MIDDLE("middle", 250, 4000),
  /** High tones. */
  TREBLE("treble", 4000, 20_000);

  private final String word;
  private final double fromHz;
  private final double toHz;

  EverydayRegion(String word, double fromHz, double toHz) {
    this.word = word;
    this.fromHz = fromHz;
    this.toHz = toHz;
  }

  /**
   * Its name.
   *
   * @return for example {@code bass}
   */
  public String word() {
    return word;
  }

  /**
   * Lower border.
   *
   * @return Hz
   */
  public double fromHz() {
    return fromHz;
  }

  /**
   * Upper border.
   *
   * @return Hz
   */
  public double toHz() {
    return toHz;
  }

  /**
   * How much of a stretch lies in the region; the outermost regions have no outer end.
   *
   * @param stretch a part of the axis
   * @return octaves
   */
  public double octavesOf(Stretch stretch) {
    return stretch.octavesInside(
        first() ? Math.min(fromHz, stretch.fromHz()) : fromHz,
        last() ? Math.max(toHz, stretch.toHz()) : toHz);
  }

  boolean first() {
    return this == BASS;
  }

  boolean last() {
    return this == TREBLE;
  }
}
