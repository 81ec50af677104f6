package org.twinrig.scripting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.analysis.TranslationChain;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;
import org.twinrig.translation.Translator;

/** Re-expresses old graphs on the new fixture. Immutable. */
public final class GraphTranslation {
  private final Translation translation;
  private final Optional<StudyOutcome> outcome;
  private final int threads;

  private GraphTranslation(Translation translation, Optional<StudyOutcome> outcome, int threads) {
    this.translation = translation;
    this.outcome = outcome;
    this.threads = threads;
  }

  static GraphTranslation of(StudyOutcome outcome, int threads) {
    return new GraphTranslation(outcome.translation(), Optional.of(outcome), threads);
  }

  /**
   * Reads the translation.json that a study wrote; no captures are needed.
   *
   * @throws UnusableInput with a remedy when it cannot be read or was written by another version
   */
  public static GraphTranslation read(Path file) throws UnusableInput {
    return new GraphTranslation(
        TranslationFile.read(file, file.toString()),
        Optional.empty(),
        Runtime.getRuntime().availableProcessors());
  }

  /**
   * Re-expresses a raw graph of one seating, or of a number of seatings that is not known.
   *
   * @param raw what the old fixture measured, in dB at Hz, smoothed no more than the study's
   *     captures
   * @param kind the unit's kind, or {@value Translation#UNKNOWN_KIND}
   * @return the graph on the study's bands, with interval, mark and reasons per band
   * @throws IllegalArgumentException when the study has no such kind; says which it has
   */
  public ReexpressedGraph apply(Response raw, String kind) {
    return apply(CatalogueEntry.raw("graph", kind, 1), raw);
  }

  /**
   * Re-expresses a raw graph.
   *
   * @param entry what graph it is, for example {@code CatalogueEntry.raw("Rowan 32", "in-ear", 3)}
   *     for one averaged over three seatings
   * @param raw what the old fixture measured, in dB at Hz
   * @return the graph on the study's bands, with interval, mark and reasons per band
   * @throws IllegalArgumentException when the study has no such kind, or the entry is of a
   *     compensated or more smoothed graph, which only {@link #migrate} takes
   */
  public ReexpressedGraph apply(CatalogueEntry entry, Response raw) {
    check(entry);
    return reexpressed(new Translator(translation).apply(entry, raw));
  }

  /**
   * Re-expresses a unit of the study as if its levels on the old fixture were an old graph.
   *
   * @param unit the unit, for example one that was held out
   * @return the graph on the study's bands
   * @throws IllegalArgumentException when the study has no such kind, or other bands
   */
  public ReexpressedGraph apply(PairedUnit unit) {
    CatalogueEntry entry = CatalogueEntry.raw(unit.unit(), unit.kind(), unit.seatings());
    check(entry);
    Levels from = unit.from();
    return reexpressed(new Translator(translation).applyPinned(entry, from));
  }

  /**
   * Re-expresses a back catalogue. Its files are only read, and nothing is written: {@code twinrig
   * translate} writes what this gives.
   *
   * @param catalogue the table that lists the old graphs (catalogue.csv)
   * @return every graph with the decision about it; what could not be read stands under its {@link
   *     MigratedCatalogue#problems}
   * @throws UnusableInput with file, line and remedy when the table as a whole cannot be read, or
   *     the new fixture's reference does not reach the anchor
   */
  public MigratedCatalogue migrate(Path catalogue) throws UnusableInput {
    TranslationChain chain = TranslationChain.of(new TranslationChain.Link(translation, outcome));
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    try {
      Findings<CatalogueRun.Outcome> run =
          chain.run(
              catalogue,
              CatalogueReader.read(catalogue, catalogue.toString()),
              threads,
              (g, came) -> kept.put(g.entry().graph(), g));
      return new MigratedCatalogue(translation, run, kept);
    } catch (IOException e) {
      throw new UnusableInput(
          Problem.fatal(
              catalogue.toString(),
              0,
              "a file of the catalogue cannot be read any more (" + e.getMessage() + ")",
              "leave the catalogue's files in place while they are re-expressed"));
    }
  }

  /**
   * The transfers with their marks. Its parts may change between versions; what this package offers
   * directly does not.
   *
   * @return the whole translation
   */
  public Translation translation() {
    return translation;
  }

  private ReexpressedGraph reexpressed(TranslatedGraph graph) {
    return ReexpressedGraph.of(graph, translation);
  }

  private void check(CatalogueEntry entry) {
    if (entry.subtracted().isPresent()
        || entry.statedSmoothing().widerThan(translation.handling().captureSmoothing())) {
      throw new IllegalArgumentException(
          "`"
              + entry.graph()
              + "` is compensated or smoothed more than the captures; list it in a catalogue.csv"
              + " and migrate that");
    }
    if (!entry.kind().equals(Translation.UNKNOWN_KIND)
        && translation.kind(entry.kind()).isEmpty()) {
      List<String> kinds =
          new ArrayList<>(translation.kinds().stream().map(TransferFunction::kind).toList());
      kinds.add(Translation.UNKNOWN_KIND);
      throw StudyResult.noSuchKind(entry.kind(), kinds);
    }
  }
}
