package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.translation.Treatment.SmoothingMatch;

/**
 * The way of one old graph: its smoothing met, re-expressed leg by leg, and given in the form it
 * came in.
 *
 * <p>A graph that is smoothed less than the study's captures is smoothed as they are. One that is
 * smoothed more goes through a study whose captures were smoothed alike before the fit; where the
 * captures are not at hand, bands no wider than the smoothing are marked.
 *
 * <p>A compensated graph has had its reference added back. When the reference of the new fixture is
 * known it is subtracted again; otherwise the result is the raw graph. Both references are pinned
 * to the study's anchor, so that the graph keeps the level it came with.
 */
final class GraphWay {
  private final Translations translations;
  private final List<Translator> own;
  private final Map<Smoothing, Optional<List<Translator>>> alike = new ConcurrentHashMap<>();
  private final Optional<Treatment.Reference> newName;
  private final Optional<Levels> newReference;

  GraphWay(Translations translations) {
    this.translations = translations;
    this.own = translations.legs().stream().map(Translator::new).toList();
    Translation whole = translations.whole();
    Optional<ReferenceCurve> reference = whole.handling().newReference();
    this.newName = reference.map(Treatment.Reference::of);
    this.newReference =
        reference.map(r -> whole.anchor().pinnedLevels(r.curve(), whole.grid()).orElseThrow());
  }

  /**
   * What became of a graph.
   *
   * @param raw re-expressed as a raw graph
   * @param given in the form it came in
   * @param sketch of the raw old graph
   */
  record Result(TranslatedGraph raw, TranslatedGraph given, Sketch sketch) {}

  Result of(OldGraphFile file) {
    CatalogueEntry entry = file.entry();
    Smoothing captures = translations.first().handling().captureSmoothing();
    Smoothing graph = entry.statedSmoothing();
    if (captures.widerThan(graph)) {
      return result(file, captures.apply(file.raw()), own, SmoothingMatch.GRAPH_SMOOTHED);
    }
    if (!graph.widerThan(captures)) {
      return result(file, file.raw(), own, SmoothingMatch.ALIKE);
    }
    Optional<List<Translator>> smoothed =
        alike.computeIfAbsent(
            graph, s -> translations.alike(s).map(l -> l.stream().map(Translator::new).toList()));
    if (smoothed.isPresent()) {
      return result(file, file.raw(), smoothed.get(), SmoothingMatch.STUDY_SMOOTHED);
    }
    boolean finer = graph.fraction() > translations.first().grid().perOctave();
    return result(
        file, file.raw(), own, finer ? SmoothingMatch.FINER_THAN_BANDS : SmoothingMatch.MARKED);
  }

  private Result result(
      OldGraphFile file, Response raw, List<Translator> legs, SmoothingMatch match) {
    OldGraph old = OldGraph.of(raw, translations.first());
    TranslatedGraph graph = legs.get(0).apply(file.entry(), old);
    for (Translator leg : legs.subList(1, legs.size())) {
      graph = leg.onward(graph);
    }
    if (match == SmoothingMatch.MARKED) {
      graph = marked(graph);
    }
    Optional<Treatment.Reference> now = file.before().isPresent() ? newName : Optional.empty();
    Treatment treatment = new Treatment(match, file.before().map(Treatment.Reference::of), now);
    graph = new TranslatedGraph(graph.entry(), graph.bands(), treatment);
    Sketch sketch =
        old.pinned().map(Sketch::of).orElseGet(() -> Sketch.empty(old.levels().grid().size()));
    return new Result(graph, now.isPresent() ? compensated(graph, file) : graph, sketch);
  }

  private static TranslatedGraph marked(TranslatedGraph graph) {
    List<TranslatedBand> bands = new ArrayList<>();
    for (TranslatedBand b : graph.bands()) {
      bands.add(b.predicted().isEmpty() ? b : b.lowered(Mark.CAUTION, Reason.SMOOTHED_MORE));
    }
    return new TranslatedGraph(graph.entry(), bands, graph.treatment());
  }

  /** The old graph as it came, and the new one less the new reference. */
  private TranslatedGraph compensated(TranslatedGraph raw, OldGraphFile file) {
    Levels came = BandLevels.of(file.published(), translations.first().grid());
    Levels reference = newReference.orElseThrow();
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < raw.bands().size(); b++) {
      TranslatedBand band = raw.bands().get(b);
      if (!band.missing()) {
        band = band.withFrom(came.level(b)).lessReference(reference.level(b));
        if (reference.isCoarse(b)) {
          band = band.lowered(Mark.CAUTION, Reason.COARSE_POINTS);
        }
      }
      bands.add(band);
    }
    return new TranslatedGraph(raw.entry(), bands, raw.treatment());
  }
}
