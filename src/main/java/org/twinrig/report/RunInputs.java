package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;

/** The files and studies a run reads, so that its results are never put over them. */
public record RunInputs(List<Path> studies, List<Path> files) {
  public RunInputs {
    studies = List.copyOf(studies);
    files = List.copyOf(files);
  }

  public static RunInputs of(Path... files) {
    return new RunInputs(List.of(), List.of(files));
  }

  /** A study: its folder, what study.yaml names, every capture, the catalogue with its graphs. */
  public static RunInputs of(Study study) {
    List<Path> files = new ArrayList<>(study.inputs());
    study.captures().forEach(c -> files.add(study.capturesFolder().resolve(c.file())));
    RunInputs inputs = new RunInputs(List.of(study.folder()), files);
    if (study.catalogue().isEmpty()) {
      return inputs;
    }
    Path catalogue = study.catalogue().get();
    try {
      return inputs.and(
          ofCatalogue(catalogue, CatalogueReader.read(catalogue, catalogue.toString()).value()));
    } catch (UnusableInput e) {
      return inputs.and(of(catalogue)); // whoever needs what it lists says what is wrong with it
    }
  }

  public static RunInputs ofCatalogue(Path table, CatalogueReader.Catalogue catalogue) {
    List<Path> files = new ArrayList<>(List.of(table));
    Path home = RealPlace.of(table).resolveSibling("");
    for (CatalogueEntry entry : catalogue.entries()) {
      files.add(home.resolve(entry.file()));
      entry
          .subtracted()
          .flatMap(CatalogueEntry.Subtracted::file)
          .map(home::resolve)
          .ifPresent(files::add);
    }
    return new RunInputs(List.of(), files);
  }

  public RunInputs and(RunInputs others) {
    List<Path> allStudies = new ArrayList<>(studies);
    allStudies.addAll(others.studies);
    List<Path> allFiles = new ArrayList<>(files);
    allFiles.addAll(others.files);
    return new RunInputs(allStudies, allFiles);
  }

  /**
   * Why results cannot go to a place, whose path has no links: one clause; nothing when no input is
   * that place or lies in it.
   */
  Optional<String> clash(Path place) throws IOException {
    for (Path study : studies) {
      Path real = study.toRealPath();
      if (real.equals(place)) {
        return Optional.of("is the folder of the study itself");
      }
      if (real.startsWith(place)) {
        return Optional.of("holds the study `" + study + "`");
      }
    }
    for (Path file : files) {
      // Where a link lies and where it leads are both in use.
      for (Path used : List.of(RealPlace.of(file), Files.exists(file) ? file.toRealPath() : file)) {
        if (used.equals(place)) {
          return Optional.of("is read by this run");
        }
        if (used.startsWith(place)) {
          return Optional.of("holds `" + place.relativize(used) + "`, which this run reads");
        }
      }
    }
    return Optional.empty();
  }
}
