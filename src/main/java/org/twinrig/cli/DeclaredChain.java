package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.TranslationChain;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.translation.TranslationFile;

/**
 * The studies and translation files graphs are taken through, read before the work begins.
 *
 * @param studies one per place; nothing where that is a translation file and no folder
 */
record DeclaredChain(List<Path> places, List<Optional<DeclaredStudy>> studies) {

  static DeclaredChain of(
      List<Path> places, boolean reversed, DataRoots dataRoots, TwinrigCommand command)
      throws UnusableInput {
    List<Optional<DeclaredStudy>> studies = new ArrayList<>();
    for (Path place : places) {
      if (Files.isDirectory(place)) {
        DeclaredStudy study = dataRoots.declare(place, command);
        studies.add(Optional.of(reversed ? study.reversed() : study));
      } else if (reversed) {
        throw TwinrigCommand.unusable(
            place,
            "a translation file cannot be read the other way: the reverse is fitted anew from the"
                + " captures",
            "give the study's folder with --reverse");
      } else {
        bringBack(place, command);
        studies.add(Optional.empty());
      }
    }
    return new DeclaredChain(places, studies);
  }

  /** A run that was stopped may have left the results with the file beside their place. */
  private static void bringBack(Path place, TwinrigCommand command) throws UnusableInput {
    try {
      ResultFolder.bringBack(place.toAbsolutePath().resolveSibling(""), command.err()::println);
    } catch (IOException e) {
      throw TwinrigCommand.unusable(
          place,
          "earlier results could not be put back (" + e.getMessage() + ")",
          "check the permissions of the folder they lie in");
    }
  }

  RunInputs inputs() {
    RunInputs all = RunInputs.of();
    for (int k = 0; k < places.size(); k++) {
      Path place = places.get(k);
      all = all.and(studies.get(k).map(DeclaredStudy::inputs).orElse(RunInputs.of(place)));
    }
    return all;
  }

  /** Reads and analyses every study. */
  TranslationChain analyse(boolean strict) throws UnusableInput {
    List<TranslationChain.Link> links = new ArrayList<>();
    for (int k = 0; k < places.size(); k++) {
      Path place = places.get(k);
      links.add(
          studies.get(k).isPresent()
              ? TranslationChain.Link.of(studies.get(k).get().analyse(strict).found())
              : TranslationChain.Link.of(TranslationFile.read(place, place.toString())));
    }
    return TranslationChain.of(links, places);
  }
}
