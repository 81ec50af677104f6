package org.twinrig.report.html;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.Stretch;

/**
 * Ranges of an axis in everyday words. Ends are rounded to two digits where that tells them apart:
 * by 5 % at most, less than one band of 1/12 octave.
 *
 * @param axis all of it, rising in frequency
 */
public record PlainRange(List<Stretch> axis) {
  /** A range without ends. */
  public static final String EVERYWHERE = "everywhere";

  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);
  private static final double LEAST_SHARE = 0.1;

  /**
   * Where a mark stands, in one list: {@code below 45 Hz and from 1.7 to 2.7 kHz (middle)}; empty
   * where nowhere. Without a mark: where nothing was measured.
   */
  public String list(Optional<Mark> mark) {
    return Texts.joined(axis.stream().filter(s -> s.mark().equals(mark)).map(this::of).toList());
  }

  /** One range, with the regions it lies in. */
  String of(Stretch stretch) {
    boolean low = stretch.fromHz() <= axis.get(0).fromHz();
    boolean high = stretch.toHz() >= axis.get(axis.size() - 1).toHz();
    if (low && high) {
      return EVERYWHERE;
    }
    if (low) {
      return "below " + hertz(stretch.toHz()) + regions(stretch);
    }
    return (high ? "above " + hertz(stretch.fromHz()) : between(stretch)) + regions(stretch);
  }

  /** Two ends, to three digits where two do not tell them apart. */
  private static String between(Stretch stretch) {
    String from = hertz(stretch.fromHz());
    String to = hertz(stretch.toHz());
    return "from "
        + (from.equals(to)
            ? Texts.unitOnce(Numbers.hertz(stretch.fromHz()), Numbers.hertz(stretch.toHz()))
            : Texts.unitOnce(from, to));
  }

  static String hertz(double hz) {
    return Numbers.hertz(new BigDecimal(hz, TWO_DIGITS).doubleValue());
  }

  /** The regions that hold at least a tenth of the stretch; nothing when that is all of them. */
  private static String regions(Stretch stretch) {
    double all = stretch.octavesInside(stretch.fromHz(), stretch.toHz());
    List<String> some =
        Arrays.stream(EverydayRegion.values())
            .filter(r -> r.octavesOf(stretch) >= LEAST_SHARE * all)
            .map(EverydayRegion::word)
            .toList();
    return some.size() == EverydayRegion.values().length ? "" : " (" + Texts.joined(some) + ")";
  }
}
