package org.twinrig.intake;

import java.util.Locale;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/**
 * The points of a file in its own order, each with the line it stands on, and the rising curve they
 * make.
 */
final class Points {
  private final double[] frequenciesHz;
  private final double[] levelsDb;
  private final int[] lines;
  private int size;

  /** No point yet, with room for so many. */
  Points(int most) {
    frequenciesHz = new double[most];
    levelsDb = new double[most];
    lines = new int[most];
  }

  void add(double frequencyHz, double levelDb, int line) {
    frequenciesHz[size] = frequencyHz;
    levelsDb[size] = levelDb;
    lines[size] = line;
    size++;
  }

  int size() {
    return size;
  }

  /** Whether most steps fall. */
  boolean fall() {
    int falls = 0;
    for (int i = 1; i < size; i++) {
      falls += (int) Math.signum(frequenciesHz[i - 1] - frequenciesHz[i]);
    }
    return falls > 0;
  }

  /** The curve: at rising frequencies, a point that repeats the one before left out. */
  Response response(Remarks remarks) throws UnusableInput {
    boolean fall = fall();
    double[] hz = new double[size];
    double[] db = new double[size];
    int kept = 0;
    int firstRepeated = 0;
    for (int i = 0; i < size; i++) {
      if (i == 0 || goesOn(i, fall, remarks)) {
        hz[kept] = frequenciesHz[i];
        db[kept] = levelsDb[i];
        kept++;
      } else if (firstRepeated == 0) {
        firstRepeated = i;
      }
    }
    if (firstRepeated > 0) {
      int others = size - kept - 1;
      remarks.note(
          lines[firstRepeated],
          others == 0
              ? "this point repeats the one before and was left out"
              : "this and "
                  + Numbers.count(others, "other point", "other points")
                  + " repeat the one before and were left out");
    }
    if (kept < 2) {
      throw remarks.refuse(
          kept == 0 ? 0 : lines[0],
          kept == 0 ? "there is no point above 0 Hz" : "there is only one point",
          "a curve needs two points or more");
    }
    if (fall) {
      remarks.note(0, "the frequencies fall; the points were put in rising order");
    }
    return Response.copyOf(rising(hz, kept, fall), rising(db, kept, fall));
  }

  private static double[] rising(double[] values, int kept, boolean fall) {
    return IntStream.range(0, kept).mapToDouble(i -> values[fall ? kept - 1 - i : i]).toArray();
  }

  /** Whether a point follows in order; false when it repeats the one before with its level. */
  private boolean goesOn(int i, boolean fall, Remarks remarks) throws UnusableInput {
    double step = frequenciesHz[i] - frequenciesHz[i - 1];
    if (step == 0 && levelsDb[i] != levelsDb[i - 1]) {
      throw remarks.refuse(
          lines[i],
          String.format(
              Locale.ROOT,
              "%s Hz has the level %s dB here and %s dB on line %d",
              NumberText.plain(frequenciesHz[i]),
              NumberText.plain(levelsDb[i]),
              NumberText.plain(levelsDb[i - 1]),
              lines[i - 1]),
          "keep one of them, or export the frequencies with more digits");
    }
    if (fall ? step > 0 : step < 0) {
      throw turn(i, fall, remarks);
    }
    return step != 0;
  }

  private UnusableInput turn(int i, boolean fall, Remarks remarks) {
    double here = frequenciesHz[i];
    double start = frequenciesHz[0];
    double before = frequenciesHz[i - 1];
    // Nearer, in octaves, to where the file began than to where it had got.
    boolean startsAnew = Math.abs(Math.log(here / start)) < Math.abs(Math.log(here / before));
    return remarks.refuse(
        lines[i],
        String.format(
            Locale.ROOT,
            "the frequency %s from %s Hz to %s Hz%s",
            fall ? "rises" : "falls",
            NumberText.plain(before),
            NumberText.plain(here),
            startsAnew ? ", as if a second curve began" : ""),
        startsAnew ? "put one curve in a file" : "sort the lines by frequency");
  }
}
