package org.twinrig.translation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * A graph on the study's bands, as one link of a chain takes it.
 *
 * @param pinned to the study's anchor, for windows to look at; nothing when it does not reach it
 * @param carried what an earlier link left uncertain, one per band; nothing for a graph as measured
 */
record OldGraph(Levels levels, Optional<Levels> pinned, Optional<List<Carried>> carried) {

  /**
   * What an earlier link left uncertain at a band.
   *
   * @param own uncertainty of the level, for an interval at the band
   * @param whole the same for an interval over the whole curve
   * @param reasons why the earlier link's mark is below reliable
   */
  record Carried(Uncertainty own, Uncertainty whole, List<Reason> reasons) {
    static final Carried NOTHING = new Carried(Uncertainty.NONE, Uncertainty.NONE, List.of());
  }

  static OldGraph of(Response raw, Translation translation) {
    BandGrid grid = translation.grid();
    Levels levels = Levels.of(raw, grid);
    OptionalDouble pin = translation.anchor().levelOf(raw, grid.perOctave());
    return new OldGraph(levels, pinnedBy(levels, pin), Optional.empty());
  }

  /**
   * By how much a graph of {@code m} seatings averaged in power reads higher than their mean in
   * decibels: {@code (ln 10/20)·s2·(1 - 1/m)} dB, where {@code s2} is the variance between seatings
   * on the old fixture, of seatings with as many sides as the graph's. It is what is expected of
   * seatings that scatter normally, to second order: it overstates by less than 0.02 dB where they
   * scatter by 2 dB, and by 0.05 dB where by 3 dB (Monte Carlo). That {@code s2} is estimated, on
   * {@code ν} degrees of freedom, leaves an error of {@code √(2/ν)} of what is taken off, which is
   * not counted.
   *
   * @return one per band, 0 where the variance is not known; nothing for a graph that was averaged
   *     otherwise, or where its seatings, its kind or the variance of seatings are not known
   */
  static Optional<Levels> abovePowerMean(CatalogueEntry entry, Translation translation) {
    CatalogueEntry.Averaged averaged = entry.averaged();
    if (averaged.how() != CatalogueEntry.Averaging.POWER || averaged.seatings().isEmpty()) {
      return Optional.empty();
    }
    double sides = averaged.ofEach(translation.handling().sidesPerSeating());
    double share = Math.log(10) / 20 / sides * (1 - 1.0 / averaged.taken());
    return translation
        .kind(entry.kind())
        .filter(kind -> kind.bands().stream().anyMatch(b -> seatingVariance(b).isPresent()))
        .map(
            kind ->
                Levels.copyOf(
                    translation.grid(),
                    kind.bands().stream()
                        .mapToDouble(b -> share * seatingVariance(b).orElse(0))
                        .toArray()));
  }

  private static OptionalDouble seatingVariance(MarkedBand band) {
    return band.outcome() instanceof BandOutcome.Fitted fitted
        ? fitted.scatter().seatVarianceFrom()
        : OptionalDouble.empty();
  }

  /** The graph as its seatings' mean in decibels would be, where that can be told. */
  OldGraph meanOfDecibels(CatalogueEntry entry, Translation translation) {
    Optional<Levels> above =
        carried.isPresent() ? Optional.empty() : abovePowerMean(entry, translation);
    return above.map(a -> less(a, translation.anchor())).orElse(this);
  }

  private OldGraph less(Levels by, Anchor anchor) {
    double atAnchor = pin(by, anchor).orElse(0);
    return new OldGraph(minus(levels, by, 0), pinned.map(p -> minus(p, by, atAnchor)), carried);
  }

  private static Levels minus(Levels levels, Levels by, double atAnchor) {
    double[] db = new double[levels.grid().size()];
    BitSet coarse = new BitSet();
    for (int b = 0; b < db.length; b++) {
      db[b] = levels.has(b) ? levels.db(b) - by.db(b) + atAnchor : Double.NaN;
      coarse.set(b, levels.isCoarse(b));
    }
    return Levels.copyOf(levels.grid(), db, coarse);
  }

  /** A graph that was pinned like the study's captures. */
  static OldGraph pinned(Levels levels) {
    return new OldGraph(levels, Optional.of(levels), Optional.empty());
  }

  /** What an earlier link made, as the graph the next link starts from. */
  static OldGraph carried(TranslatedGraph before, Translation next, Intervals intervals) {
    BandGrid grid = next.grid();
    double[] db = new double[before.bands().size()];
    List<Carried> carried = new ArrayList<>();
    for (int b = 0; b < db.length; b++) {
      Optional<TranslatedBand.Predicted> predicted = before.bands().get(b).predicted();
      db[b] = predicted.map(TranslatedBand.Predicted::toDb).orElse(Double.NaN);
      List<Reason> reasons = before.bands().get(b).reasons();
      carried.add(
          predicted
              .map(p -> new Carried(intervals.own(p.own()), intervals.whole(p.whole()), reasons))
              .orElse(Carried.NOTHING));
    }
    Levels levels = Levels.copyOf(grid, db);
    return new OldGraph(levels, pinnedBy(levels, pin(levels, next.anchor())), Optional.of(carried));
  }

  private static Optional<Levels> pinnedBy(Levels levels, OptionalDouble pin) {
    return pin.isPresent()
        ? Optional.of(levels.map(db -> db - pin.getAsDouble()))
        : Optional.empty();
  }

  /** The level at the anchor of a curve known by its band levels only. */
  private static OptionalDouble pin(Levels levels, Anchor anchor) {
    if (anchor instanceof Anchor.Range range) {
      return mean(levels, range);
    }
    return anchor instanceof Anchor.Frequency at
        ? nearest(levels, at.hz())
        : OptionalDouble.of(0); // none: levels stand as they are
  }

  private static OptionalDouble mean(Levels levels, Anchor.Range range) {
    BandGrid anchor = BandGrid.covering(range.fromHz(), range.toHz(), levels.grid().perOctave());
    double sum = 0;
    for (Band band : anchor.bands()) {
      int b = levels.grid().bands().indexOf(band);
      if (b < 0 || !levels.has(b)) {
        return OptionalDouble.empty();
      }
      sum += levels.db(b);
    }
    return OptionalDouble.of(sum / anchor.size());
  }

  private static OptionalDouble nearest(Levels levels, double hz) {
    for (int b = 0; b < levels.grid().size(); b++) {
      Band band = levels.grid().band(b);
      if (band.lowerHz() <= hz && hz < band.upperHz()) {
        return levels.level(b);
      }
    }
    return OptionalDouble.empty();
  }

  /** How many seatings the graph counts as averaged over. */
  double seatings(double stated, double ofStudy) {
    return carried.isPresent() ? ofStudy : stated;
  }

  /** Why no mark can be reliable: the graph's own points, or the earlier link's reasons. */
  List<Reason> reasons(int band) {
    return carried
        .map(all -> all.get(band).reasons())
        .orElse(levels.isCoarse(band) ? List.of(Reason.COARSE_POINTS) : List.of());
  }

  /**
   * The uncertainty that comes in from an earlier link, with the least degrees of freedom of the
   * bands it comes from.
   */
  Carried carried(int band, Optional<WindowRule> window) {
    if (carried.isEmpty()) {
      return Carried.NOTHING;
    }
    List<Carried> all = carried.get();
    return window.isEmpty()
        ? all.get(band)
        : new Carried(
            carried(band, window.get(), Carried::own),
            carried(band, window.get(), Carried::whole),
            all.get(band).reasons());
  }

  private Uncertainty carried(int band, WindowRule window, Function<Carried, Uncertainty> which) {
    List<Carried> all = carried.orElseThrow();
    Uncertainty here = which.apply(all.get(band));
    double own = 1;
    double sum = 0;
    double freedom = here.degreesOfFreedom();
    for (WindowRule.Predictor p : window.predictors()) {
      Uncertainty there = which.apply(all.get(p.band()));
      if (p.band() == band) {
        own += p.coefficient();
      } else {
        sum += Math.abs(p.coefficient()) * there.standardDb();
      }
      freedom = Math.min(freedom, there.degreesOfFreedom());
    }
    return new Uncertainty(sum + Math.abs(own) * here.standardDb(), freedom);
  }
}
