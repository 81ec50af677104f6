package org.twinrig.screening;

import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;

/**
 * Why a capture should not be believed.
 *
 * @param capture the capture
 * @param finding what was found
 * @param value the measured value, dB
 * @param limit the bound it exceeds, dB
 * @param excluded whether the capture was left out because of it
 */
public record Verdict(
    CaptureEntry capture, Finding finding, double value, double limit, boolean excluded) {

  /** What can be found. */
  public enum Finding {
    /** The bass falls off against the unit's best seal on the fixture. */
    LOST_SEAL("lost seal", "bass below the unit's best seal"),
    /** The curve departs from the unit's other seatings. */
    ODD_SEATING("odd seating", "distance from the unit's middle curve"),
    /** The same content was given under another name. */
    SAME_CONTENT("same content", "other captures with the same content"),
    /** The check unit was out of control in the capture's session. */
    DRIFTING_SESSION("drifting session", "the check unit's departure from its middle");

    private final String word;
    private final String quantity;

    Finding(String word, String quantity) {
      this.word = word;
      this.quantity = quantity;
    }

    /**
     * The finding as files write it.
     *
     * @return for example {@code lost seal}
     */
    public String word() {
      return word;
    }
  }

  /** Refuses anything that is not a number. */
  public Verdict {
    Checks.finite(value, "a screening value");
    Checks.finite(limit, "a screening limit");
  }

  /**
   * The verdict as a sentence that cannot contradict itself by rounding.
   *
   * @return for example {@code lost seal: bass below the unit's best seal is 7.4 dB, but at most
   *     4.0 dB is allowed}
   */
  public String sentence() {
    if (finding == Finding.SAME_CONTENT) {
      return finding.word + ": the file has the same content as another capture's";
    }
    return String.format(
        "%s: %s is %s dB, but at most %s dB is allowed",
        finding.word, finding.quantity, Numbers.against(value, limit, 1), Numbers.fixed(limit, 1));
  }
}
