package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.PairedUnits;

/**
 * Whether units that come near their fixture's reference curve on the old fixture do so on the new
 * one.
 *
 * <p>A unit's deviation on a fixture is the root mean square over bands of its mean level minus the
 * reference curve of that fixture, {@code √( Σ_b (ybar_ig(b) - R_g(b))² / B )}, dB, over the {@code
 * B} bands of a stated range at which both reference curves have a level; bands of one width count
 * every octave alike. Units are ranked by it, the nearest first, tied units sharing the mean of
 * their ranks; {@link RankCorrelation} says how far both orders agree.
 *
 * <p>A unit that lacks one of these bands on either fixture takes no part, and is named: deviations
 * over different bands cannot be ranked. Levels and reference curves must be pinned alike.
 *
 * <p>Seating scatter alone shuffles units that lie close together. An order that is not kept says
 * that a ranking from the old fixture is not one for the new; it does not say which of both is
 * right.
 *
 * @param confidence of the intervals, strictly between 0 and 1
 */
public record RankKeeping(double confidence) {

  public RankKeeping {
    Checks.fraction(confidence, "confidence");
  }

  /**
   * What units are compared with: a reference curve of either fixture, dB per band, pinned like the
   * units, and the range over which deviations are taken.
   */
  public record References(Levels from, Levels to, FrequencyRange range) {
    public References {
      if (!from.grid().equals(to.grid())) {
        throw new IllegalArgumentException("both reference curves must be on the same bands");
      }
    }

    /**
     * Reference curves as their files hold them, pinned like the captures; nothing when one of them
     * does not reach the anchor.
     */
    public static Optional<References> pinned(
        Response from, Response to, Anchor anchor, BandGrid grid, FrequencyRange range) {
      return anchor
          .pinnedLevels(from, grid)
          .flatMap(
              old -> anchor.pinnedLevels(to, grid).map(now -> new References(old, now, range)));
    }
  }

  /** One unit's deviations on either fixture, dB, and its ranks by them, from 1 for the nearest. */
  public record Ranked(String unit, double fromDb, double toDb, double rankFrom, double rankTo) {
    /**
     * How far the unit falls: rank on the new fixture minus rank on the old one; negative where it
     * rises.
     */
    public double change() {
      return rankTo - rankFrom;
    }
  }

  /**
   * How far the order of a kind's units keeps, in the order of the study, but for units that lack a
   * band; the coefficients are missing with fewer than two units or without differences.
   */
  public record Result(
      FrequencyRange range,
      int bands,
      List<Ranked> units,
      List<String> leftOut,
      Optional<RankCorrelation> spearman,
      Optional<RankCorrelation> kendall) {
    public Result {
      units = List.copyOf(units);
      leftOut = List.copyOf(leftOut);
    }

    /**
     * The units whose rank changes at all, the greatest change first, equals in the study's order.
     */
    public List<Ranked> mostChanged(int most) {
      return units.stream()
          .filter(u -> u.change() != 0)
          .sorted(Comparator.comparingDouble(u -> -Math.abs(u.change())))
          .limit(most)
          .toList();
    }
  }

  /** Ranks the units of a kind, pinned, by references on the same bands. */
  public Result of(PairedUnits paired, References references) {
    int[] bands = bands(paired.grid(), references);
    List<Integer> members = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    for (int i = 0; i < paired.units().size(); i++) {
      Levels from = paired.from().means().get(i);
      Levels to = paired.to().means().get(i);
      if (IntStream.of(bands).allMatch(b -> from.has(b) && to.has(b))) {
        members.add(i);
      } else {
        leftOut.add(paired.units().get(i));
      }
    }
    double[] from = deviations(paired.from(), references.from(), members, bands);
    double[] to = deviations(paired.to(), references.to(), members, bands);
    return new Result(
        references.range(),
        bands.length,
        ranked(paired, members, from, to),
        leftOut,
        RankCorrelation.of(RankCorrelation.Measure.SPEARMAN, from, to, confidence),
        RankCorrelation.of(RankCorrelation.Measure.KENDALL, from, to, confidence));
  }

  private static int[] bands(BandGrid grid, References references) {
    if (!grid.equals(references.from().grid())) {
      throw new IllegalArgumentException("reference curves must be on the bands of the study");
    }
    int[] bands =
        IntStream.range(0, grid.size())
            .filter(b -> references.range().contains(grid.band(b).midHz()))
            .filter(b -> references.from().has(b) && references.to().has(b))
            .toArray();
    if (bands.length == 0) {
      throw new IllegalArgumentException(
          "no band from %s Hz to %s Hz has a level on both reference curves"
              .formatted(references.range().fromHz(), references.range().toHz()));
    }
    return bands;
  }

  private static double[] deviations(
      PairedUnits.OnFixture fixture, Levels reference, List<Integer> members, int[] bands) {
    return members.stream()
        .map(fixture.means()::get)
        .mapToDouble(levels -> rms(levels.minus(reference), bands))
        .toArray();
  }

  private static double rms(Levels apart, int[] bands) {
    double squares = 0;
    for (int b : bands) {
      squares += Math.pow(apart.db(b), 2);
    }
    return Math.sqrt(squares / bands.length);
  }

  private static List<Ranked> ranked(
      PairedUnits paired, List<Integer> members, double[] from, double[] to) {
    List<Ranked> ranked = new ArrayList<>();
    if (!members.isEmpty()) {
      NaturalRanking ranking = new NaturalRanking(TiesStrategy.AVERAGE);
      double[] rankFrom = ranking.rank(from);
      double[] rankTo = ranking.rank(to);
      for (int k = 0; k < from.length; k++) {
        String unit = paired.units().get(members.get(k));
        ranked.add(new Ranked(unit, from[k], to[k], rankFrom[k], rankTo[k]));
      }
    }
    return ranked;
  }
}
