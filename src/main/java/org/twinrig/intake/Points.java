package org.twinrig.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** The points of a file in its own order, and the rising curve they make. */
record Points(List<Point> all) {
  /** A point and the line it stands on. */
  record Point(double hz, double db, int line) {}

  /** Whether most steps fall. */
  boolean fall() {
    int falls = 0;
    for (int i = 1; i < all.size(); i++) {
      falls += (int) Math.signum(all.get(i - 1).hz() - all.get(i).hz());
    }
    return falls > 0;
  }

  /** The curve: at rising frequencies, a point that repeats the one before left out. */
  Response response(Remarks remarks) throws UnusableInput {
    boolean fall = fall();
    List<Point> kept = new ArrayList<>();
    int firstRepeated = 0;
    for (int i = 0; i < all.size(); i++) {
      if (i == 0 || goesOn(i, fall, remarks)) {
        kept.add(all.get(i));
      } else if (firstRepeated == 0) {
        firstRepeated = i;
      }
    }
    if (firstRepeated > 0) {
      int others = all.size() - kept.size() - 1;
      remarks.note(
          all.get(firstRepeated).line(),
          others == 0
              ? "this point repeats the one before and was left out"
              : "this and "
                  + Numbers.count(others, "other point", "other points")
                  + " repeat the one before and were left out");
    }
    if (kept.size() < 2) {
      throw remarks.refuse(
          kept.isEmpty() ? 0 : kept.get(0).line(),
          kept.isEmpty() ? "there is no point above 0 Hz" : "there is only one point",
          "a curve needs two points or more");
    }
    if (fall) {
      remarks.note(0, "the frequencies fall; the points were put in rising order");
      Collections.reverse(kept);
    }
    return Response.copyOf(
        kept.stream().mapToDouble(Point::hz).toArray(),
        kept.stream().mapToDouble(Point::db).toArray());
  }

  /** Whether a point follows in order; false when it repeats the one before with its level. */
  private boolean goesOn(int i, boolean fall, Remarks remarks) throws UnusableInput {
    Point here = all.get(i);
    Point before = all.get(i - 1);
    double step = here.hz() - before.hz();
    if (step == 0 && here.db() != before.db()) {
      throw remarks.refuse(
          here.line(),
          String.format(
              Locale.ROOT,
              "%s Hz has the level %s dB here and %s dB on line %d",
              NumberText.plain(here.hz()),
              NumberText.plain(here.db()),
              NumberText.plain(before.db()),
              before.line()),
          "keep one of them, or export the frequencies with more digits");
    }
    if (fall ? step > 0 : step < 0) {
      throw turn(here, before, remarks);
    }
    return step != 0;
  }

  private UnusableInput turn(Point here, Point before, Remarks remarks) {
    // Nearer, in octaves, to where the file began than to where it had got.
    boolean startsAnew =
        Math.abs(Math.log(here.hz() / all.get(0).hz()))
            < Math.abs(Math.log(here.hz() / before.hz()));
    return remarks.refuse(
        here.line(),
        String.format(
            Locale.ROOT,
            "the frequency %s from %s Hz to %s Hz%s",
            here.hz() > before.hz() ? "rises" : "falls",
            NumberText.plain(before.hz()),
            NumberText.plain(here.hz()),
            startsAnew ? ", as if a second curve began" : ""),
        startsAnew ? "put one curve in a file" : "sort the lines by frequency");
  }
}
