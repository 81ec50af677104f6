package org.twinrig.screening;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.capture.Capture;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds files that were given twice under two names: a copy counted as a seating of its own makes
 * scatter look smaller than it is.
 */
final class SameContent {
  private SameContent() {}

  /** A file and the curve taken from it: the two channels of a stereo file are no copies. */
  private record Content(String sha256, Response response) {
    static Content of(Capture capture) {
      return new Content(capture.sha256(), capture.response());
    }
  }

  /** Every capture whose content already stood in an earlier row. */
  static List<Verdict> of(List<AnchoredCapture> captures, boolean exclude) {
    Map<Content, Integer> seen = new LinkedHashMap<>();
    List<Verdict> verdicts = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      int before = seen.merge(Content.of(c.capture()), 1, Integer::sum) - 1;
      if (before > 0) {
        verdicts.add(
            new Verdict(c.capture().entry(), Verdict.Finding.SAME_CONTENT, before, 0, exclude));
      }
    }
    return verdicts;
  }
}
