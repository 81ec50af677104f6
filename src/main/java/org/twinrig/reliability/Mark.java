package org.twinrig.reliability;

/** How far a translated level may be trusted, best first. */
public enum Mark {
  /** The prediction interval is narrow enough to stand as measured. */
  RELIABLE("reliable"),
  /** Usable with its interval shown. */
  CAUTION("caution"),
  /** Not to be used in place of a measurement. */
  UNRELIABLE("unreliable");

  private final String word;

  Mark(String word) {
    this.word = word;
  }

  /** The mark as files and reports write it: for example {@code caution}. */
  public String word() {
    return word;
  }

  /** The worse of two marks: the one that allows less. */
  public Mark worse(Mark other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
