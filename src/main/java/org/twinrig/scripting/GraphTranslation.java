package org.twinrig.scripting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
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

  GraphTranslation(Translation translation, Optional<StudyOutcome> outcome, int threads) {
    this.translation = translation;
    this.outcome = outcome;
    this.threads = threads;
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
   * Re-expresses a raw graph of one seating, or of a number of seatings that is not known, on the
   * study's bands.
   *
   * @param raw what the old fixture measured, in dB at Hz, smoothed no more than the study's
   *     captures
   * @param kind the unit's kind, or {@value Translation#UNKNOWN_KIND}
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
   * @throws IllegalArgumentException when the study has no such kind, or the entry is of a
   *     compensated, absolute or more smoothed graph, which only {@link #migrate} takes
   */
  public ReexpressedGraph apply(CatalogueEntry entry, Response raw) {
    check(entry);
    return ReexpressedGraph.of(new Translator(translation).apply(entry, raw), translation);
  }

  /**
   * Re-expresses a unit of the study, for example one that was held out, as if its levels on the
   * old fixture were an old graph.
   *
   * @throws IllegalArgumentException when the study has no such kind, or other bands
   */
  public ReexpressedGraph apply(PairedUnit unit) {
    CatalogueEntry entry = CatalogueEntry.raw(unit.unit(), unit.kind(), unit.seatings());
    check(entry);
    return ReexpressedGraph.of(
        new Translator(translation).applyPinned(entry, unit.from()), translation);
  }

  /**
   * Re-expresses a back catalogue. Its files are only read, and nothing is written: {@code twinrig
   * translate} writes what this gives.
   *
   * @param catalogue the table that lists the old graphs (catalogue.csv)
   * @throws UnusableInput with file, line and remedy when the table as a whole cannot be read, or
   *     the new fixture's reference does not reach the anchor
   */
  public MigratedCatalogue migrate(Path catalogue) throws UnusableInput {
    Chain chain =
        Chain.of(new Chain.Link(translation, outcome.flatMap(o -> o.link(threads).captures())));
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
      throw UnusableInput.fatal(
          catalogue.toString(),
          0,
          "a file of the catalogue cannot be read any more (" + e.getMessage() + ")",
          "leave the catalogue's files in place while they are re-expressed");
    }
  }

  /** All transfers with their marks, whose parts may change between versions. */
  public Translation translation() {
    return translation;
  }

  private void check(CatalogueEntry entry) {
    if (entry.subtracted().isPresent()
        || entry.level() == CatalogueEntry.Level.ABSOLUTE
        || entry.statedSmoothing().widerThan(translation.handling().captureSmoothing())) {
      throw new IllegalArgumentException(
          "`%s` is compensated, absolute or smoothed more than the captures; list it in a catalogue.csv and migrate that"
              .formatted(entry.graph()));
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
