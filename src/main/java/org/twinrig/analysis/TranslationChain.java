package org.twinrig.analysis;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.Translation;

/**
 * Studies that old graphs are taken through one after the other, each starting on the fixture the
 * one before it ends on. Graphs smoothed more than the captures go through the studies fitted anew
 * with captures smoothed alike, where all outcomes are at hand.
 */
public final class TranslationChain {
  private final List<Link> links;

  /**
   * One study of a chain.
   *
   * @param outcome what it found, when that is at hand and not its translation alone
   */
  public record Link(Translation translation, Optional<StudyOutcome> outcome) {
    public static Link of(StudyOutcome outcome) {
      return new Link(outcome.translation(), Optional.of(outcome));
    }

    public static Link of(Translation translation) {
      return new Link(translation, Optional.empty());
    }

    private Translation alike(Smoothing smoothing, int threads) {
      return smoothing.widerThan(translation.handling().captureSmoothing())
          ? SmoothedStudy.of(outcome.orElseThrow(), smoothing, threads)
              .withHandling(translation.handling())
          : translation;
    }
  }

  private TranslationChain(List<Link> links) {
    this.links = List.copyOf(links);
  }

  /** A chain of one study. */
  public static TranslationChain of(Link link) {
    return new TranslationChain(List.of(link));
  }

  /**
   * A chain.
   *
   * @param links one or more, in the order they are walked
   * @param places what messages call each, such as its folder
   * @throws UnusableInput when a study does not go on from the one before it
   */
  public static TranslationChain of(List<Link> links, List<Path> places) throws UnusableInput {
    for (int k = 1; k < links.size(); k++) {
      Translation next = links.get(k).translation();
      check(links.get(0).translation(), next, places.get(k));
      checkFixtures(links.get(k - 1).translation(), next, places.get(k));
    }
    return new TranslationChain(links);
  }

  private static void check(Translation first, Translation next, Path place) throws UnusableInput {
    if (!next.grid().equals(first.grid())) {
      throw refused(
          place,
          "the study has other bands than the one before it",
          "set the same `bands` in both and run them again");
    }
    if (next.confidence() != first.confidence()) {
      throw refused(
          place,
          "the study has another confidence than the one before it",
          "set the same `confidence` in both and run them again");
    }
  }

  private static void checkFixtures(Translation before, Translation next, Path place)
      throws UnusableInput {
    String end = before.origin().to();
    if (!next.origin().from().equals(end)) {
      throw refused(
          place,
          "the study starts from `%s`, but the one before it ends on `%s`"
              .formatted(next.origin().from(), end),
          "give studies that meet on one fixture, with the same label in both");
    }
  }

  private static UnusableInput refused(Path place, String what, String remedy) {
    return new UnusableInput(Problem.fatal(place.toString(), 0, what, remedy));
  }

  /** The same chain with another handling of graphs in its last study. */
  public TranslationChain withLastHandling(UnaryOperator<Translation.Handling> change) {
    List<Link> changed = new ArrayList<>(links);
    Link last = changed.remove(changed.size() - 1);
    Translation translation =
        last.translation().withHandling(change.apply(last.translation().handling()));
    changed.add(new Link(translation, last.outcome()));
    return new TranslationChain(changed);
  }

  /** The translation of the last study. */
  public Translation last() {
    return links.get(links.size() - 1).translation();
  }

  /** The chain as one translation, as reports name it. */
  public Translation whole() {
    return own().whole();
  }

  private Chain own() {
    return Chain.of(links.stream().map(Link::translation).toList());
  }

  /**
   * Re-expresses a catalogue, or some of its graphs.
   *
   * @param table the catalogue's file, which the names of graphs are relative to
   * @param catalogue what it lists, with the problems found in it
   * @param threads how many threads to work on; the outcome does not depend on it
   * @param sink takes every graph
   * @throws IOException when the catalogue's folder cannot be read or the sink cannot keep a graph
   * @throws UnusableInput when the new fixture's reference does not reach the anchor
   */
  public Findings<CatalogueRun.Outcome> run(
      Path table,
      Findings<CatalogueReader.Catalogue> catalogue,
      int threads,
      CatalogueRun.Sink sink)
      throws IOException, UnusableInput {
    Chain translations = own();
    if (links.stream().allMatch(l -> l.outcome().isPresent())) {
      translations =
          translations.withAlike(
              catalogue.value().smoothings(),
              smoothing -> links.stream().map(l -> l.alike(smoothing, threads)).toList());
    }
    Path home = table.toRealPath().resolve("..").normalize();
    return new CatalogueRun(translations, threads).run(catalogue, home, new DataRoot(home), sink);
  }
}
