package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.WorkView;

/** How far longer work is, and the way to stop it. */
final class WorkPages {
  private final Book book;
  private final Pages pages;
  private final Works works;

  WorkPages(Book book, Pages pages, Works works) {
    this.book = book;
    this.pages = pages;
    this.works = works;
  }

  Answer work(Ask ask) throws IOException, UnusableInput {
    Optional<Work> found = works.of(ask.number("id"));
    if (found.isEmpty()) {
      return Answer.seeOther("./");
    }
    Work work = found.get();
    boolean smooth = work.finished() && work.failure().isEmpty();
    if (smooth) {
      return Answer.seeOther(work.back());
    }
    return Answer.page(
        pages.fill(
            "work.jte",
            new WorkView(
                pages.frame(
                    book, book.leaf(), Frame.Part.REPORT, work.title(), "./work?id=" + work.id()),
                work.id(),
                work.title(),
                work.done(),
                work.total(),
                state(work),
                problems(work),
                !work.finished(),
                new Link("Go on", work.back()))));
  }

  /** The same for a script: whether it is still running, and how far. */
  Answer state(Ask ask) throws UnusableInput {
    String text =
        works
            .of(ask.number("id"))
            .filter(w -> !w.finished())
            .map(w -> w.done() + " " + w.total())
            .orElse("finished");
    return new Answer(
        200, "text/plain; charset=utf-8", text.getBytes(StandardCharsets.UTF_8), Map.of());
  }

  Answer cancel(Ask ask) throws UnusableInput {
    works.of(ask.number("id")).ifPresent(Work::cancel);
    return Answer.seeOther("./work?id=" + ask.number("id"));
  }

  private static String state(Work work) {
    if (stopped(work)) {
      return "It was stopped; nothing was kept of it.";
    }
    if (work.finished()) {
      return "It could not be finished.";
    }
    if (work.cancelled()) {
      return "It is being stopped.";
    }
    return work.total() == 0 ? "It has begun." : work.done() + " of " + work.total() + " done.";
  }

  private static boolean stopped(Work work) {
    return work.finished() && work.failure().filter(WorkPages::cancelled).isPresent();
  }

  private static boolean cancelled(Exception e) {
    return e instanceof CancellationException || e.getCause() instanceof CancellationException;
  }

  private static List<String> problems(Work work) {
    return work.failure()
        .filter(e -> !cancelled(e))
        .map(
            e ->
                e instanceof UnusableInput unusable
                    ? unusable.problems().stream().map(Problem::text).toList()
                    : List.of("This should not have happened and is a fault of the program."))
        .orElse(List.of());
  }
}
