package org.twinrig.translation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.reliability.Reason;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.GraphFiles.OldGraphFile;
import org.twinrig.translation.Treatment.SmoothingMatch;

/**
 * The translations an old graph goes through, one after the other: of one pair of fixtures, or of
 * several, each link with its study's transfer. A graph has its smoothing met, is re-expressed link
 * by link, and is given in the form it came in.
 *
 * <p>A graph that is smoothed less than the study's captures is smoothed as they are. One that is
 * smoothed more goes through links whose captures were smoothed alike before the fit; where the
 * captures are not at hand, bands no wider than the smoothing are marked.
 *
 * <p>A compensated graph has had its reference added back. When the reference of the new fixture is
 * known it is subtracted again; otherwise the result is the raw graph. Both references are pinned
 * to the study's anchor, so that the graph keeps the level it came with.
 */
public final class Chain {
  private final List<Translation> links;
  private final List<Translator> translators;
  private final Map<Smoothing, List<Translator>> alike;
  private final Translation whole;

  /** Band levels of the new fixture's reference; nothing where it does not reach the anchor. */
  private final Optional<Levels> newReference;

  private Chain(List<Translation> links, Map<Smoothing, List<Translator>> alike) {
    this.links = List.copyOf(links);
    this.translators = translators(links);
    this.alike = Map.copyOf(alike);
    this.whole = whole(links);
    this.newReference =
        whole
            .handling()
            .newReference()
            .flatMap(r -> whole.anchor().pinnedLevels(r.curve(), whole.grid()));
  }

  /**
   * A chain of one or several translations.
   *
   * @param links in the order they are gone through
   * @throws IllegalArgumentException when there is none, or they have other bands or another
   *     confidence
   */
  public static Chain of(List<Translation> links) {
    if (links.isEmpty()) {
      throw new IllegalArgumentException("a chain needs at least one translation");
    }
    for (Translation link : links) {
      if (!link.grid().equals(links.get(0).grid())) {
        throw new IllegalArgumentException("the studies have other bands");
      }
      if (link.confidence() != links.get(0).confidence()) {
        throw new IllegalArgumentException("the studies have another confidence");
      }
    }
    return new Chain(links, Map.of());
  }

  /**
   * The same chain with links for all graphs smoothed more than the captures.
   *
   * @param smoothed gives the links for one of them, their captures smoothed alike before the fit;
   *     asked only where the graphs are smoothed more
   */
  public Chain withAlike(
      Collection<Smoothing> smoothings, Function<Smoothing, List<Translation>> smoothed) {
    Map<Smoothing, List<Translator>> more = new HashMap<>(alike);
    for (Smoothing smoothing : smoothings) {
      if (smoothing.widerThan(first().handling().captureSmoothing())) {
        more.put(smoothing, translators(smoothed.apply(smoothing)));
      }
    }
    return new Chain(links, more);
  }

  private static List<Translator> translators(List<Translation> links) {
    return links.stream().map(Translator::new).toList();
  }

  /** The translations: one or more. */
  List<Translation> links() {
    return links;
  }

  /** The first link, from the fixture the old graphs were made on. */
  Translation first() {
    return links.get(0);
  }

  /** The chain as one: what reports name: the last link, with names and fingerprints of all. */
  public Translation whole() {
    return whole;
  }

  private static Translation whole(List<Translation> links) {
    Translation last = links.get(links.size() - 1);
    if (links.size() == 1) {
      return last;
    }
    Translation first = links.get(0);
    Translation.Origin origin =
        new Translation.Origin(
            joined(links, ", then ", t -> t.origin().title()),
            first.origin().from(),
            last.origin().to(),
            last.origin().anchor(),
            joined(links, " + ", t -> t.origin().fingerprint()));
    Translation.Handling handling =
        new Translation.Handling(
            first.handling().captureSmoothing(),
            first.handling().sidesPerSeating(),
            first.handling().publishing(),
            first.handling().oldReference(),
            last.handling().newReference());
    return new Translation(
        origin,
        last.anchor(),
        last.grid(),
        last.confidence(),
        last.tolerance(),
        last.minUnits(),
        handling,
        last.kinds());
  }

  private static String joined(
      List<Translation> links, String with, Function<Translation, String> name) {
    return links.stream().map(name).collect(Collectors.joining(with));
  }

  /**
   * What became of a graph.
   *
   * @param given as it is given: compensated as it came where the new reference is known
   * @param came the curve it is given in the place of
   */
  record Result(TranslatedGraph raw, TranslatedGraph given, Response came, Sketch sketch) {}

  Result translate(OldGraphFile file) {
    Smoothing captures = first().handling().captureSmoothing();
    Smoothing graph = file.entry().statedSmoothing();
    if (captures.widerThan(graph)) {
      return through(translators, file, captures.apply(file.raw()), SmoothingMatch.GRAPH_SMOOTHED);
    }
    if (!graph.widerThan(captures)) {
      return through(translators, file, file.raw(), SmoothingMatch.ALIKE);
    }
    if (alike.containsKey(graph)) {
      return through(alike.get(graph), file, file.raw(), SmoothingMatch.STUDY_SMOOTHED);
    }
    boolean finer = graph.fraction() > first().grid().perOctave();
    return through(
        translators,
        file,
        file.raw(),
        finer ? SmoothingMatch.FINER_THAN_BANDS : SmoothingMatch.MARKED);
  }

  private Result through(
      List<Translator> way, OldGraphFile file, Response raw, SmoothingMatch match) {
    OldGraph old = OldGraph.of(raw, first());
    TranslatedGraph graph = way.get(0).translate(file.entry(), old);
    for (Translator link : way.subList(1, way.size())) {
      graph = link.onward(graph);
    }
    List<TranslatedBand> bands = graph.bands();
    if (match == SmoothingMatch.MARKED) {
      bands =
          bands.stream()
              .map(b -> b.predicted().isEmpty() ? b : b.lowered(List.of(Reason.SMOOTHED_MORE)))
              .toList();
    }
    Optional<Treatment.Reference> now =
        file.before().isPresent()
            ? whole.handling().newReference().map(Treatment.Reference::of)
            : Optional.empty();
    Treatment treatment = new Treatment(match, file.before().map(Treatment.Reference::of), now);
    graph = new TranslatedGraph(graph.entry(), bands, treatment);
    Sketch sketch =
        old.pinned().map(Sketch::of).orElseGet(() -> Sketch.empty(old.levels().grid().size()));
    return now.isPresent()
        ? new Result(graph, compensated(graph, file), file.published(), sketch)
        : new Result(graph, graph, file.raw(), sketch);
  }

  /** The old graph as it came, and the new one less the new reference. */
  private TranslatedGraph compensated(TranslatedGraph raw, OldGraphFile file) {
    Levels came = BandLevels.of(file.published(), first().grid());
    Levels reference = newReference.orElseThrow();
    List<TranslatedBand> bands = new ArrayList<>();
    for (int b = 0; b < raw.bands().size(); b++) {
      TranslatedBand band = raw.bands().get(b);
      bands.add(band.missing() ? band : compensated(band, came.level(b), reference, b));
    }
    return new TranslatedGraph(raw.entry(), bands, raw.treatment());
  }

  private static TranslatedBand compensated(
      TranslatedBand raw, OptionalDouble came, Levels reference, int b) {
    if (raw.predicted().isPresent() && !reference.has(b)) {
      return TranslatedBand.unusable(raw.band(), came, List.of(Reason.NO_DATA));
    }
    return raw.with(came, raw.predicted().map(p -> p.with(p.toDb() - reference.db(b), p.stepDb())))
        .lowered(reference.isCoarse(b) ? List.of(Reason.COARSE_POINTS) : List.of());
  }
}
