package org.twinrig.translation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.doubt.Answers;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Response;
import org.twinrig.study.PublishingRule;
import org.twinrig.study.ReferenceCurve;

/**
 * Re-expresses a whole back catalogue. Every graph is either handed to the sink or refused with its
 * reason; the catalogue itself is only read.
 */
public final class CatalogueRun {
  private static final int SHA256_DIGITS = 64;

  private final Chain chain;
  private final PublishingRule rule;
  private final int threads;

  /** A run. */
  public CatalogueRun(Chain chain, int threads) {
    this.chain = chain;
    this.rule = chain.whole().handling().publishing();
    this.threads = threads;
  }

  /** Takes re-expressed graphs; called from several threads at once. */
  @FunctionalInterface
  public interface Sink {
    /** Takes one graph, and the curve that it is to stand for: the graph as it came. */
    void accept(TranslatedGraph graph, Response came) throws IOException;
  }

  /**
   * What became of one graph.
   *
   * @param marks one per band; nothing where the graph has no level
   * @param change how much of the range readers compare by moved
   * @param largestStepDb see {@link TranslatedGraph#largestStepDb}
   * @param doubts claims about the graph that the data contradict, answered ones among them
   * @param sha256 of the graph's file, followed by that of its reference's when it names one
   */
  public record Line(
      CatalogueEntry entry,
      Decision decision,
      Octaves octaves,
      List<Reason> reasons,
      MarkRow marks,
      Treatment treatment,
      Change change,
      double largestStepDb,
      Sketch sketch,
      List<Doubt> doubts,
      String sha256) {
    /** Graphs to measure again: by octaves lost, then by octaves unreliable, then by name. */
    public static final Comparator<Line> WORST_FIRST =
        Comparator.comparingDouble((Line l) -> -l.octaves().lost())
            .thenComparingDouble(l -> -l.octaves().unreliable())
            .thenComparing(l -> l.entry().graph());

    public Line {
      reasons = List.copyOf(reasons);
      doubts = List.copyOf(doubts);
    }

    /** Of the graph's own file: 64 hexadecimal digits. */
    public String fileSha256() {
      return sha256.substring(0, SHA256_DIGITS);
    }

    /** The same graph with more doubts, answered as its row answers them. */
    Line with(List<Doubt> more) {
      List<Doubt> all = new ArrayList<>(doubts);
      more.forEach(d -> all.add(d.answered(Answers.to(d.doubt(), entry.confirmed()))));
      boolean open = all.stream().anyMatch(Doubt::isOpen);
      return new Line(
          entry,
          open ? Decision.CHECK_FIRST : decision,
          octaves,
          reasons,
          marks,
          treatment,
          change,
          largestStepDb,
          sketch,
          all,
          sha256);
    }
  }

  /**
   * How much of the axis carries which mark.
   *
   * @param lost octaves unreliable or missing in the range readers compare by
   */
  public record Octaves(
      double reliable, double caution, double unreliable, double missing, double lost) {}

  /**
   * What became of a catalogue.
   *
   * @param rows how many graphs the catalogue lists
   * @param lines one per re-expressed graph, in the order of the catalogue
   * @param continuity whether the old fixture is still what it was, where that can be told
   * @param doubts claims that the graphs, or the day, contradict: one for each cause
   */
  public record Outcome(
      int rows, List<Line> lines, Optional<Continuity> continuity, List<Doubt> doubts) {
    public Outcome {
      lines = List.copyOf(lines);
      doubts = List.copyOf(doubts);
    }

    /** The same with one doubt more, if there is one. */
    public Outcome and(Optional<Doubt> doubt) {
      List<Doubt> more = new ArrayList<>(doubts);
      doubt.ifPresent(more::add);
      return new Outcome(rows, lines, continuity, more);
    }

    /** How many graphs could not be read: rows minus lines. */
    public int refused() {
      return rows - lines.size();
    }
  }

  /**
   * Runs.
   *
   * @param folder the folder file names are relative to and must not leave
   * @throws UnusableInput when the new fixture's reference does not reach the anchor
   */
  public Findings<Outcome> run(
      Findings<CatalogueReader.Catalogue> catalogue, Path folder, Sink sink)
      throws IOException, UnusableInput {
    checkNewReference();
    List<CatalogueEntry> entries = catalogue.value().entries();
    List<Problem> problems = new ArrayList<>(catalogue.problems());
    problems.addAll(CatalogueNames.notes(catalogue.value(), chain.links()));
    GraphFiles files = new GraphFiles(catalogue.value().source(), folder, chain.first());
    GraphClaims claims = new GraphClaims(chain, files, entries);
    List<Findings<Optional<Line>>> rows;
    try {
      rows = Parallel.map(entries, threads, e -> row(e, files, claims, sink));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    List<Line> lines = new ArrayList<>();
    for (Findings<Optional<Line>> row : rows) {
      row.value().ifPresent(lines::add);
      problems.addAll(row.problems());
    }
    levelsNotKnown(catalogue.value().source(), lines).ifPresent(problems::add);
    if (!lines.isEmpty() && GraphClaims.profiles(chain.first()).isEmpty()) {
      problems.add(
          Problem.note(
              catalogue.value().source(),
              0,
              "graphs are not held against the study's units, whose old levels its translation does"
                  + " not hold: `twinrig study` writes one that does"));
    }
    lines = doubted(lines);
    List<Doubt> doubts =
        new ArrayList<>(chain.continuity().map(Continuity::doubts).orElse(List.of()));
    SeatingsNotStated.of(entries).ifPresent(doubts::add);
    doubts.addAll(Doubt.byCause(lines.stream().flatMap(l -> l.doubts().stream()).toList()));
    return new Findings<>(
        new Outcome(catalogue.value().rows(), lines, chain.continuity(), doubts), problems);
  }

  /** Claims that graphs contradict among each other, and against the study. */
  private List<Line> doubted(List<Line> lines) {
    Map<String, List<Doubt>> doubts =
        Stream.of(
                TablesContradict.of(lines, chain.start()),
                SameGraph.of(lines, chain.start().captures()),
                AlreadyMeasured.of(lines, chain.last()))
            .flatMap(List::stream)
            .collect(Collectors.groupingBy(Doubt::name));
    return lines.stream()
        .map(l -> l.with(doubts.getOrDefault(l.entry().graph(), List.of())))
        .toList();
  }

  /** Says which absolute graphs could be re-expressed in shape alone. */
  private static Optional<Problem> levelsNotKnown(String source, List<Line> lines) {
    List<CatalogueEntry> shapes =
        lines.stream()
            .filter(l -> l.entry().level() == CatalogueEntry.Level.ABSOLUTE)
            .filter(l -> l.treatment().level() == CatalogueEntry.Level.RELATIVE)
            .map(Line::entry)
            .toList();
    return shapes.stream()
        .findFirst()
        .map(
            first ->
                Problem.note(
                    source,
                    first.line(),
                    "%s given relative, because the level shift of the kind is not known (%s): it takes three units with calibrated sessions on both fixtures"
                        .formatted(
                            Numbers.count(
                                shapes.size(), "absolute graph is", "absolute graphs are"),
                            shapes.stream()
                                .map(CatalogueEntry::kind)
                                .distinct()
                                .collect(Collectors.joining(", ")))));
  }

  private void checkNewReference() throws UnusableInput {
    Translation whole = chain.whole();
    Optional<ReferenceCurve> reference = whole.handling().newReference();
    if (reference.isPresent()
        && whole.anchor().pinned(reference.get().curve(), whole.grid().perOctave()).isEmpty()) {
      throw new UnusableInput(
          Problem.fatal(
              reference.get().file(),
              0,
              GraphFiles.notPinned(reference.get(), whole),
              "give the whole reference curve"));
    }
  }

  private Findings<Optional<Line>> row(
      CatalogueEntry entry, GraphFiles files, GraphClaims claims, Sink sink) {
    try {
      Findings<Optional<GraphFiles.OldGraphFile>> found = files.graph(entry);
      Optional<Line> line = Optional.empty();
      if (found.value().isPresent()) {
        Chain.Result result = chain.translate(found.value().get());
        line =
            Optional.of(
                line(result, found.value().get().sha256()).with(claims.of(found.value().get())));
        sink.accept(result.given(), result.came());
      }
      return new Findings<>(line, found.problems());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Line line(Chain.Result result, String sha256) {
    TranslatedGraph graph = result.given();
    return new Line(
        graph.entry(),
        Decision.of(graph, rule),
        new Octaves(
            graph.octaves(Mark.RELIABLE),
            graph.octaves(Mark.CAUTION),
            graph.octaves(Mark.UNRELIABLE),
            graph.missingOctaves(),
            Decision.lostOctaves(graph, rule)),
        graph.reasons(),
        MarkRow.of(graph),
        graph.treatment(),
        Change.of(result, rule),
        graph.largestStepDb(),
        result.sketch(),
        List.of(),
        sha256);
  }
}
