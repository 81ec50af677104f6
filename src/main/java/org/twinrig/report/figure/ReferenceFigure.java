package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;

/** A reference curve of the old fixture, and what it becomes on the new one with its interval. */
public final class ReferenceFigure {
  private ReferenceFigure() {}

  /**
   * Draws a reference.
   *
   * @param reference the curve; at least one band has a level
   * @param translation what was applied
   * @return the drawing
   */
  public static Figure of(TranslatedReference reference, Translation translation) {
    List<TranslatedReference.Row> rows = reference.rows();
    double[] hz = rows.stream().mapToDouble(r -> r.band().midHz()).toArray();
    double[] old = rows.stream().mapToDouble(r -> r.fromDb().orElse(Double.NaN)).toArray();
    double[] now = levels(rows, TranslatedReference.Mean::toDb);
    double[] low = levels(rows, m -> m.toDb() - m.simultaneousHalfDb());
    double[] high = levels(rows, m -> m.toDb() + m.simultaneousHalfDb());
    double lowest = Math.min(extreme(old, true), extreme(low, true));
    double highest = Math.max(extreme(old, false), extreme(high, false));
    String title =
        "The reference moves; "
            + Numbers.fixed(reference.octaves(Mark.RELIABLE), 1)
            + " octaves of it can be relied on";
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    reference.kind()
                        + ", "
                        + Numbers.count(reference.units(), "unit", "units")
                        + "; the pale band holds the mean of the kind over all bands together at "
                        + Numbers.fixed(100 * translation.confidence(), 0)
                        + " %",
                    "Level, dB",
                    translation.origin().fingerprint()),
                Panel.Range.holding(lowest - 1, highest + 1, 10, 25))
            .withArea(hz, low, high, "interval of the mean")
            .withCurve(
                new Panel.Curve(hz, old, Ink.OLD_FIXTURE, Ink.DASHED),
                "old: " + translation.origin().from())
            .withCurve(
                new Panel.Curve(hz, now, Ink.NEW_FIXTURE, Ink.CURVE),
                "as if on: " + translation.origin().to())
            .withStrip(
                rows.stream()
                    .map(r -> new MarkStrip.Cell(r.band(), r.mark(), r.fromDb().isEmpty()))
                    .toList());
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("reference", reference.kind()),
            title,
            "Reference curve on the old and the new fixture against frequency, with interval and"
                + " marks",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  /** One number per band for drawing, NaN where nothing is to be drawn. */
  private static double[] levels(
      List<TranslatedReference.Row> rows, ToDoubleFunction<TranslatedReference.Mean> what) {
    return rows.stream()
        .map(TranslatedReference.Row::mean)
        .mapToDouble(
            (Optional<TranslatedReference.Mean> m) -> m.map(what::applyAsDouble).orElse(Double.NaN))
        .toArray();
  }

  private static double extreme(double[] levels, boolean least) {
    java.util.stream.DoubleStream known = Arrays.stream(levels).filter(l -> !Double.isNaN(l));
    return (least ? known.min() : known.max()).orElse(0);
  }
}
