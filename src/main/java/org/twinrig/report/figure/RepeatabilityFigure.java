package org.twinrig.report.figure;

import java.awt.Color;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Repeatability;
import org.twinrig.internal.Numbers;

/** How far seatings of one unit scatter on either fixture, over frequency. */
public final class RepeatabilityFigure {
  /** A smaller axis, in dB, would blow up what is of no account. */
  private static final double LEAST_TOP_DB = 1;

  private RepeatabilityFigure() {}

  /**
   * Draws one kind.
   *
   * @param kind how well its seatings repeat
   * @param fixtures names of the fixtures
   * @param caption what the drawing carries; its number is that of the units seated twice or more
   * @return the drawing
   */
  public static Figure of(Repeatability kind, CapturesFigure.Fixtures fixtures, Caption caption) {
    double highest =
        Stream.concat(kind.from().stream(), kind.to().stream())
            .mapToDouble(b -> b.sd().highDb())
            .max()
            .orElse(0);
    String title = title(kind);
    Panel panel =
        new Panel(
                new Panel.Texts(
                    title,
                    caption.counted()
                        + " seated twice or more; title: 200 Hz to 4 kHz; pale: "
                        + caption.percent()
                        + " interval of the standard deviation",
                    "Standard deviation between seatings, dB",
                    caption.fingerprint()),
                Panel.Range.ofVariances(Math.max(LEAST_TOP_DB, highest)))
            .ofVariances();
    interval(panel, kind.from(), Ink.SEATING_OLD);
    interval(panel, kind.to(), Ink.BAND);
    edges(panel, kind.from(), Ink.OLD_FIXTURE);
    panel
        .withCurve(
            new Panel.Curve(hz(kind.from()), sd(kind.from()), Ink.OLD_FIXTURE, Ink.DASHED),
            fixtures.from())
        .withCurve(
            new Panel.Curve(hz(kind.to()), sd(kind.to()), Ink.NEW_FIXTURE, Ink.CURVE),
            fixtures.to());
    return Medium.draw(
        new Medium.Sheet(
            Figure.nameOf("repeatability", kind.kind()),
            title,
            "Standard deviation between seatings of one unit against frequency on both fixtures",
            Panel.WIDTH,
            panel.height()),
        panel::paint);
  }

  /** Which fixture repeats better in the middle of the axis. */
  static String title(Repeatability kind) {
    String who = TransferFigure.capital(kind.kind()) + ": ";
    var old = Repeatability.over(kind.from(), Region.MIDDLE);
    var now = Repeatability.over(kind.to(), Region.MIDDLE);
    if (old.isEmpty() && now.isEmpty()) {
      return who + "no unit was seated twice";
    }
    if (old.isEmpty() || now.isEmpty()) {
      return who + "seating was repeated on one fixture only";
    }
    return who
        + "seatings scatter by "
        + Numbers.fixed(old.getAsDouble(), 2)
        + " dB (old), "
        + Numbers.fixed(now.getAsDouble(), 2)
        + " dB (new)";
  }

  private static void interval(Panel panel, List<Repeatability.AtBand> bands, Color colour) {
    panel.withArea(
        new Panel.Area(
            hz(bands),
            bands.stream().mapToDouble(b -> b.sd().lowDb()).toArray(),
            bands.stream().mapToDouble(b -> b.sd().highDb()).toArray(),
            colour));
  }

  /** The old fixture's interval where the new one's covers it. */
  private static void edges(Panel panel, List<Repeatability.AtBand> bands, Color colour) {
    for (double[] edge :
        List.of(
            bands.stream().mapToDouble(b -> b.sd().lowDb()).toArray(),
            bands.stream().mapToDouble(b -> b.sd().highDb()).toArray())) {
      panel.withCurve(new Panel.Curve(hz(bands), edge, colour, Ink.HAIR));
    }
  }

  private static double[] hz(List<Repeatability.AtBand> bands) {
    return bands.stream().mapToDouble(b -> b.band().midHz()).toArray();
  }

  private static double[] sd(List<Repeatability.AtBand> bands) {
    double[] sd = new double[bands.size()];
    Arrays.setAll(sd, k -> bands.get(k).sd().sdDb());
    return sd;
  }
}
