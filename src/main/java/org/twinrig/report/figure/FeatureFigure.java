package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.MeanCurve;
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
   * Draws one kind.
   *
   * @param kind what was found about it
   * @param leastDb features of the transfer that are lower go without a mark
   * @param caption what the drawing carries
   * @return the drawing; nothing where no band has a mean
   */
  public static Optional<Figure> of(KindOutcome kind, double leastDb, Caption caption) {
    FixtureFeatures.Result found = kind.evidence().features();
    FixtureFeatures.Contrast transfer = found.of(FixtureFeature.Curve.TRANSFER);
    if (transfer.bands().stream().allMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    List<FixtureFeature> marked =
        transfer.features().stream().filter(f -> Math.abs(f.height().value()) >= leastDb).toList();
    double[] hz = found.grid().bands().stream().mapToDouble(b -> b.midHz()).toArray();
    String title = TransferFigure.capital(kind.kind()) + ": " + finding(marked, leastDb);
    Panel.Range range = range(found);
    Panel panel =
        panel(title, caption, range, leaves(range, transfer))
            .withArea(hz, ends(transfer, -1), ends(transfer, 1), "interval");
    panel
        .withCurve(
            new Panel.Curve(
                hz, ends(found.of(FixtureFeature.Curve.FROM), 0), Ink.OLD_FIXTURE, Ink.DASHED),
            "old fixture")
        .withCurve(
            new Panel.Curve(
                hz, ends(found.of(FixtureFeature.Curve.TO), 0), Ink.NEW_FIXTURE, Ink.THIN),
            "new fixture")
        .withCurve(new Panel.Curve(hz, ends(transfer, 0), Ink.TEXT, Ink.CURVE), "new minus old")
        .withStrip(TransferFigure.cells(kind.transfer().bands()));
    marked.forEach(f -> mark(panel, f, range.dbPerDecade() / LABEL_SHARE));
    return Optional.of(
        Medium.draw(
            new Medium.Sheet(
                Figure.nameOf("feature", kind.kind()),
                title,
                "Mean transfer, and mean level on either fixture, against their own smooth over one"
                    + " octave, with the features that the units share",
                Panel.WIDTH,
                panel.height()),
            panel::paint));
  }

  private static Panel panel(String title, Caption caption, Panel.Range range, boolean cut) {
    return new Panel(
        new Panel.Texts(
            title,
            caption.counted()
                + "; "
                + caption.percent()
                + " interval of new minus old for all bands at once"
                + (cut ? ", off the axis" : "")
                + "; bars: a feature's place, height",
            "Mean minus its own octave, dB",
            caption.fingerprint()),
        range);
  }

  /** A bar as high as the interval of the height, and one as wide as that of the place. */
  private static void mark(Panel panel, FixtureFeature f, double gapDb) {
    double hz = f.centre().value();
    double db = f.height().value();
    double low = db - f.simultaneousHalfDb();
    double high = db + f.simultaneousHalfDb();
    panel
        .withBar(new Panel.Bar(hz, low, hz, high))
        .withBar(new Panel.Bar(f.centre().low(), db, f.centre().high(), db))
        .withLabel(new Panel.Label(hz, db > 0 ? high + gapDb : low - gapDb, signed(db), Ink.TEXT));
  }

  private static String finding(List<FixtureFeature> marked, double leastDb) {
    Optional<FixtureFeature> greatest =
        marked.stream().max(Comparator.comparingDouble(f -> Math.abs(f.height().value())));
    return greatest
        .map(
            f ->
                Numbers.count(marked.size(), "shared feature", "shared features")
                    + ", the greatest "
                    + signed(f.height().value())
                    + " dB at "
                    + Numbers.hertz(f.centre().value()))
        .orElse("no feature of " + Numbers.fixed(leastDb, 1) + " dB or more is shared");
  }

  private static String signed(double db) {
    return (db > 0 ? "+" : "") + Numbers.fixed(db, 1);
  }

  private static Panel.Range range(FixtureFeatures.Result found) {
    double lowest = -LEAST_RANGE;
    double highest = LEAST_RANGE;
    for (FixtureFeature.Curve curve : FixtureFeature.Curve.values()) {
      boolean interval = curve == FixtureFeature.Curve.TRANSFER;
      for (Optional<MeanCurve.Mean> band : found.of(curve).bands()) {
        if (band.isPresent()) {
          double half = interval ? Math.min(WIDEST, band.get().simultaneousHalfDb()) : 0;
          lowest = Math.min(lowest, band.get().estimate().meanDb() - half);
          highest = Math.max(highest, band.get().estimate().meanDb() + half);
        }
      }
    }
    return Panel.Range.ofDifferences(lowest - 0.8, highest + 0.8);
  }

  private static boolean leaves(Panel.Range range, FixtureFeatures.Contrast contrast) {
    return Arrays.stream(ends(contrast, -1)).anyMatch(db -> db < range.fromDb())
        || Arrays.stream(ends(contrast, 1)).anyMatch(db -> db > range.toDb());
  }

  /** The mean (0) or an end of its simultaneous interval (-1, 1); NaN breaks the curve. */
  private static double[] ends(FixtureFeatures.Contrast contrast, int which) {
    double[] values = new double[contrast.bands().size()];
    Arrays.setAll(
        values,
        b ->
            contrast
                .bands()
                .get(b)
                .map(m -> m.estimate().meanDb() + which * m.simultaneousHalfDb())
                .orElse(Double.NaN));
    return values;
  }
}
