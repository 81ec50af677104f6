package org.twinrig.translation;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;
import org.twinrig.study.DataRoot;
import org.twinrig.study.ReferenceCurve;

/** The files of a catalogue: graphs, and the references that were subtracted from them. */
final class GraphFiles {
  private final String catalogue;
  private final Path folder;
  private final DataRoot root;
  private final Translation translation;
  private final Map<String, DataRoot.Place> places = new ConcurrentHashMap<>();
  private final Map<String, Findings<Optional<Reference>>> references = new ConcurrentHashMap<>();

  /**
   * The files.
   *
   * @param folder the folder that file names are relative to and must not leave
   * @param translation the first one they go through
   */
  GraphFiles(String catalogue, Path folder, Translation translation) {
    this.catalogue = catalogue;
    this.folder = folder;
    this.root = new DataRoot(folder);
    this.translation = translation;
  }

  /** A reference pinned to the anchor, and its file's SHA-256. */
  private record Reference(Response pinned, ReferenceCurve curve, String sha256) {}

  /**
   * An old graph as its file holds it.
   *
   * @param raw the same with its reference added back; as published for a raw graph
   */
  record OldGraphFile(
      CatalogueEntry entry,
      Response published,
      Response raw,
      Optional<ReferenceCurve> before,
      String sha256) {}

  /** Reads a graph, its reference added back. */
  Findings<Optional<OldGraphFile>> graph(CatalogueEntry entry) {
    List<Problem> problems = new ArrayList<>();
    try {
      return new Findings<>(Optional.of(graph(entry, problems)), problems);
    } catch (UnusableInput e) {
      problems.addAll(e.problems());
      return new Findings<>(Optional.empty(), problems);
    }
  }

  private OldGraphFile graph(CatalogueEntry entry, List<Problem> problems) throws UnusableInput {
    Path file = path(entry, root.file(folder, entry.file()), "");
    Reading read = CaptureFile.read(file, entry.file());
    problems.addAll(read.notes());
    Response raw = read.response();
    Optional<ReferenceCurve> before = Optional.empty();
    String sha256 = read.sha256();
    if (entry.subtracted().isPresent()) {
      Reference reference = reference(entry, entry.subtracted().get(), problems);
      before = Optional.of(reference.curve);
      sha256 += reference.sha256;
      raw =
          raw.plus(reference.pinned)
              .orElseThrow(
                  () ->
                      refused(
                          entry,
                          "the graph and its reference `"
                              + reference.curve.file()
                              + "` do not overlap",
                          "name the reference that was subtracted from this graph"));
    }
    hole(entry, raw).ifPresent(problems::add);
    return new OldGraphFile(entry, read.response(), raw, before, sha256);
  }

  private Path path(CatalogueEntry entry, DataRoot.Place place, String column)
      throws UnusableInput {
    if (place instanceof DataRoot.Place.Refused refused) {
      throw refused(entry, column + refused.what(), refused.remedy());
    }
    return ((DataRoot.Place.Inside) place).path();
  }

  /** Where a graph has no levels although it seems to run on. */
  private Optional<Problem> hole(CatalogueEntry entry, Response raw) {
    OptionalInt hole = raw.holeIn(translation.grid().lowerHz(), translation.grid().upperHz());
    return hole.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Problem.note(
                entry.file(),
                0,
                "has no level above "
                    + Numbers.hertz(raw.frequencyHz(hole.getAsInt()))
                    + ", where points are further apart than 1/3 octave"));
  }

  private Reference reference(
      CatalogueEntry entry, CatalogueEntry.Subtracted subtracted, List<Problem> problems)
      throws UnusableInput {
    if (subtracted.file().isEmpty()) {
      ReferenceCurve own =
          translation
              .handling()
              .oldReference()
              .orElseThrow(
                  () ->
                      refused(
                          entry,
                          "the compensated graph names no `reference`, and the study has none for"
                              + " its old fixture",
                          "name the file of the curve that was subtracted, or give the raw"
                              + " graph"));
      return pinned(own, "");
    }
    String name = subtracted.file().get();
    DataRoot.Place place = places.computeIfAbsent(name, n -> root.file(folder, n));
    Path file = path(entry, place, "`reference`: ");
    String key = name + "\n" + subtracted.smoothing().map(Smoothing::word).orElse("");
    Findings<Optional<Reference>> read =
        references.computeIfAbsent(key, k -> reference(file, name, subtracted.smoothing()));
    problems.addAll(read.problems());
    return read.value()
        .orElseThrow(
            () ->
                refused(
                    entry,
                    "the graph needs its reference `" + name + "`, which cannot be used",
                    "mend that file"));
  }

  private Findings<Optional<Reference>> reference(
      Path file, String name, Optional<Smoothing> stated) {
    List<Problem> problems = new ArrayList<>();
    try {
      Reading read = CaptureFile.read(file, name);
      problems.addAll(read.notes());
      Optional<Smoothing> smoothing =
          stated.or(
              () ->
                  translation
                      .handling()
                      .oldReference()
                      .filter(r -> r.curve().equals(read.response()))
                      .flatMap(ReferenceCurve::smoothing));
      ReferenceCurve curve = new ReferenceCurve(name, smoothing, read.response());
      return new Findings<>(Optional.of(pinned(curve, read.sha256())), problems);
    } catch (UnusableInput e) {
      problems.addAll(e.problems());
      return new Findings<>(Optional.empty(), problems);
    }
  }

  /**
   * Band levels, pinned, of the study's own reference and of all a catalogue names, by file; those
   * that cannot be read are missing, and said so where a graph needs them.
   */
  Map<String, Levels> references(List<CatalogueEntry> entries) {
    Map<String, Levels> known = new HashMap<>();
    List<CatalogueEntry.Subtracted> all = new ArrayList<>();
    if (!entries.isEmpty() && translation.handling().oldReference().isPresent()) {
      all.add(new CatalogueEntry.Subtracted(Optional.empty(), Optional.empty()));
    }
    entries.stream().flatMap(e -> e.subtracted().stream()).distinct().forEach(all::add);
    for (CatalogueEntry.Subtracted subtracted : all) {
      try {
        // An entry is named in messages only, and those come where a graph needs the reference.
        Reference reference = reference(entries.get(0), subtracted, new ArrayList<>());
        known.put(reference.curve.file(), Levels.of(reference.pinned, translation.grid()));
      } catch (UnusableInput e) {
        known.remove(subtracted.file().orElse(""));
      }
    }
    return known;
  }

  private Reference pinned(ReferenceCurve reference, String sha256) throws UnusableInput {
    return translation
        .anchor()
        .pinned(reference.curve(), translation.grid().perOctave())
        .map(pinned -> new Reference(pinned, reference, sha256))
        .orElseThrow(
            () ->
                new UnusableInput(
                    Problem.refused(
                        reference.file(),
                        0,
                        notPinned(reference, translation),
                        "give the whole reference curve")));
  }

  /** Why a reference cannot be pinned to a study's anchor. */
  static String notPinned(ReferenceCurve reference, Translation translation) {
    return "the reference "
        + translation
            .anchor()
            .holeIn(reference.curve(), translation.grid().perOctave())
            .orElse("does not cover the study's anchor (" + translation.anchor().words() + ")");
  }

  /** What is wrong with a graph's row rather than with a file. */
  private UnusableInput refused(CatalogueEntry entry, String what, String remedy) {
    return new UnusableInput(Problem.refused(catalogue, entry.line(), what, remedy));
  }
}
