package org.twinrig.report.html;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.ExampleGraph;
import org.twinrig.report.figure.Stretch;
import org.twinrig.translation.TranslatedGraph;

/** One old graph and what it becomes. */
final class ExampleWords {
  private ExampleWords() {}

  static ExplainView.Example of(TranslatedGraph graph, double confidence) {
    List<Stretch> stretches = Stretch.of(graph);
    ExampleGraph drawing = new ExampleGraph(graph);
    return new ExplainView.Example(
        title(stretches),
        graph.entry().unit() + ", " + graph.entry().kind(),
        TrustedMarkup.of(drawing.svg()),
        hundredths(confidence),
        Numbers.fixed(drawing.dbPerDecade(), 0));
  }

  static String title(List<Stretch> stretches) {
    Optional<Stretch> best =
        KindAdvice.with(Mark.RELIABLE, stretches).stream()
            .max(Comparator.comparingDouble(s -> s.octavesInside(s.fromHz(), s.toHz())));
    if (best.isPresent()) {
      return "An old graph, re-expressed: best " + new PlainRange(stretches).of(best.get());
    }
    return KindAdvice.with(Mark.CAUTION, stretches).isEmpty()
        ? "An old graph, re-expressed: not to be compared anywhere"
        : "An old graph, re-expressed: to be compared with care only";
  }

  /** A share in hundredths, never rounded up to all. */
  static String hundredths(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString();
  }
}
