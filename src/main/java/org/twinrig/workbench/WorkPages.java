package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.RunRecord;
import org.twinrig.report.StagedFolder;
import org.twinrig.report.StudyFolder;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.ReportView;
import org.twinrig.workbench.view.WorkView;

/** The written report, and how far longer work is. */
final class WorkPages {
  private final Book book;
  private final Pages pages;
  private final Works works;
  private final Workbench.Options options;
  private volatile String last = "";

  WorkPages(Book book, Pages pages, Works works, Workbench.Options options) {
    this.book = book;
    this.pages = pages;
    this.works = works;
    this.options = options;
  }

  Answer report(Ask ask) throws IOException {
    return Answer.page(
        pages.fill(
            "report.jte",
            new ReportView(
                Pages.frame(book, Frame.Part.REPORT, "Report", "/report"),
                place().toString(),
                last)));
  }

  Answer make(Ask ask) throws UnusableInput {
    Leaf leaf = book.leaf();
    Work work = works.begin("Writing the report", "/report", w -> write(leaf, w));
    return Answer.seeOther("/work?id=" + work.id());
  }

  private void write(Leaf leaf, Work work) throws UnusableInput {
    var outcome = leaf.outcome().orElseThrow(() -> new UnusableInput(leaf.problems()));
    Path place = place();
    try (StagedFolder staged = StagedFolder.beside(place, StagedFolder.Unfinished.REMOVED)) {
      RunRecord record = new RunRecord(options.version(), "workbench");
      new StudyFolder(outcome, leaf.fingerprint(), leaf.problems(), record, options.threads())
          .write(staged.path());
      work.stopIfCancelled();
      staged.keep();
      last = "Written for fingerprint " + leaf.fingerprint().shortText() + ".";
    } catch (StagedFolder.NotOursException e) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "the folder holds something that is not an earlier result of twinrig",
              "move it away"));
    } catch (StagedFolder.BusyException e) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(), 0, "another run is writing to this folder", "wait for it"));
    } catch (IOException e) {
      throw new UnusableInput(
          Problem.fatal(
              place.toString(),
              0,
              "the results could not be written (" + e.getMessage() + ")",
              "make room, or check the folder's permissions; earlier results are untouched"));
    }
  }

  private Path place() {
    return book.leaf().study().folder().resolve("results").toAbsolutePath().normalize();
  }

  Answer work(Ask ask) throws IOException, UnusableInput {
    Optional<Work> found = works.of(ask.number("id"));
    if (found.isEmpty()) {
      return Answer.seeOther("/");
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
                Pages.frame(book, Frame.Part.REPORT, work.title(), "/work?id=" + work.id()),
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
    return Answer.seeOther("/work?id=" + ask.number("id"));
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
