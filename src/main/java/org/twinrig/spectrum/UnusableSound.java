package org.twinrig.spectrum;

/** Thrown when a sound gives no response; whoever knows the file adds its name. */
public final class UnusableSound extends Exception {
  private static final long serialVersionUID = 1L;

  private final String remedy;

  /** Says what is wrong and what would be right, one clause each without a final stop. */
  public UnusableSound(String what, String remedy) {
    super(what);
    this.remedy = remedy;
  }

  /** What would be right: one clause. */
  public String remedy() {
    return remedy;
  }
}
