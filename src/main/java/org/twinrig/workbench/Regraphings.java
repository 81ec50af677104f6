package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.figure.GraphFigure;
import org.twinrig.report.html.Plate;
import org.twinrig.translation.TranslatedGraph;

/** What was re-expressed last, and the way to re-express something else. */
final class Regraphings {
  private static final int MOST_DRAWN = 200;

  private final Works works;
  private final int threads;
  private volatile Optional<Last> last = Optional.empty();

  Regraphings(Works works, int threads) {
    this.works = works;
    this.threads = threads;
  }

  /** A result, and those of its graphs that were drawn. */
  private record Last(Regraphing regraphing, Map<String, List<Plate>> drawn) {}

  /** Takes graphs through a study. */
  @FunctionalInterface
  interface Task {
    Regraphing of(Regraphing.Run run) throws UnusableInput, IOException;
  }

  Optional<Regraphing> last() {
    return last.map(Last::regraphing);
  }

  /** Begins, and sends the browser where it can watch. */
  Answer begin(String title, Task task) throws UnusableInput {
    Work work =
        works.begin(
            title,
            "./catalogue#graphs",
            w -> {
              Regraphing done = task.of(new Regraphing.Run(threads, w));
              last = Optional.of(new Last(done, new ConcurrentHashMap<>()));
            });
    return Answer.seeOther("./work?id=" + work.id());
  }

  /** A graph drawn as it is now; drawn when a page first shows it. */
  List<Plate> plates(String graph) {
    return last.flatMap(l -> drawn(l, graph)).orElse(List.of());
  }

  private static Optional<List<Plate>> drawn(Last last, String graph) {
    if (last.drawn().size() > MOST_DRAWN) {
      last.drawn().clear();
    }
    return Optional.ofNullable(last.regraphing().graphs().get(graph))
        .map(g -> last.drawn().computeIfAbsent(graph, k -> draw(last.regraphing().leaf(), g)));
  }

  private static List<Plate> draw(Leaf leaf, TranslatedGraph graph) {
    return Plate.of(
        List.of(GraphFigure.of(graph, leaf.outcome().orElseThrow().translation().origin())));
  }
}
