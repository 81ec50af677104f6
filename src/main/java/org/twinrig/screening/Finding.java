package org.twinrig.screening;

/** What can be found about a capture. */
public enum Finding {
  /** The bass falls off against the unit's best seal on the fixture. */
  LOST_SEAL("lost seal", "bass below the unit's best seal", Scale.LEVEL, true),
  /** The curve departs from the unit's other seatings. */
  ODD_SEATING("odd seating", "distance from the unit's middle curve", Scale.LEVEL, true),
  /** The same content was given under another name. */
  SAME_CONTENT("same content", "other captures with the same content", Scale.LEVEL, true),
  /** Later rows give the capture again; it counts once, here. */
  HAS_COPIES("has copies", "other captures with the same content", Scale.LEVEL, false),
  /** Left and right differ more than those of the kind, or of the unit's other seatings. */
  SIDE_IMBALANCE("side imbalance", "left against right", Scale.LEVEL, false),
  /** The level before anchoring departs from the unit's other seatings. */
  LEVEL_JUMP("level jump", "distance from the level of the unit's seatings", Scale.LEVEL, false),
  /** Neighbouring points differ more than those of the unit's other captures. */
  NOISY("noisy capture", "ripple from point to point", Scale.RIPPLE, false),
  /** Points stand farther apart than the study's bands. */
  FEW_POINTS("few points", "widest gap between points", Scale.OCTAVES, false),
  /** The capture does not reach the ends of the study's range. */
  NARROW_RANGE("narrow range", "part of the study's range without a level", Scale.OCTAVES, false),
  /** The check unit was out of control in the capture's session. */
  DRIFTING_SESSION(
      "drifting session", "the check unit's departure from its middle", Scale.FINE_LEVEL, false);

  /** In what a finding is measured, and how finely it is told. */
  private enum Scale {
    LEVEL("dB", 1),
    FINE_LEVEL("dB", 2),
    RIPPLE("dB", 2),
    OCTAVES("octaves", 2);

    private final String unit;
    private final int decimals;

    Scale(String unit, int decimals) {
      this.unit = unit;
      this.decimals = decimals;
    }
  }

  private final String word;
  private final String quantity;
  private final Scale scale;
  private final boolean disbelieved;

  Finding(String word, String quantity, Scale scale, boolean disbelieved) {
    this.word = word;
    this.quantity = quantity;
    this.scale = scale;
    this.disbelieved = disbelieved;
  }

  /** The finding as files write it: for example {@code lost seal}. */
  public String word() {
    return word;
  }

  /**
   * Whether such a capture is not to be believed: a study that excludes leaves it out. Every other
   * finding is only reported.
   *
   * @return true when the study may leave the capture out by itself
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
    return scale.unit;
  }

  int decimals() {
    return scale.decimals;
  }
}
