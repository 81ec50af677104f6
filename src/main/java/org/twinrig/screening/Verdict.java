package org.twinrig.screening;

import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Checks;
import org.twinrig.internal.Numbers;
import org.twinrig.study.ScreeningMode;

/**
 * Why a capture is doubted. The measured value exceeds the limit, both in the finding's unit; the
 * detail says where in frequency it was found, or for the same content which other file.
 */
public record Verdict(
    CaptureEntry capture,
    Finding finding,
    double value,
    double limit,
    String detail,
    boolean excluded) {

  public Verdict {
    Checks.finite(value, "a screening value");
    Checks.finite(limit, "a screening limit");
  }

  /** A doubt of which nothing follows yet. */
  static Verdict of(
      CaptureEntry capture, Finding finding, double value, double limit, String detail) {
    return new Verdict(capture, finding, value, limit, detail, false);
  }

  /**
   * The same doubt; its capture is left out when the rule says it is not to be believed and the
   * study leaves such captures out. One curve counts once in every study.
   */
  Verdict under(ScreeningMode mode) {
    boolean out =
        finding == Finding.SAME_CONTENT || (mode == ScreeningMode.EXCLUDE && finding.disbelieved());
    return new Verdict(capture, finding, value, limit, detail, out);
  }

  /**
   * The verdict as a sentence that cannot contradict itself by rounding.
   *
   * @return for example {@code lost seal: bass below the unit's best seal is 7.4 dB, but at most
   *     4.0 dB is allowed}
   */
  public String sentence() {
    if (finding == Finding.SAME_CONTENT) {
      return finding.word()
          + ": the file holds the same curve as "
          + detail
          + ", which stands first and counts alone";
    }
    if (finding == Finding.HAS_COPIES) {
      return finding.word() + ": " + detail + " holds the same curve; it counts once, here";
    }
    return String.format(
        "%s: %s%s is %s %6$s, but at most %s %6$s is allowed",
        finding.word(),
        finding.quantity(),
        detail.isEmpty() ? "" : ", " + detail + ",",
        Numbers.against(value, limit, finding.decimals()),
        Numbers.fixed(limit, finding.decimals()),
        finding.unit());
  }
}
