package org.twinrig.translation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Response;
import org.twinrig.study.DataRoot;

/**
 * Re-expresses a whole back catalogue. Every graph is either handed to the sink or refused with its
 * reason; the catalogue itself is only read.
 *
 * <p>A compensated graph has its reference added back, point by point, before it is re-expressed;
 * the result is the raw graph on the new fixture.
 */
public final class CatalogueRun {
  private final Translator translator;
  private final Decision.Rule rule;
  private final int threads;

  /**
   * A run.
   *
   * @param translation what a study found
   * @param rule how decisions are taken
   * @param threads how many threads to work on; the outcome does not depend on it
   */
  public CatalogueRun(Translation translation, Decision.Rule rule, int threads) {
    this.translator = new Translator(translation);
    this.rule = rule;
    this.threads = threads;
  }

  /** Takes re-expressed graphs; called from several threads at once. */
  @FunctionalInterface
  public interface Sink {
    /**
     * Takes one graph.
     *
     * @param graph the graph
     * @throws IOException when it cannot be kept
     */
    void accept(TranslatedGraph graph) throws IOException;
  }

  /**
   * What became of one graph.
   *
   * @param entry the old graph
   * @param decision what to do with the result
   * @param reliableOctaves octaves marked reliable
   * @param cautionOctaves octaves marked caution
   * @param unreliableOctaves octaves marked unreliable
   * @param missingOctaves octaves the graph does not cover
   * @param lostOctaves octaves unreliable or missing in the range readers compare by
   * @param reasons why marks are below reliable
   */
  public record Line(
      CatalogueEntry entry,
      Decision decision,
      double reliableOctaves,
      double cautionOctaves,
      double unreliableOctaves,
      double missingOctaves,
      double lostOctaves,
      List<Reason> reasons) {
    /** Copies the reasons. */
    public Line {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * What became of a catalogue.
   *
   * @param rows how many graphs the catalogue lists
   * @param lines one per re-expressed graph, in the order of the catalogue
   */
  public record Outcome(int rows, List<Line> lines) {
    /** Copies the lines. */
    public Outcome {
      lines = List.copyOf(lines);
    }

    /**
     * How many graphs could not be read.
     *
     * @return rows minus lines
     */
    public int refused() {
      return rows - lines.size();
    }
  }

  /**
   * Runs.
   *
   * @param catalogue what the table lists, with the problems found in it
   * @param folder the folder file names are relative to
   * @param root the folder they must not leave
   * @param sink takes every graph
   * @return what became of each, and everything that was refused
   * @throws IOException when the sink cannot keep a graph
   */
  public Findings<Outcome> run(
      Findings<CatalogueReader.Catalogue> catalogue, Path folder, DataRoot root, Sink sink)
      throws IOException {
    List<CatalogueEntry> entries = catalogue.value().entries();
    List<Problem> problems = new ArrayList<>(catalogue.problems());
    Files files = new Files(folder, root);
    Map<String, Findings<Optional<Response>>> references = references(entries, files);
    List<Findings<Optional<Line>>> results;
    try {
      results = Parallel.map(entries, threads, e -> one(e, files, references, sink));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    List<Line> lines = new ArrayList<>();
    for (Findings<Optional<Line>> result : results) {
      result.value().ifPresent(lines::add);
      problems.addAll(result.problems());
    }
    return new Findings<>(new Outcome(catalogue.value().rows(), lines), problems);
  }

  private Findings<Optional<Line>> one(
      CatalogueEntry entry,
      Files files,
      Map<String, Findings<Optional<Response>>> references,
      Sink sink) {
    Findings<Optional<Response>> read = files.read(entry.file());
    List<Problem> problems = new ArrayList<>(read.problems());
    Optional<Response> raw = read.value();
    if (raw.isPresent() && entry.reference().isPresent()) {
      Findings<Optional<Response>> reference = references.get(entry.reference().get());
      problems.addAll(reference.problems());
      Response graph = raw.get();
      raw = reference.value().flatMap(r -> addedBack(graph, r));
      if (raw.isEmpty() && reference.value().isPresent()) {
        problems.add(
            Problem.refused(
                entry.file(),
                0,
                "the graph and its reference `" + entry.reference().get() + "` do not overlap",
                "name the reference that was subtracted from this graph"));
      }
    }
    return new Findings<>(raw.map(r -> keep(entry, r, sink)), problems);
  }

  private Line keep(CatalogueEntry entry, Response raw, Sink sink) {
    TranslatedGraph graph = translator.apply(entry, raw);
    try {
      sink.accept(graph);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Line(
        entry,
        rule.of(graph),
        graph.octaves(Mark.RELIABLE),
        graph.octaves(Mark.CAUTION),
        graph.octaves(Mark.UNRELIABLE),
        graph.missingOctaves(),
        rule.lostOctaves(graph),
        graph.reasons());
  }

  private static Map<String, Findings<Optional<Response>>> references(
      List<CatalogueEntry> entries, Files files) {
    Set<String> names = new HashSet<>();
    entries.forEach(e -> e.reference().ifPresent(names::add));
    Map<String, Findings<Optional<Response>>> references = new HashMap<>();
    names.forEach(name -> references.put(name, files.read(name)));
    return references;
  }

  /** The graph with its reference added back at its own points, where the reference reaches. */
  private static Optional<Response> addedBack(Response graph, Response reference) {
    double[] hz = new double[graph.size()];
    double[] db = new double[graph.size()];
    int kept = 0;
    for (int k = 0; k < graph.size(); k++) {
      OptionalDouble added = reference.levelAt(graph.frequencyHz(k));
      if (added.isPresent()) {
        hz[kept] = graph.frequencyHz(k);
        db[kept++] = graph.levelDb(k) + added.getAsDouble();
      }
    }
    return kept < 2
        ? Optional.empty()
        : Optional.of(
            Response.copyOf(java.util.Arrays.copyOf(hz, kept), java.util.Arrays.copyOf(db, kept)));
  }

  /** The catalogue's files. */
  private record Files(Path folder, DataRoot root) {
    Findings<Optional<Response>> read(String name) {
      DataRoot.Place place = root.file(folder, name);
      if (place instanceof DataRoot.Place.Refused refused) {
        return new Findings<>(
            Optional.empty(), List.of(Problem.refused(name, 0, refused.what(), refused.remedy())));
      }
      try {
        Reading reading = CaptureFile.read(((DataRoot.Place.Inside) place).path(), name);
        return new Findings<>(Optional.of(reading.response()), reading.notes());
      } catch (UnusableInput e) {
        return new Findings<>(Optional.empty(), e.problems());
      }
    }
  }
}
