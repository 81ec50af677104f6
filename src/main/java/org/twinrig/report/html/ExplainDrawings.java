package org.twinrig.report.html;

import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.report.figure.DifferenceGraphs;
import org.twinrig.report.figure.ExampleGraph;
import org.twinrig.report.figure.FluidAxis;
import org.twinrig.report.figure.FluidStrip;
import org.twinrig.report.figure.Stretch;
import org.twinrig.translation.TranslatedGraph;

/** What is drawn into the page for readers. */
public final class ExplainDrawings {
  private ExplainDrawings() {}

  /** Drawn once, referred to by all strips. */
  public static TrustedMarkup hatching() {
    return TrustedMarkup.of(FluidStrip.hatching());
  }

  /** Marks along the axis, {@code height} pixels high. */
  public static TrustedMarkup strip(List<Stretch> stretches, int height) {
    return TrustedMarkup.of(FluidStrip.svg(stretches, height));
  }

  public static TrustedMarkup axisWithRegions() {
    return TrustedMarkup.of(FluidAxis.withRegions());
  }

  public static TrustedMarkup narrowAxis() {
    return TrustedMarkup.of(FluidAxis.narrow());
  }

  public static TrustedMarkup wideAxis() {
    return TrustedMarkup.of(FluidAxis.wide());
  }

  /** The mean difference of one of several kinds, all drawn to one scale. */
  public static TrustedMarkup difference(KindOutcome kind, List<KindOutcome> drawn) {
    return TrustedMarkup.of(
        new DifferenceGraphs(drawn.stream().map(KindOutcome::transfer).toList())
            .svg(kind.transfer()));
  }

  public static TrustedMarkup example(TranslatedGraph graph) {
    return TrustedMarkup.of(new ExampleGraph(graph).svg());
  }
}
