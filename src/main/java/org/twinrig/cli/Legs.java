package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.SmoothedStudy;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.Chain;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;

/** The studies and translation files graphs are taken through, one after the other. */
final class Legs {
  private final List<Leg> legs;

  private Legs(List<Leg> legs) {
    this.legs = legs;
  }

  /** One leg; with what its study found, when that is at hand. */
  private record Leg(Translation translation, Optional<StudyOutcome> outcome) {
    Translation alike(Smoothing smoothing, int threads) {
      boolean asItIs = !smoothing.widerThan(translation.handling().captureSmoothing());
      return asItIs
          ? translation
          : SmoothedStudy.of(outcome.orElseThrow(), smoothing, threads)
              .withHandling(translation.handling());
    }
  }

  /** The leg of a study that was analysed. */
  static Legs of(StudyOutcome outcome) {
    return new Legs(List.of(new Leg(outcome.translation(), Optional.of(outcome))));
  }

  /**
   * What is read of every leg before the work begins: a folder is a study, a file a translation.
   */
  record Declared(List<Path> places, List<Optional<StudySteps.Declared>> studies) {
    static Declared of(List<Path> places, StudySteps.Way way, CommonOptions common)
        throws UnusableInput {
      List<Optional<StudySteps.Declared>> studies = new ArrayList<>();
      for (Path place : places) {
        if (Files.isDirectory(place)) {
          studies.add(Optional.of(StudySteps.declare(place, way, "translate", common)));
        } else {
          refuseReversed(place, way);
          bringBack(place, common);
          studies.add(Optional.empty());
        }
      }
      return new Declared(places, studies);
    }

    RunInputs inputs() {
      RunInputs all = RunInputs.of();
      for (int k = 0; k < places.size(); k++) {
        Path place = places.get(k);
        all = all.and(studies.get(k).map(s -> RunInputs.of(s.study())).orElse(RunInputs.of(place)));
      }
      return all;
    }

    /** Reads and analyses every leg. */
    Legs analyse() throws UnusableInput {
      List<Leg> legs = new ArrayList<>();
      for (int k = 0; k < places.size(); k++) {
        legs.add(leg(places.get(k), studies.get(k)));
      }
      for (int k = 1; k < legs.size(); k++) {
        check(legs.get(0).translation(), legs.get(k).translation(), places.get(k));
        checkFixtures(legs.get(k - 1).translation(), legs.get(k).translation(), places.get(k));
      }
      return new Legs(legs);
    }
  }

  private static Leg leg(Path place, Optional<StudySteps.Declared> study) throws UnusableInput {
    if (study.isEmpty()) {
      return new Leg(TranslationFile.read(place, place.toString()), Optional.empty());
    }
    StudyOutcome outcome = study.get().analyse().outcome();
    return new Leg(outcome.translation(), Optional.of(outcome));
  }

  private static void refuseReversed(Path place, StudySteps.Way way) throws UnusableInput {
    if (way.reversed()) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "a translation file cannot be read the other way: the reverse is fitted anew from the"
                  + " captures",
              "give the study's folder with --reverse"));
    }
  }

  /** A run that was stopped may have left the results with the file beside their place. */
  private static void bringBack(Path place, CommonOptions common) throws UnusableInput {
    try {
      ResultFolder.bringBack(place.toAbsolutePath().resolveSibling(""), common.err()::println);
    } catch (IOException e) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "earlier results could not be put back (" + e.getMessage() + ")",
              "check the permissions of the folder they lie in"));
    }
  }

  private static void check(Translation first, Translation next, Path place) throws UnusableInput {
    if (!next.grid().equals(first.grid())) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "the study has other bands than the one before it",
              "set the same `bands` in both and run them again"));
    }
    if (next.confidence() != first.confidence()) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "the study has another confidence than the one before it",
              "set the same `confidence` in both and run them again"));
    }
  }

  private static void checkFixtures(Translation before, Translation next, Path place)
      throws UnusableInput {
    if (!next.origin().from().equals(before.origin().to())) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "the study starts from `"
                  + next.origin().from()
                  + "`, but the one before it ends on `"
                  + before.origin().to()
                  + "`",
              "give studies that meet on one fixture, with the same label in both"));
    }
  }

  /** The same legs with other handling of graphs on the last one. */
  Legs withLastHandling(java.util.function.UnaryOperator<Translation.Handling> change) {
    List<Leg> changed = new ArrayList<>(legs);
    Leg last = changed.remove(changed.size() - 1);
    Translation translation =
        last.translation().withHandling(change.apply(last.translation().handling()));
    changed.add(new Leg(translation, last.outcome()));
    return new Legs(changed);
  }

  /** The last leg's translation. */
  Translation last() {
    return legs.get(legs.size() - 1).translation();
  }

  /**
   * The chain, with links smoothed alike for graphs of the given smoothings where the captures are
   * at hand.
   */
  Chain chain(Collection<Smoothing> smoothings, int threads) {
    Chain chain = Chain.of(legs.stream().map(Leg::translation).toList());
    return legs.stream().anyMatch(l -> l.outcome().isEmpty())
        ? chain
        : chain.withAlike(
            smoothings, smoothing -> legs.stream().map(l -> l.alike(smoothing, threads)).toList());
  }
}
