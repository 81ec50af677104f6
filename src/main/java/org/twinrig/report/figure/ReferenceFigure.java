package org.twinrig.report.figure;

import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;

/** A reference curve of the old fixture, and what it becomes on the new one with its interval. */
public final class ReferenceFigure {
  private ReferenceFigure() {}

  /** Draws a reference; at least one band has a level. */
  public static Figure of(TranslatedReference reference, Translation translation) {
    List<TranslatedBand> rows = reference.rows();
    List<Optional<TranslatedBand.Predicted>> means =
        rows.stream().map(TranslatedBand::predicted).toList();
    double[] hz = Values.of(rows, r -> r.band().midHz());
    double[] old = Values.of(rows, r -> r.fromDb().orElse(Double.NaN));
    double[] low = Values.known(means, m -> m.toDb() - m.whole().halfDb());
    double[] high = Values.known(means, m -> m.toDb() + m.whole().halfDb());
    Translation.Origin origin = translation.origin();
    Plot plot =
        Plot.overFrequency(Axis.levelsHolding("Level as it came, dB", 1, old, low, high))
            .linedUp(translation.anchor())
            .area(hz, low, high, "interval of the mean")
            .line(hz, old, Ink.OLD, "old: " + origin.from())
            .line(
                hz,
                Values.known(means, TranslatedBand.Predicted::toDb),
                Ink.NEW,
                "as if on: " + origin.to());
    String howToRead =
        "%s, %s; the pale band holds the mean of the kind over all bands together at %s %%"
            .formatted(
                reference.kind(),
                Numbers.count(reference.units(), "unit", "units"),
                Numbers.fixed(100 * translation.confidence(), 0));
    return new Sheet(
            "The reference moves; %s octaves of it can be relied on"
                .formatted(Numbers.fixed(reference.octaves(Mark.RELIABLE), 1)),
            howToRead,
            origin.fingerprint())
        .overFrequency(
            plot,
            Stretch.joined(
                rows.stream()
                    .map(r -> Stretch.of(r.band(), r.mark(), r.fromDb().isEmpty()))
                    .toList()))
        .figure(
            Figure.nameOf("reference", reference.kind()),
            "Reference curve on the old and the new fixture against frequency, with interval and"
                + " marks");
  }
}
