package org.twinrig.intake;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * How many columns the sample has, and which of them hold numbers.
 *
 * @param separator what stands between its fields
 * @param width the commonest number of fields, empty ones included
 * @param filled the commonest number of fields up to the last that is not empty
 * @param numeric the columns that hold a number, or say that there is none, in most lines
 * @param occupied the columns that are not empty throughout
 */
record SampleTable(
    Separator separator, int width, int filled, List<Integer> numeric, List<Integer> occupied) {

  static SampleTable of(Lines lines, Sample sample, Separator separator) {
    Fields fields = new Fields();
    Map<Integer, Integer> widths = new HashMap<>();
    Map<Integer, Integer> fills = new HashMap<>();
    Map<Integer, Integer> numbers = new HashMap<>();
    Map<Integer, Integer> used = new HashMap<>();
    for (int line : sample.lines()) {
      fields.cut(lines, line, separator);
      widths.merge(fields.count(), 1, Integer::sum);
      fills.merge(fields.filled(), 1, Integer::sum);
      for (int column = 1; column <= fields.count(); column++) {
        boolean number =
            fields.isLooseNumber(column) || MissingNumber.isSaidBy(fields.text(column));
        numbers.merge(column, number && !fields.isEmpty(column) ? 1 : 0, Integer::sum);
        used.merge(column, fields.isEmpty(column) ? 0 : 1, Integer::sum);
      }
    }
    int width = commonest(widths);
    int most = sample.lines().size();
    return new SampleTable(
        separator,
        width,
        commonest(fills),
        upTo(width).filter(c -> 2 * numbers.get(c) >= most).boxed().toList(),
        upTo(width).filter(c -> used.get(c) > 0).boxed().toList());
  }

  private static IntStream upTo(int width) {
    return IntStream.rangeClosed(1, width);
  }

  /** Among equally common counts the smaller: what is missing is seen, what is extra is not. */
  private static int commonest(Map<Integer, Integer> counts) {
    return counts.entrySet().stream()
        .max(
            Map.Entry.<Integer, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
        .orElseThrow()
        .getKey();
  }

  /** Whether a line has the fields that lines have here; separators may be missing at its end. */
  boolean fits(Fields fields) {
    return fields.filled() <= width && fields.count() >= filled;
  }
}
