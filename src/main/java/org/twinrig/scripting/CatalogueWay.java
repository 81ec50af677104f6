package org.twinrig.scripting;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.analysis.SmoothedStudy;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;
import org.twinrig.study.DataRoot;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;

/** Takes a catalogue through a translation and keeps its graphs in memory. */
final class CatalogueWay {
  private final Translation translation;
  private final Optional<StudyOutcome> outcome;
  private final int threads;

  private CatalogueWay(Translation translation, Optional<StudyOutcome> outcome, int threads) {
    this.translation = translation;
    this.outcome = outcome;
    this.threads = threads;
  }

  static CatalogueWay of(Translation translation, Optional<StudyOutcome> outcome, int threads) {
    return new CatalogueWay(translation, outcome, threads);
  }

  MigratedCatalogue migrate(Path table) throws UnusableInput {
    Findings<CatalogueReader.Catalogue> catalogue = CatalogueReader.read(table, table.toString());
    Map<String, TranslatedGraph> kept = new ConcurrentHashMap<>();
    try {
      Path home = table.toRealPath().resolve("..").normalize();
      Findings<CatalogueRun.Outcome> run =
          new CatalogueRun(translations(catalogue.value()), threads)
              .run(catalogue, home, new DataRoot(home), g -> kept.put(g.entry().graph(), g));
      return new MigratedCatalogue(translation, run, kept);
    } catch (IOException e) {
      throw new UnusableInput(
          Problem.fatal(
              table.toString(),
              0,
              "a file of the catalogue cannot be read any more (" + e.getMessage() + ")",
              "leave the catalogue's files in place while they are re-expressed"));
    }
  }

  /** Graphs smoothed more than the captures go through the study fitted anew, smoothed alike. */
  private Chain translations(CatalogueReader.Catalogue catalogue) {
    Chain way = Chain.of(List.of(translation));
    return outcome.isPresent()
        ? way.withAlike(catalogue.smoothings(), smoothing -> List.of(alike(smoothing)))
        : way;
  }

  private Translation alike(Smoothing smoothing) {
    return SmoothedStudy.of(outcome.orElseThrow(), smoothing, threads)
        .withHandling(translation.handling());
  }
}
