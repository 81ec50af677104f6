package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds curves that were given twice, whatever rows name them: other seatings, sides, units or
 * fixtures. A copy counted as a measurement of its own makes scatter look smaller than it is.
 *
 * <p>Two captures are the same when their curves are to 0.001 dB after removing their level, saved
 * in another format, shifted or at other points. Levels written to 0.01 dB are given the half step
 * that rounding takes; a copy that was rounded to 0.1 dB is not found.
 *
 * <p>Of captures that are the same the one that stands first in the table counts. Which row it
 * truly belongs to cannot be seen from a curve, so the others are lost to their units, sides and
 * fixtures until the lab names the right files.
 */
final class SameContent {
  private static final double SAME_DB = 0.001;
  private static final double ROUNDING_DB = 0.005;

  private SameContent() {}

  /** A curve, how far rounding may have moved it, and the captures that gave it. */
  private record Curve(Response response, double roundedDb, List<CaptureEntry> captures) {
    static Curve of(AnchoredCapture c) {
      Response response = c.capture().response();
      List<CaptureEntry> captures = new ArrayList<>(List.of(c.entry()));
      return new Curve(response, isRounded(response) ? ROUNDING_DB : 0, captures);
    }

    /** Pinning to an anchor shifts all levels alike. */
    private static boolean isRounded(Response r) {
      for (int i = 1; i < r.size(); i++) {
        double steps = (r.levelDb(i) - r.levelDb(0)) / (2 * ROUNDING_DB);
        if (Math.abs(steps - Math.rint(steps)) > 1e-6) {
          return false;
        }
      }
      return true;
    }

    boolean same(Curve other) {
      return response.sameShape(other.response, SAME_DB + roundedDb + other.roundedDb);
    }
  }

  /** A verdict on every capture that is not alone with its curve, the first of them included. */
  static List<Verdict> of(List<AnchoredCapture> captures) {
    List<Curve> curves = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      Curve curve = Curve.of(c);
      curves.stream()
          .filter(curve::same)
          .findFirst()
          .ifPresentOrElse(first -> first.captures.add(c.entry()), () -> curves.add(curve));
    }
    List<Verdict> verdicts = new ArrayList<>();
    for (Curve curve : curves) {
      CaptureEntry first = curve.captures.get(0);
      int copies = curve.captures.size() - 1;
      if (copies > 0) {
        String next = curve.captures.get(1).file();
        String more = copies > 1 ? " and " + (copies - 1) + " more" : "";
        verdicts.add(Verdict.of(first, Finding.HAS_COPIES, copies, 0, next + more));
      }
      for (int k = 1; k <= copies; k++) {
        CaptureEntry copy = curve.captures.get(k);
        verdicts.add(Verdict.of(copy, Finding.SAME_CONTENT, k, 0, named(first, copy)));
      }
    }
    return verdicts;
  }

  private static String named(CaptureEntry first, CaptureEntry copy) {
    String owner =
        (first.unit().equals(copy.unit()) ? "" : ", unit `" + first.unit() + "`")
            + (first.fixture().equals(copy.fixture()) ? "" : ", fixture `" + first.fixture() + "`");
    return first.file() + " (line " + first.line() + owner + ")";
  }
}
