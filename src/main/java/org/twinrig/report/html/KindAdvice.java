package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.MarkStrip;
import org.twinrig.report.figure.Stretch;

/** What readers may do with old and new graphs of one kind. */
final class KindAdvice {
  static final String COMPARE = "Compare";
  static final String CARE = "Take care";
  static final String DO_NOT = "Do not compare";
  private static final String NOT_MEASURED = "Not measured";
  private static final int STRIP_HEIGHT = 20;

  private KindAdvice() {}

  /** The entry of a kind with at least one headphone on both fixtures. */
  static ExplainView.Kind of(KindOutcome kind, int minUnits) {
    int units = kind.paired().units().size();
    List<Stretch> stretches = Stretch.ofZones(kind.zones());
    List<ExplainView.Advice> advice =
        units < minUnits ? List.of(tooFew(units, minUnits)) : sentences(stretches);
    return new ExplainView.Kind(
        VerdictSentence.capital(kind.kind()),
        Numbers.count(units, "headphone", "headphones"),
        TrustedMarkup.of(MarkStrip.svg(stretches, STRIP_HEIGHT)),
        advice);
  }

  /** The entry of a kind that was announced, but never measured on both fixtures. */
  static ExplainView.Kind unmeasured(String kind) {
    return new ExplainView.Kind(
        VerdictSentence.capital(kind),
        "no headphones",
        TrustedMarkup.of(MarkStrip.svg(List.of(), STRIP_HEIGHT)),
        List.of(
            new ExplainView.Advice(
                DO_NOT, "old with new: none of this kind was measured on both fixtures.")));
  }

  private static ExplainView.Advice tooFew(int units, int minUnits) {
    return new ExplainView.Advice(
        DO_NOT,
        "old with new: only "
            + (units == 1 ? "1 of this kind was" : units + " of this kind were")
            + " measured on both fixtures. That is too few; it takes "
            + minUnits
            + ".");
  }

  static List<ExplainView.Advice> sentences(List<Stretch> stretches) {
    PlainRange words = new PlainRange(stretches);
    List<ExplainView.Advice> advice = new ArrayList<>();
    add(advice, DO_NOT, words, with(Mark.UNRELIABLE, stretches));
    add(advice, CARE, words, with(Mark.CAUTION, stretches));
    add(advice, COMPARE, words, with(Mark.RELIABLE, stretches));
    List<Stretch> gaps = stretches.stream().filter(s -> s.mark().isEmpty()).toList();
    add(advice, NOT_MEASURED, words, gaps);
    return advice;
  }

  static List<Stretch> with(Mark mark, List<Stretch> stretches) {
    return stretches.stream().filter(s -> s.is(mark)).toList();
  }

  private static void add(
      List<ExplainView.Advice> advice, String what, PlainRange words, List<Stretch> where) {
    if (!where.isEmpty()) {
      String ranges = words.list(where);
      boolean negative = what.equals(DO_NOT) || what.equals(NOT_MEASURED);
      boolean all = negative && ranges.equals(PlainRange.EVERYWHERE);
      advice.add(new ExplainView.Advice(what, (all ? "anywhere" : ranges) + "."));
    }
  }
}
