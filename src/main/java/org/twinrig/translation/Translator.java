package org.twinrig.translation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.StudentT;
import org.twinrig.regression.WindowRule;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/**
 * Re-expresses graphs.
 *
 * <p>A graph of a known kind: {@code to(b) = from(b) + δ̂(b)}, or {@code from(b) + d̄(b) + Σ_c β_c
 * (from(c) - x̄(c))} where the study predicts by a window, with the prediction half-width {@code
 * t_{n-1}·√(loo_rms² + cᵀ S_A c·max(0, 1/m - 1/ñ_A))} for {@code m} averaged seatings. Where the
 * old graph lacks a band of the window or does not reach the anchor, the offset alone predicts,
 * with the offset's own errors. Where the graph's leverage in the window is above 1 it lies outside
 * what the study's units span, and the band is marked so. A window looks at the graph pinned to the
 * study's anchor; the result keeps the level the graph came with.
 *
 * <p>A graph of unknown kind is held to be one of the kinds with enough units: its level is moved
 * by the plain mean {@code c} of their transfers, and its half-width is the greatest {@code |δ̂_k -
 * c| + half_k}, so that the interval holds whichever of them it is.
 *
 * <p>A kind the study does not have is not translated at all.
 */
public final class Translator {
  private final Translation translation;
  private final ConcurrentHashMap<Integer, Double> quantiles = new ConcurrentHashMap<>();

  /**
   * A translator.
   *
   * @param translation what a study found
   */
  public Translator(Translation translation) {
    this.translation = translation;
  }

  /**
   * Re-expresses one graph.
   *
   * @param entry the graph
   * @param raw its raw response on the old fixture
   * @return the graph on the study's bands
   */
  public TranslatedGraph apply(CatalogueEntry entry, Response raw) {
    return apply(entry, OldGraph.of(raw, translation));
  }

  /**
   * Re-expresses one graph that is on the study's bands and pinned to its anchor already.
   *
   * @param entry the graph
   * @param from its levels on the old fixture, pinned as the study's captures were
   * @return the graph on the study's bands
   * @throws IllegalArgumentException when the levels are on other bands
   */
  public TranslatedGraph apply(CatalogueEntry entry, Levels from) {
    return apply(entry, new OldGraph(from, Optional.of(from)));
  }

  /**
   * A graph as it came, and pinned.
   *
   * @param levels as it came
   * @param pinned to the study's anchor; nothing when the graph does not reach it
   */
  private record OldGraph(Levels levels, Optional<Levels> pinned) {
    static OldGraph of(Response raw, Translation translation) {
      BandGrid grid = translation.grid();
      Levels levels = BandLevels.of(raw, grid);
      OptionalDouble pin = translation.anchor().levelOf(raw, grid.band(0).perOctave());
      return new OldGraph(
          levels,
          pin.isPresent()
              ? Optional.of(levels.map(db -> db - pin.getAsDouble()))
              : Optional.empty());
    }
  }

  private TranslatedGraph apply(CatalogueEntry entry, OldGraph graph) {
    if (!graph.levels().grid().equals(translation.grid())) {
      throw new IllegalArgumentException("a graph must be on the bands of the study");
    }
    boolean unknown = entry.kind().equals(Translation.UNKNOWN_KIND);
    List<TransferFunction> candidates =
        unknown
            ? translation.candidatesForUnknown()
            : translation.kind(entry.kind()).map(List::of).orElse(List.of());
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < translation.grid().size(); b++) {
      bands.add(band(graph, b, candidates, entry.averagedSeatings()));
    }
    return new TranslatedGraph(entry, bands);
  }

  private TranslatedBand band(
      OldGraph graph, int b, List<TransferFunction> candidates, int seatings) {
    Band band = translation.grid().band(b);
    OptionalDouble level = graph.levels().level(b);
    if (level.isEmpty()) {
      return unusable(band, level, Reason.NO_DATA);
    }
    if (candidates.isEmpty()) {
      return unusable(band, level, Reason.OUTSIDE_THE_STUDY);
    }
    List<Candidate> found = new ArrayList<>();
    for (TransferFunction kind : candidates) {
      if (kind.bands().get(b).outcome() instanceof BandOutcome.Fitted fitted) {
        found.add(candidate(kind.bands().get(b), fitted, graph, seatings));
      }
    }
    if (found.size() < candidates.size()) {
      // A kind without an estimate here could be the graph's: nothing can be promised.
      boolean nothing =
          candidates.size() == 1 && candidates.get(0).bands().get(b).outcome().units() == 0;
      return unusable(band, level, nothing ? Reason.NO_DATA : Reason.FEW_UNITS);
    }
    double centre = found.stream().mapToDouble(Candidate::shiftDb).average().orElseThrow();
    double half =
        found.stream()
            .mapToDouble(c -> Math.abs(c.shiftDb() - centre) + c.half)
            .max()
            .orElseThrow();
    return marked(
        band, new TranslatedBand.Predicted(level.getAsDouble() + centre, half), level, found);
  }

  private Candidate candidate(
      MarkedBand marked, BandOutcome.Fitted fitted, OldGraph graph, int seatings) {
    BandOutcome.Prediction prediction = fitted.prediction();
    double meanDb = fitted.mean().meanDb();
    OptionalDouble seating = fitted.scatter().seatVarianceFrom();
    if (prediction.window().isEmpty()) {
      double half = half(fitted, prediction.looRmsDb(), seating, seatings);
      return new Candidate(marked, fitted, meanDb, half, false);
    }
    WindowRule window = prediction.window().get();
    OptionalDouble shift =
        graph.pinned().isPresent() ? window.shiftDb(graph.pinned().get()) : OptionalDouble.empty();
    if (shift.isEmpty()) {
      // The graph is too narrow for the window or the anchor: the offset alone, with the offset's
      // own errors.
      double half = half(fitted, prediction.looRmsOffsetDb(), seating, seatings);
      return new Candidate(marked, fitted, meanDb, half, false);
    }
    return new Candidate(
        marked,
        fitted,
        shift.getAsDouble(),
        half(
            fitted,
            prediction.looRmsDb(),
            window.seatingVariance().isPresent() ? window.seatingVariance() : seating,
            seatings),
        window.leverage(graph.pinned().get(), fitted.units()) > 1);
  }

  private TranslatedBand marked(
      Band band,
      TranslatedBand.Predicted predicted,
      OptionalDouble from,
      List<Candidate> candidates) {
    Mark mark = MarkRule.byWidth(translation.tolerance(), band.midHz(), predicted.halfDb());
    List<Reason> reasons = new ArrayList<>();
    if (mark != Mark.RELIABLE) {
      Candidate widest =
          candidates.stream().max(Comparator.comparingDouble(Candidate::half)).orElseThrow();
      reasons.addAll(MarkRule.whyWide(widest.fitted));
    }
    if (candidates.stream().anyMatch(Candidate::outside)) {
      mark = Mark.UNRELIABLE;
      reasons.add(Reason.OUTSIDE_THE_STUDY);
    }
    for (Candidate c : candidates) {
      for (Reason reason : c.marked.reasons()) {
        switch (reason) {
          case WIDE_PREDICTION, SEATING_SCATTER, UNITS_DISAGREE -> {}
          case FEW_UNITS, NO_DATA, OUTSIDE_THE_STUDY -> {
            mark = Mark.UNRELIABLE;
            reasons.add(reason);
          }
          case OUTSIDE_EAR_SIMULATOR_RANGE, DECLARED_ZONE, RESONANCE_WANDERS -> {
            mark = mark.worse(Mark.CAUTION);
            reasons.add(reason);
          }
        }
      }
    }
    return new TranslatedBand(
        band, from, Optional.of(predicted), mark, reasons.stream().distinct().sorted().toList());
  }

  private double half(
      BandOutcome.Fitted fitted, double looRmsDb, OptionalDouble seatingVariance, int seatings) {
    double fewer = Math.max(0, 1.0 / seatings - 1 / fitted.scatter().seatingsFrom());
    double seating = seatingVariance.orElse(0) * fewer;
    return quantile(fitted.mean().degreesOfFreedom()) * Math.sqrt(looRmsDb * looRmsDb + seating);
  }

  private double quantile(int degreesOfFreedom) {
    return quantiles.computeIfAbsent(
        degreesOfFreedom, f -> StudentT.twoSided(translation.confidence(), f));
  }

  private static TranslatedBand unusable(Band band, OptionalDouble from, Reason reason) {
    return new TranslatedBand(band, from, Optional.empty(), Mark.UNRELIABLE, List.of(reason));
  }

  private record Candidate(
      MarkedBand marked, BandOutcome.Fitted fitted, double shiftDb, double half, boolean outside) {}
}
