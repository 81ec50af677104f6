package org.twinrig.screening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.capture.Capture;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds curves that were given twice under two names: a copy counted as a seating of its own makes
 * scatter look smaller than it is. Two captures are the same when their files are, byte for byte,
 * or when their frequencies are and their levels differ by one constant, to 0.0001 dB: saved in
 * another format, or shifted, a curve is still the same seating.
 */
final class SameContent {
  private static final double STEPS_PER_DB = 10_000;

  private SameContent() {}

  /** A file and the curve taken from it: the two channels of a stereo file are no copies. */
  private record Content(String sha256, Response response) {
    static Content of(Capture capture) {
      return new Content(capture.sha256(), capture.response());
    }
  }

  /** Every capture whose content already stood in an earlier row. */
  static List<Verdict> of(List<AnchoredCapture> captures) {
    Map<Object, String> fileOfContent = new HashMap<>();
    Map<Object, Integer> seen = new HashMap<>();
    List<Verdict> verdicts = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      String file = c.capture().entry().file();
      Object curve = Curve.of(c.capture().response());
      String sameBytes = fileOfContent.putIfAbsent(Content.of(c.capture()), file);
      String sameCurve = fileOfContent.putIfAbsent(curve, file);
      int before = seen.merge(curve, 1, Integer::sum) - 1;
      if (sameBytes != null || sameCurve != null) {
        String other = sameBytes != null ? sameBytes : sameCurve;
        verdicts.add(
            Verdict.of(c.capture().entry(), Finding.SAME_CONTENT, Math.max(1, before), 0, other));
      }
    }
    return verdicts;
  }

  /** A curve but for its level, compared by content. */
  private static final class Curve {
    private final Response response;
    private final int hash;

    private Curve(Response response, int hash) {
      this.response = response;
      this.hash = hash;
    }

    static Curve of(Response response) {
      int hash = response.size();
      for (int i = 0; i < response.size(); i++) {
        hash = 31 * hash + Double.hashCode(response.frequencyHz(i));
        hash = 31 * hash + Long.hashCode(steps(response, i));
      }
      return new Curve(response, hash);
    }

    /** Level above the first point, in steps; pinning to an anchor adds rounding far below one. */
    private static long steps(Response r, int point) {
      return Math.round((r.levelDb(point) - r.levelDb(0)) * STEPS_PER_DB);
    }

    @Override
    public boolean equals(Object other) {
      if (!(other instanceof Curve that)
          || that.hash != hash
          || that.response.size() != response.size()) {
        return false;
      }
      for (int i = 0; i < response.size(); i++) {
        if (response.frequencyHz(i) != that.response.frequencyHz(i)
            || steps(response, i) != steps(that.response, i)) {
          return false;
        }
      }
      return true;
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }
}
