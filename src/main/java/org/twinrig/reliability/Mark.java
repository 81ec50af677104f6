package org.twinrig.reliability;

import java.util.Locale;

/** How far a translated level may be trusted, best first. */
public enum Mark {
  /** A new measurement is expected within the reliable tolerance of the re-expressed level. */
  RELIABLE,
  /** Usable with its interval shown. */
  CAUTION,
  /** Not to be used in place of a measurement. */
  UNRELIABLE;

  /** The mark as files and reports write it: for example {@code caution}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The worse of two marks: the one that allows less. */
  public Mark worse(Mark other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
