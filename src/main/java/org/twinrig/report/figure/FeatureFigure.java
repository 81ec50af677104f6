package org.twinrig.report.figure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.FixtureFeatures;

/** What the units of a kind share: mean curves against their own octave, features marked. */
public final class FeatureFigure {
  /** At least this range either way, so that small things do not look large, dB. */
  private static final double LEAST_RANGE = 3;

  /** An interval wider than this would squeeze everything else: the axis does not follow it, dB. */
  private static final double WIDEST = 8;

  /** A label stands clear of its bar by this part of a decade. */
  private static final double LABEL_SHARE = 22;

  private FeatureFigure() {}

  /**
   * Draws one kind; nothing where no band has a mean. Features of the transfer lower than {@code
   * leastDb} go without a mark.
   */
  public static Optional<Figure> of(KindOutcome kind, double leastDb, Caption caption) {
    FixtureFeatures.Result found = kind.evidence().features();
    FixtureFeatures.Contrast transfer = found.of(FixtureFeature.Curve.TRANSFER);
    if (transfer.bands().stream().allMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    double[] hz = Values.of(found.grid().bands(), b -> b.midHz());
    double[] low = ends(transfer, -1, Double.POSITIVE_INFINITY);
    double[] high = ends(transfer, 1, Double.POSITIVE_INFINITY);
    double[] old = ends(found.of(FixtureFeature.Curve.FROM), 0, 0);
    double[] now = ends(found.of(FixtureFeature.Curve.TO), 0, 0);
    Axis axis =
        Axis.differences(
            "Mean minus its own octave, dB",
            Values.least(-LEAST_RANGE, ends(transfer, -1, WIDEST), old, now) - 0.8,
            Values.greatest(LEAST_RANGE, ends(transfer, 1, WIDEST), old, now) + 0.8);
    Plot plot =
        Plot.overFrequency(axis)
            .area(hz, low, high, "interval")
            .line(hz, old, Ink.OLD, "old fixture")
            .line(hz, now, Ink.NEW_THIN, "new fixture")
            .line(hz, ends(transfer, 0, 0), Ink.ESTIMATE, "new minus old");
    List<FixtureFeature> marked =
        transfer.features().stream().filter(f -> Math.abs(f.height().value()) >= leastDb).toList();
    marked.forEach(f -> mark(plot, f));
    String howToRead =
        "; %s interval of new minus old for all bands at once%s; bars: a feature's place, height"
            .formatted(caption.percent(), axis.holdsAll(low, high) ? "" : ", off the axis");
    return Optional.of(
        caption
            .sheet(finding(marked, leastDb), howToRead)
            .overFrequency(plot, Stretch.ofBands(kind.transfer().bands()))
            .figure(
                caption.name("feature"),
                "Mean transfer, and mean level on either fixture, against their own smooth over one"
                    + " octave, with the features that the units share"));
  }

  /** A bar as high as the interval of the height, and one as wide as that of the place. */
  private static void mark(Plot plot, FixtureFeature f) {
    double hz = f.centre().value();
    double db = f.height().value();
    double half = f.simultaneousHalfDb();
    double clear = half + plot.up().perDecade() / LABEL_SHARE;
    plot.straight(hz, db - half, hz, db + half, Ink.LINE)
        .straight(f.centre().low(), db, f.centre().high(), db, Ink.LINE)
        .note(signed(db), hz, db > 0 ? db + clear : db - clear, Drawing.Lie.MIDDLE, Ink.NOTE);
  }

  private static String finding(List<FixtureFeature> marked, double leastDb) {
    Optional<FixtureFeature> greatest =
        marked.stream().max(Comparator.comparingDouble(f -> Math.abs(f.height().value())));
    return greatest
        .map(
            f ->
                "%s, the greatest %s dB at %s"
                    .formatted(
                        Numbers.count(marked.size(), "shared feature", "shared features"),
                        signed(f.height().value()),
                        Numbers.hertz(f.centre().value())))
        .orElse("no feature of " + Numbers.fixed(leastDb, 1) + " dB or more is shared");
  }

  private static String signed(double db) {
    return (db > 0 ? "+" : "") + Numbers.fixed(db, 1);
  }

  /** The mean (0) or an end of its simultaneous interval (-1, 1), no wider than said. */
  private static double[] ends(FixtureFeatures.Contrast contrast, int which, double widestDb) {
    return Values.known(
        contrast.bands(),
        m -> m.estimate().meanDb() + which * Math.min(widestDb, m.simultaneousHalfDb()));
  }
}
