package org.twinrig.intake;

import java.util.Arrays;
import java.util.Locale;
import org.twinrig.intake.Layout.Order;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** Points in the order of the file to a curve that rises. */
final class PointOrder {
  private final Points points;
  private final Remarks remarks;
  private final Order order;

  PointOrder(Points points, Remarks remarks) {
    this.points = points;
    this.remarks = remarks;
    this.order = order(points);
  }

  Order order() {
    return order;
  }

  /** The way most steps go. */
  private static Order order(Points points) {
    int falls = 0;
    int rises = 0;
    for (int i = 1; i < points.size(); i++) {
      falls += points.frequencyHz(i) < points.frequencyHz(i - 1) ? 1 : 0;
      rises += points.frequencyHz(i) > points.frequencyHz(i - 1) ? 1 : 0;
    }
    return falls > rises ? Order.FALLING : Order.RISING;
  }

  Response response() throws UnusableInput {
    double[] hz = new double[points.size()];
    double[] db = new double[points.size()];
    int kept = 0;
    for (int i = 0; i < points.size(); i++) {
      if (i == 0 || goesOn(i)) {
        hz[kept] = points.frequencyHz(i);
        db[kept] = points.levelDb(i);
        kept++;
      }
    }
    noteRepeated(points.size() - kept);
    if (kept < 2) {
      throw remarks.refuse(
          kept == 0 ? 0 : points.line(0),
          kept == 0 ? "there is no point above 0 Hz" : "there is only one point",
          "a curve needs two points or more");
    }
    return risingResponse(Arrays.copyOf(hz, kept), Arrays.copyOf(db, kept));
  }

  private Response risingResponse(double[] hz, double[] db) {
    if (order == Order.FALLING) {
      remarks.note(0, "the frequencies fall; the points were put in rising order");
      reverse(hz);
      reverse(db);
    }
    return Response.copyOf(hz, db);
  }

  private static void reverse(double[] values) {
    for (int i = 0, j = values.length - 1; i < j; i++, j--) {
      double first = values[i];
      values[i] = values[j];
      values[j] = first;
    }
  }

  /** Whether a point follows in order; false when it repeats the one before with its level. */
  private boolean goesOn(int i) throws UnusableInput {
    double step = points.frequencyHz(i) - points.frequencyHz(i - 1);
    if (step == 0 && points.levelDb(i) != points.levelDb(i - 1)) {
      throw remarks.refuse(
          points.line(i),
          String.format(
              Locale.ROOT,
              "%s Hz has the level %s dB here and %s dB on line %d",
              NumberText.plain(points.frequencyHz(i)),
              NumberText.plain(points.levelDb(i)),
              NumberText.plain(points.levelDb(i - 1)),
              points.line(i - 1)),
          "keep one of them, or export the frequencies with more digits");
    }
    if (order == Order.RISING ? step < 0 : step > 0) {
      throw turn(i);
    }
    return step != 0;
  }

  private UnusableInput turn(int i) {
    double here = points.frequencyHz(i);
    double start = points.frequencyHz(0);
    double before = points.frequencyHz(i - 1);
    // Nearer, in octaves, to where the file began than to where it had got.
    boolean startsAnew = Math.abs(Math.log(here / start)) < Math.abs(Math.log(here / before));
    return remarks.refuse(
        points.line(i),
        String.format(
            Locale.ROOT,
            "the frequency %s from %s Hz to %s Hz%s",
            order == Order.RISING ? "falls" : "rises",
            NumberText.plain(before),
            NumberText.plain(here),
            startsAnew ? ", as if a second curve began" : ""),
        startsAnew ? "put one curve in a file" : "sort the lines by frequency");
  }

  private void noteRepeated(int dropped) {
    if (dropped > 0) {
      int line = points.line(firstRepeated());
      remarks.note(
          line,
          dropped == 1
              ? "this point repeats the one before and was left out"
              : "this and "
                  + Numbers.count(dropped - 1, "other point", "other points")
                  + " repeat the one before and were left out");
    }
  }

  private int firstRepeated() {
    int i = 1;
    while (points.frequencyHz(i) != points.frequencyHz(i - 1)) {
      i++;
    }
    return i;
  }
}
