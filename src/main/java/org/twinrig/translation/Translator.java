package org.twinrig.translation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.twinrig.band.Band;
import org.twinrig.capture.Unit;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * Re-expresses graphs.
 *
 * <p>A graph of a known kind: {@code to(b) = from(b) + δ̂(b)}, or {@code from(b) + d̄(b) + Σ_c β_c
 * (from(c) - x̄(c))} where the study predicts by windows, with the prediction half-width {@code
 * t_ν·√(s² + cᵀ S_A c·max(0, 1/m - 1/ñ_A))} for {@code m} averaged seatings; {@code s²} and {@code
 * ν} as {@code regression.ErrorVariance} says. The interval over the whole curve is {@code t_{n-1,
 * 1-α/(2·bands)}·√(…)} with the mean square error over the bands within 1/3 octave in place of
 * {@code s²}. Where the old graph lacks bands of a window what it says fades out, and the offset's
 * own errors count if they are larger; where it does not reach the anchor, the offset alone
 * predicts. A window looks at the graph pinned to the study's anchor; the result keeps the level
 * the graph came with.
 *
 * <p>What old graphs scatter beyond their seatings, see {@link Continuity}, adds to every variance.
 *
 * <p>A graph unlike the study's units, see {@link StudyUnits}, is marked so at all bands.
 *
 * <p>A graph of unknown kind is held to be one of the kinds with enough units: its level is moved
 * by the plain mean {@code c} of their transfers, and its half-width is the greatest {@code |δ̂_k -
 * c| + half_k}, so that the interval holds whichever of them it is. It is unlike the study's units
 * when it is unlike those of every kind.
 *
 * <p>A kind the study does not have is not translated at all, and neither is one of units that
 * adapt to what they are worn on.
 *
 * <p>A graph of seatings averaged in power is taken as their mean in decibels, see {@link
 * OldGraph#abovePowerMean}; one that shows the best seal counts as one seating, and its bass is
 * marked where seals scatter.
 *
 * <p>An absolute graph of a kind whose {@link LevelShift} is known is moved by it, see {@link
 * #moved}.
 */
public final class Translator {
  /** As far as leaks reach in over-ear and in-ear headphones: common practice, no source. */
  private static final double LEAKS_TO_HZ = 300;

  private final Translation translation;
  private final Intervals intervals;
  private final Optional<Continuity> continuity;

  /** A translator. */
  public Translator(Translation translation) {
    this(translation, Optional.empty());
  }

  /** A translator of old graphs that scatter by themselves as found. */
  public Translator(Translation translation, Optional<Continuity> continuity) {
    this.translation = translation;
    this.continuity = continuity;
    this.intervals = new Intervals(translation.confidence(), translation.grid().size());
  }

  /** Re-expresses one graph. */
  public TranslatedGraph apply(CatalogueEntry entry, Response raw) {
    return translate(entry, OldGraph.of(raw, translation));
  }

  /**
   * Re-expresses one graph that is on the study's bands and pinned to its anchor already.
   *
   * @param from its levels on the old fixture, pinned as the study's captures were
   * @throws IllegalArgumentException when the levels are on other bands
   */
  public TranslatedGraph applyPinned(CatalogueEntry entry, Levels from) {
    return translate(entry, OldGraph.pinned(from));
  }

  /**
   * Re-expresses what another study re-expressed: the next link of a chain over several fixtures.
   *
   * <p>What the earlier link left uncertain enters with the weights of this link, {@code Σ_c
   * |1{c=b} + β_c|·u(c)}, as if the errors of neighbouring bands had one sign: how they go together
   * is not known. It is combined with this link's own after JCGM 100:2008, 5.1.2, with effective
   * degrees of freedom after its G.4.1. The graph counts as averaged over as many seatings as this
   * link's study, because the earlier link's errors hold the seating scatter of its new fixture
   * already. The errors of two links are taken not to go together: the studies are to be of other
   * units or occasions.
   *
   * @param before what the earlier link made; its new fixture is this link's old one
   * @return the graph on this link's new fixture, with the levels of the old graph under {@code
   *     fromDb}
   * @throws IllegalArgumentException when the links have other bands
   */
  TranslatedGraph onward(TranslatedGraph before) {
    List<TranslatedBand> onward =
        translate(before.entry(), OldGraph.carried(before, translation, intervals)).bands();
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < onward.size(); b++) {
      TranslatedBand old = before.bands().get(b);
      TranslatedBand now = onward.get(b);
      double step = old.predicted().map(TranslatedBand.Predicted::stepDb).orElse(0.0);
      bands.add(
          old.predicted().isEmpty()
              ? old
              : now.with(
                  old.fromDb(),
                  now.predicted().map(p -> p.with(p.toDb(), Math.max(p.stepDb(), step)))));
    }
    return new TranslatedGraph(before.entry(), bands, before.treatment());
  }

  /**
   * The same graph moved in level as a whole, and judged by its intervals with what is uncertain of
   * that added: as if the errors of shape and level did not go together. Pinning makes them go
   * against each other, so that this is on the wide side.
   */
  List<TranslatedBand> moved(List<TranslatedBand> bands, double db, Uncertainty level) {
    return bands.stream()
        .map(b -> b.predicted().map(p -> moved(b, p, db, level)).orElse(b))
        .toList();
  }

  private TranslatedBand moved(
      TranslatedBand band, TranslatedBand.Predicted was, double db, Uncertainty level) {
    Uncertainty own = intervals.own(was.own()).and(level);
    Uncertainty whole = intervals.whole(was.whole()).and(level);
    TranslatedBand.Predicted now =
        new TranslatedBand.Predicted(
            was.toDb() + db,
            was.stepDb(),
            reach(was.own(), intervals.ownHalfDb(own), own),
            reach(was.whole(), intervals.wholeHalfDb(whole), whole));
    Mark byWidth = MarkRule.byWidth(translation.tolerance(), band.band().midHz(), now.halfDb());
    List<Reason> reasons = new ArrayList<>(band.reasons());
    if (byWidth != Mark.RELIABLE) {
      reasons.add(Reason.WIDE_PREDICTION);
    }
    return new TranslatedBand(
        band.band(), band.fromDb(), Optional.of(now), band.mark().worse(byWidth), reasons);
  }

  /** More to be uncertain of comes with more degrees of freedom, but never narrows an interval. */
  private static TranslatedBand.Reach reach(
      TranslatedBand.Reach was, double halfDb, Uncertainty now) {
    return new TranslatedBand.Reach(Math.max(was.halfDb(), halfDb), now.degreesOfFreedom());
  }

  TranslatedGraph translate(CatalogueEntry entry, OldGraph asItCame) {
    if (!asItCame.levels().grid().equals(translation.grid())) {
      throw new IllegalArgumentException("a graph must be on the bands of the study");
    }
    OldGraph graph = asItCame.meanOfDecibels(entry, translation);
    List<TransferFunction> candidates = candidates(entry.kind());
    boolean unlike =
        !candidates.isEmpty()
            && candidates.stream()
                .allMatch(
                    k ->
                        StudyUnits.unlike(
                            graph, k, intervals, b -> ofOldGraphs(k, b).standardDb()));
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < translation.grid().size(); b++) {
      TranslatedBand band =
          candidates.isEmpty()
              ? notTranslated(graph, b, entry.kind())
              : band(graph, b, candidates, entry.averaged());
      if (b > 0) {
        band = band.after(bands.get(b - 1), unitStepDb(candidates, b));
      }
      bands.add(
          unlike && band.predicted().isPresent()
              ? band.lowered(List.of(Reason.OUTSIDE_THE_STUDY))
              : band);
    }
    if (entry.averaged().how() == CatalogueEntry.Averaging.POWER) {
      for (int b = 0; b < bands.size(); b++) {
        bands.set(b, bands.get(b).with(asItCame.levels().level(b), bands.get(b).predicted()));
      }
    }
    return new TranslatedGraph(entry, bands, Treatment.RAW);
  }

  /** The kinds a graph may be of; none where it is not translated. */
  private List<TransferFunction> candidates(String kind) {
    if (kind.equals(Translation.UNKNOWN_KIND)) {
      return translation.candidatesForUnknown();
    }
    return Unit.adaptive(kind) ? List.of() : translation.kind(kind).map(List::of).orElse(List.of());
  }

  private Uncertainty ofOldGraphs(TransferFunction kind, int band) {
    return continuity.map(c -> c.added(kind.kind(), band)).orElse(Uncertainty.NONE);
  }

  /** How much a unit's difference changes from the band below, at most over the kinds, dB. */
  private static double unitStepDb(List<TransferFunction> candidates, int b) {
    double step = 0;
    for (TransferFunction kind : candidates) {
      if (kind.bands().get(b).outcome() instanceof BandOutcome.Fitted fitted) {
        step = Math.max(step, fitted.unitSpread().stepDb());
      }
    }
    return step;
  }

  private TranslatedBand notTranslated(OldGraph graph, int b, String kind) {
    Reason without =
        Unit.adaptive(kind)
            ? Reason.ADAPTIVE
            : kind.equals(Translation.UNKNOWN_KIND)
                ? Reason.OUTSIDE_THE_STUDY
                : Reason.KIND_NOT_IN_THE_STUDY;
    OptionalDouble level = graph.levels().level(b);
    return TranslatedBand.unusable(
        translation.grid().band(b), level, List.of(level.isEmpty() ? Reason.NO_DATA : without));
  }

  private TranslatedBand band(
      OldGraph graph, int b, List<TransferFunction> candidates, CatalogueEntry.Averaged averaged) {
    double seatings = averaged.asSeatingsOf(translation.handling().sidesPerSeating());
    Band band = translation.grid().band(b);
    OptionalDouble level = graph.levels().level(b);
    if (level.isEmpty()) {
      return TranslatedBand.unusable(band, level, List.of(Reason.NO_DATA));
    }
    List<KindPrediction> found = new ArrayList<>();
    for (TransferFunction kind : candidates) {
      MarkedBand marked = kind.bands().get(b);
      if (marked.outcome() instanceof BandOutcome.Fitted fitted) {
        Uncertainty added = ofOldGraphs(kind, b);
        found.add(KindPrediction.of(marked, fitted, graph, b, seatings, added));
      }
    }
    if (found.size() < candidates.size()) {
      // A kind without an estimate here could be the graph's: nothing can be promised.
      boolean nothing =
          candidates.size() == 1 && candidates.get(0).bands().get(b).outcome().units() == 0;
      return TranslatedBand.unusable(
          band, level, List.of(nothing ? Reason.NO_DATA : Reason.FEW_UNITS));
    }
    List<Reason> reasons = new ArrayList<>(graph.reasons(b));
    if (averaged.how() == CatalogueEntry.Averaging.BEST_SEAL
        && graph.carried().isEmpty()
        && band.midHz() < LEAKS_TO_HZ
        && found.stream().anyMatch(KindPrediction::misledByBestSeal)) {
      reasons.add(Reason.BEST_SEAL);
    }
    return predicted(band, level, found, reasons);
  }

  private TranslatedBand predicted(
      Band band, OptionalDouble level, List<KindPrediction> kinds, List<Reason> carried) {
    double centre = kinds.stream().mapToDouble(KindPrediction::shiftDb).average().orElseThrow();
    TranslatedBand.Predicted predicted =
        new TranslatedBand.Predicted(
            level.orElseThrow() + centre,
            0,
            reach(kinds, centre, KindPrediction::own, intervals::ownHalfDb),
            reach(kinds, centre, KindPrediction::whole, intervals::wholeHalfDb));
    Mark mark = MarkRule.byWidth(translation.tolerance(), band.midHz(), predicted.halfDb());
    List<Reason> why = mark == Mark.RELIABLE ? List.of() : MarkRule.whyWide(widest(kinds));
    TranslatedBand translated =
        new TranslatedBand(band, level, Optional.of(predicted), mark, why).lowered(carried);
    for (KindPrediction kind : kinds) {
      translated = translated.lowered(kind.marked().reasons());
    }
    return translated;
  }

  private BandOutcome.Fitted widest(List<KindPrediction> kinds) {
    return Collections.max(kinds, Comparator.comparingDouble(k -> intervals.ownHalfDb(k.own())))
        .fitted();
  }

  /** How far from a shift the intervals of all kinds reach. */
  private static TranslatedBand.Reach reach(
      List<KindPrediction> kinds,
      double centreDb,
      Function<KindPrediction, Uncertainty> which,
      ToDoubleFunction<Uncertainty> halfDb) {
    ToDoubleFunction<KindPrediction> reach =
        k -> Math.abs(k.shiftDb() - centreDb) + halfDb.applyAsDouble(which.apply(k));
    KindPrediction farthest = kinds.stream().max(Comparator.comparingDouble(reach)).orElseThrow();
    return new TranslatedBand.Reach(
        reach.applyAsDouble(farthest), which.apply(farthest).degreesOfFreedom());
  }
}
