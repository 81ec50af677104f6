package org.twinrig.translation;

import java.nio.file.Path;
import java.util.ArrayList;
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
   * @param catalogue the name of the table that lists them, in messages
   * @param folder the folder that file names are relative to
   * @param root the folder they must not leave
   * @param translation the first one they go through
   */
  GraphFiles(String catalogue, Path folder, DataRoot root, Translation translation) {
    this.catalogue = catalogue;
    this.folder = folder;
    this.root = root;
    this.translation = translation;
  }

  /** A file as read. */
  record Read(Response response, String sha256) {}

  /** A reference pinned to the anchor, and its file's SHA-256. */
  private record Reference(Response pinned, ReferenceCurve curve, String sha256) {}

  /** A graph, and the SHA-256 of everything it is made from. */
  record Found(OldGraphFile graph, String sha256) {}

  /** Reads a graph, its reference added back. */
  Findings<Optional<Found>> graph(CatalogueEntry entry) {
    DataRoot.Place place = root.file(folder, entry.file());
    if (place instanceof DataRoot.Place.Refused refused) {
      return none(refused(entry, refused.what(), refused.remedy()));
    }
    Findings<Optional<Read>> read = read(((DataRoot.Place.Inside) place).path(), entry.file());
    List<Problem> problems = new ArrayList<>(read.problems());
    if (read.value().isEmpty()) {
      return new Findings<>(Optional.empty(), problems);
    }
    Response published = read.value().get().response();
    String sha256 = read.value().get().sha256();
    if (entry.subtracted().isEmpty()) {
      OldGraphFile raw = new OldGraphFile(entry, published, published, Optional.empty());
      hole(entry, published).ifPresent(problems::add);
      return new Findings<>(Optional.of(new Found(raw, sha256)), problems);
    }
    Findings<Optional<Reference>> reference = reference(entry, entry.subtracted().get());
    problems.addAll(reference.problems());
    Optional<Found> found = Optional.empty();
    if (reference.value().isPresent()) {
      Reference r = reference.value().get();
      Optional<Response> raw = published.plus(r.pinned());
      if (raw.isEmpty()) {
        problems.add(
            refused(
                entry,
                "the graph and its reference `" + r.curve().file() + "` do not overlap",
                "name the reference that was subtracted from this graph"));
      }
      raw.flatMap(sum -> hole(entry, sum)).ifPresent(problems::add);
      found =
          raw.map(
              sum ->
                  new Found(
                      new OldGraphFile(entry, published, sum, Optional.of(r.curve())),
                      sha256 + r.sha256()));
    }
    return new Findings<>(found, problems);
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

  private Findings<Optional<Reference>> reference(
      CatalogueEntry entry, CatalogueEntry.Subtracted subtracted) {
    if (subtracted.file().isEmpty()) {
      return translation.handling().oldReference().isPresent()
          ? pinned(translation.handling().oldReference().get(), "")
          : none(
              refused(
                  entry,
                  "the compensated graph names no `reference`, and the study has none for its old"
                      + " fixture",
                  "name the file of the curve that was subtracted, or give the raw graph"));
    }
    String name = subtracted.file().get();
    DataRoot.Place place = places.computeIfAbsent(name, n -> root.file(folder, n));
    if (place instanceof DataRoot.Place.Refused refused) {
      return none(refused(entry, "`reference`: " + refused.what(), refused.remedy()));
    }
    Path file = ((DataRoot.Place.Inside) place).path();
    String key = name + "\n" + subtracted.smoothing().map(Smoothing::word).orElse("");
    Findings<Optional<Reference>> read =
        references.computeIfAbsent(key, k -> reference(file, name, subtracted.smoothing()));
    if (read.value().isPresent()) {
      return read;
    }
    List<Problem> problems = new ArrayList<>(read.problems());
    problems.add(
        refused(
            entry,
            "the graph needs its reference `" + name + "`, which cannot be used",
            "mend that file"));
    return new Findings<>(Optional.empty(), problems);
  }

  private Findings<Optional<Reference>> reference(
      Path file, String name, Optional<Smoothing> stated) {
    Findings<Optional<Read>> read = read(file, name);
    if (read.value().isEmpty()) {
      return new Findings<>(Optional.empty(), read.problems());
    }
    Response curve = read.value().get().response();
    Optional<Smoothing> smoothing =
        stated.isPresent()
            ? stated
            : translation
                .handling()
                .oldReference()
                .filter(r -> r.curve().equals(curve))
                .flatMap(ReferenceCurve::smoothing);
    Findings<Optional<Reference>> pinned =
        pinned(new ReferenceCurve(name, smoothing, curve), read.value().get().sha256());
    List<Problem> problems = new ArrayList<>(read.problems());
    problems.addAll(pinned.problems());
    return new Findings<>(pinned.value(), problems);
  }

  private Findings<Optional<Reference>> pinned(ReferenceCurve reference, String sha256) {
    Optional<Response> pinned =
        translation.anchor().pinned(reference.curve(), translation.grid().perOctave());
    List<Problem> problems =
        pinned.isPresent()
            ? List.of()
            : List.of(
                Problem.refused(
                    reference.file(),
                    0,
                    notPinned(reference, translation),
                    "give the whole reference curve"));
    return new Findings<>(pinned.map(p -> new Reference(p, reference, sha256)), problems);
  }

  /** Why a reference cannot be pinned to a study's anchor. */
  static String notPinned(ReferenceCurve reference, Translation translation) {
    return "the reference "
        + translation
            .anchor()
            .holeIn(reference.curve(), translation.grid().perOctave())
            .orElse("does not cover the study's anchor (" + translation.anchor().words() + ")");
  }

  private static Findings<Optional<Read>> read(Path file, String name) {
    try {
      Reading reading = CaptureFile.read(file, name);
      return new Findings<>(
          Optional.of(new Read(reading.response(), reading.sha256())), reading.notes());
    } catch (UnusableInput e) {
      return new Findings<>(Optional.empty(), e.problems());
    }
  }

  /** What is wrong with a graph's row rather than with a file. */
  private Problem refused(CatalogueEntry entry, String what, String remedy) {
    return Problem.refused(catalogue, entry.line(), what, remedy);
  }

  private static <T> Findings<Optional<T>> none(Problem why) {
    return new Findings<>(Optional.empty(), List.of(why));
  }
}
