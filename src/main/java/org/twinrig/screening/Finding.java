package org.twinrig.screening;

/** What can be found about a capture. */
public enum Finding {
  /** The bass falls off against the unit's best seal on the fixture. */
  LOST_SEAL("lost seal", "bass below the unit's best seal", "dB", 1, true),
  ODD_SEATING("odd seating", "distance from the unit's middle curve", "dB", 1, true),
  SAME_CONTENT("same content", "other captures with the same content", "dB", 1, true),
  /** Later rows give the capture again; it counts once, here. */
  HAS_COPIES("has copies", "other captures with the same content", "dB", 1, false),
  /** Left and right differ more than those of the kind, or of the unit's other seatings. */
  CHANNEL_IMBALANCE("channel imbalance", "left against right", "dB", 1, false),
  LEVEL_JUMP("level jump", "distance from the level of the unit's seatings", "dB", 1, false),
  NOISY("noisy capture", "ripple from point to point", "dB", 2, false),
  FEW_POINTS("few points", "widest gap between points", "octaves", 2, false),
  NARROW_RANGE("narrow range", "part of the study's range without a level", "octaves", 2, false),
  DRIFTING_SESSION(
      "drifting session", "the check unit's departure from its middle", "dB", 2, false);

  private final String word;
  private final String quantity;
  private final String unit;
  private final int decimals;
  private final boolean disbelieved;

  Finding(String word, String quantity, String unit, int decimals, boolean disbelieved) {
    this.word = word;
    this.quantity = quantity;
    this.unit = unit;
    this.decimals = decimals;
    this.disbelieved = disbelieved;
  }

  /** The finding as files write it: for example {@code lost seal}. */
  public String word() {
    return word;
  }

  /**
   * Whether such a capture is not to be believed: a study that excludes leaves it out by itself.
   * Every other finding is only reported.
   */
  public boolean disbelieved() {
    return disbelieved;
  }

  /** Whether a lost seal by itself brings it about. */
  boolean followsFromLeak() {
    return this == ODD_SEATING || this == LEVEL_JUMP;
  }

  String quantity() {
    return quantity;
  }

  String unit() {
    return unit;
  }

  int decimals() {
    return decimals;
  }
}
