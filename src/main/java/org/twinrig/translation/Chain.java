package org.twinrig.translation;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.Pairing;
import org.twinrig.study.Study;
import org.twinrig.translation.GraphFiles.OldGraphFile;
import org.twinrig.translation.Treatment.SmoothingMatch;

/**
 * The translations an old graph goes through, one after the other: of one pair of fixtures, or of
 * several, each link with its study's transfer. A graph has its smoothing met, is re-expressed link
 * by link, and is given in the form it came in.
 *
 * <p>A graph that is smoothed less than the study's captures is smoothed as they are. One that is
 * smoothed more goes through links whose captures were smoothed alike before the fit; where the
 * captures are not at hand, bands no wider than the smoothing are marked. One that is smoothed as
 * far, but in decibels where the captures are in power or the reverse, cannot be made alike, and
 * bands are marked too. A curve that is smoothed again keeps what it had lost before: the narrower
 * of two smoothings counts little.
 *
 * <p>A compensated graph has had its reference added back. When the reference of the new fixture is
 * known it is subtracted again; otherwise the result is the raw graph. Both references are pinned
 * to the study's anchor, so that the graph keeps the level it came with.
 *
 * <p>An absolute graph is moved by the level shifts of its kind, where all links know them.
 *
 * <p>Of several links each starts on the fixture the one before it ends on.
 */
public final class Chain {
  private final List<Link> links;
  private final List<Translator> translators;
  private final Map<Smoothing, List<Translator>> alike;
  private final Translation whole;
  private final Optional<Continuity> continuity;

  /** Band levels of the new fixture's reference; nothing where it does not reach the anchor. */
  private final Optional<Levels> newReference;

  /**
   * One study of a chain.
   *
   * @param captures the study's captures, where they are at hand
   */
  public record Link(Translation translation, Optional<Captures> captures) {
    /** A study whose captures are not at hand. */
    public static Link of(Translation translation) {
      return new Link(translation, Optional.empty());
    }

    private Translation alike(Smoothing smoothing) {
      return smoothing.widerThan(translation.handling().captureSmoothing())
          ? captures.orElseThrow().refit(smoothing).withHandling(translation.handling())
          : translation;
    }
  }

  /** What a study's captures can be asked for, each smoothed before it is pinned. */
  public interface Captures {
    /** The study fitted anew. */
    Translation refit(Smoothing smoothing);

    /** What the old fixture showed. */
    List<Pairing.OnOldFixture> onOldFixture(Smoothing smoothing);

    /** The capture whose file has a SHA-256, if there is one. */
    Optional<CaptureEntry> ofFile(String sha256);

    /** What was declared. */
    Study study();
  }

  private Chain(
      List<Link> links, Map<Smoothing, List<Translator>> alike, Optional<Continuity> continuity) {
    List<Translation> translations = links.stream().map(Link::translation).toList();
    this.links = List.copyOf(links);
    this.continuity = continuity;
    this.translators = translators(translations);
    this.alike = Map.copyOf(alike);
    this.whole = whole(translations);
    this.newReference =
        whole
            .handling()
            .newReference()
            .flatMap(r -> whole.anchor().pinnedLevels(r.curve(), whole.grid()));
  }

  /** A chain of one study. */
  public static Chain of(Link link) {
    return new Chain(List.of(link), Map.of(), Optional.empty());
  }

  /**
   * A chain.
   *
   * @param links one or more, in the order they are gone through
   * @param places what messages call each, such as its folder
   * @throws UnusableInput when a study does not go on from the one before it
   */
  public static Chain of(List<Link> links, List<Path> places) throws UnusableInput {
    for (int k = 1; k < links.size(); k++) {
      check(links.get(k - 1).translation(), links.get(k).translation(), places.get(k));
    }
    return new Chain(links, Map.of(), Optional.empty());
  }

  private static void check(Translation before, Translation next, Path place) throws UnusableInput {
    if (!next.grid().equals(before.grid())) {
      throw UnusableInput.fatal(
          place.toString(),
          0,
          "the study has other bands than the one before it",
          "set the same `bands` in both and run them again");
    }
    if (next.confidence() != before.confidence()) {
      throw UnusableInput.fatal(
          place.toString(),
          0,
          "the study has another confidence than the one before it",
          "set the same `confidence` in both and run them again");
    }
    if (!next.origin().from().equals(before.origin().to())) {
      throw UnusableInput.fatal(
          place.toString(),
          0,
          "the study starts from `%s`, but the one before it ends on `%s`"
              .formatted(next.origin().from(), before.origin().to()),
          "give studies that meet on one fixture, with the same label in both");
    }
  }

  /** The same chain with another handling of graphs in its last study. */
  public Chain withLastHandling(UnaryOperator<Translation.Handling> change) {
    List<Link> changed = new ArrayList<>(links);
    Link last = changed.remove(changed.size() - 1);
    Translation.Handling handling = change.apply(last.translation.handling());
    changed.add(new Link(last.translation.withHandling(handling), last.captures));
    return new Chain(changed, alike, continuity);
  }

  /**
   * Re-expresses a catalogue, or some of its graphs. Graphs smoothed more than the captures go
   * through the studies fitted anew with captures smoothed alike, where all can be.
   *
   * @param table the catalogue's file, which the names of graphs are relative to
   * @throws IOException when the catalogue's folder cannot be read or the sink cannot keep a graph
   * @throws UnusableInput when the new fixture's reference does not reach the anchor
   */
  public Findings<CatalogueRun.Outcome> run(
      Path table,
      Findings<CatalogueReader.Catalogue> catalogue,
      int threads,
      CatalogueRun.Sink sink)
      throws IOException, UnusableInput {
    Path home = table.toRealPath().resolve("..").normalize();
    GraphFiles files = new GraphFiles(catalogue.value().source(), home, first());
    Chain held = new Chain(links, Map.of(), compared(catalogue.value().entries(), files));
    return new CatalogueRun(held.refitted(catalogue.value().smoothings()), threads)
        .run(catalogue, home, sink);
  }

  /** Old graphs of units that the first study has on its old fixture, held against it. */
  private Optional<Continuity> compared(List<CatalogueEntry> entries, GraphFiles files) {
    return links.get(0).captures.flatMap(c -> new OldFixture(first(), c).compared(entries, files));
  }

  /** What old graphs of units captured on the old fixture again say of it, if there are any. */
  public Optional<Continuity> continuity() {
    return continuity;
  }

  Chain refitted(Collection<Smoothing> smoothings) {
    Map<Smoothing, List<Translator>> more = new HashMap<>();
    if (links.stream().allMatch(l -> l.captures.isPresent())) {
      for (Smoothing smoothing : smoothings) {
        if (smoothing.widerThan(first().handling().captureSmoothing())) {
          more.put(smoothing, translators(links.stream().map(l -> l.alike(smoothing)).toList()));
        }
      }
    }
    return new Chain(links, more, continuity);
  }

  /** Old graphs scatter by themselves where they come in. */
  private List<Translator> translators(List<Translation> links) {
    List<Translator> all = new ArrayList<>();
    for (Translation link : links) {
      all.add(new Translator(link, all.isEmpty() ? continuity : Optional.empty()));
    }
    return all;
  }

  /** The translations: one or more. */
  List<Translation> links() {
    return links.stream().map(Link::translation).toList();
  }

  /** The first link, from the fixture the old graphs were made on. */
  Translation first() {
    return links.get(0).translation;
  }

  /** The first link. */
  Link start() {
    return links.get(0);
  }

  /** The translation of the last study. */
  public Translation last() {
    return links.get(links.size() - 1).translation;
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
            first.origin().old(),
            last.origin().now(),
            last.origin().anchor(),
            joined(links, " + ", t -> t.origin().fingerprint()),
            days(links),
            links.stream()
                .flatMap(t -> t.origin().validUntil().stream())
                .min(LocalDate::compareTo));
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
        last.kinds(),
        last.levelShifts());
  }

  /**
   * From the first session of all studies to the last; nothing where those of one are not known.
   */
  private static Optional<Study.Days> days(List<Translation> links) {
    List<Study.Days> all = links.stream().flatMap(t -> t.origin().sessions().stream()).toList();
    return all.size() < links.size()
        ? Optional.empty()
        : Optional.of(
            new Study.Days(
                all.stream().map(Study.Days::first).min(LocalDate::compareTo).orElseThrow(),
                all.stream().map(Study.Days::last).max(LocalDate::compareTo).orElseThrow()));
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
    boolean finer = graph.fraction() > first().grid().perOctave();
    if (graph.contradicts(captures) && !finer) {
      return through(translators, file, file.raw(), SmoothingMatch.OTHER_DOMAIN);
    }
    if (!graph.widerThan(captures)) {
      return through(translators, file, file.raw(), SmoothingMatch.ALIKE);
    }
    if (alike.containsKey(graph)) {
      return through(alike.get(graph), file, file.raw(), SmoothingMatch.STUDY_SMOOTHED);
    }
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
      bands = lowered(bands, Reason.SMOOTHED_MORE);
    } else if (match == SmoothingMatch.OTHER_DOMAIN) {
      bands = lowered(bands, Reason.SMOOTHED_OTHERWISE);
    }
    Optional<Treatment.Reference> now =
        file.before().isPresent()
            ? whole.handling().newReference().map(Treatment.Reference::of)
            : Optional.empty();
    Optional<LevelShift.Total> level = levelShift(file.entry());
    if (level.isPresent()) {
      Translator last = way.get(way.size() - 1);
      bands = last.moved(bands, level.get().db(), level.get().uncertainty());
    }
    boolean corrected = OldGraph.abovePowerMean(file.entry(), first()).isPresent();
    Treatment treatment =
        new Treatment(
            match,
            level.map(l -> OptionalDouble.of(l.db())).orElse(OptionalDouble.empty()),
            file.before().map(Treatment.Reference::of),
            now,
            corrected);
    graph = new TranslatedGraph(graph.entry(), bands, treatment);
    Sketch sketch =
        old.pinned().map(Sketch::of).orElseGet(() -> Sketch.empty(old.levels().grid().size()));
    return now.isPresent()
        ? new Result(graph, compensated(graph, file), file.published(), sketch)
        : new Result(graph, graph, file.raw(), sketch);
  }

  private static List<TranslatedBand> lowered(List<TranslatedBand> bands, Reason reason) {
    return bands.stream()
        .map(b -> b.predicted().isEmpty() ? b : b.lowered(List.of(reason)))
        .toList();
  }

  /**
   * How far an absolute graph is moved in all: nothing for a relative one, and where a link does
   * not know the level shift of its kind.
   */
  private Optional<LevelShift.Total> levelShift(CatalogueEntry entry) {
    if (entry.level() == CatalogueEntry.Level.RELATIVE) {
      return Optional.empty();
    }
    OptionalDouble seatings =
        OptionalDouble.of(entry.averaged().asSeatingsOf(first().handling().sidesPerSeating()));
    Optional<LevelShift.Total> total = Optional.of(LevelShift.Total.NONE);
    for (Translation link : links()) {
      boolean inTransfer =
          link.anchor() instanceof Anchor.None && link.kind(entry.kind()).isPresent();
      if (!inTransfer) {
        OptionalDouble own = seatings;
        Optional<LevelShift> shift = link.levelShift(entry.kind());
        total = total.flatMap(t -> shift.map(s -> t.and(s, own.orElse(s.seatings()))));
      }
      // What an earlier link made holds the scatter of a seating already.
      seatings = OptionalDouble.empty();
    }
    return total;
  }

  /** The old graph as it came, and the new one less the new reference. */
  private TranslatedGraph compensated(TranslatedGraph raw, OldGraphFile file) {
    Levels came = Levels.of(file.published(), first().grid());
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
