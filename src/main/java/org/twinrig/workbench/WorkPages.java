package org.twinrig.workbench;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;

/** How far longer work is, and the way to stop it. */
record WorkPages(Pages pages) {

  Response work(Request request) throws IOException, UnusableInput {
    Optional<Work> found = pages.queue.of(request.number("id"));
    if (found.isEmpty()) {
      return Response.seeOther("./");
    }
    Work work = found.get();
    if (work.finished() && work.failure().isEmpty()) {
      return Response.seeOther(work.back);
    }
    Frame frame = pages.frame(Frame.Part.REPORT, work.title, work.path());
    return Pages.fill(
        "work.jte", Map.of("frame", frame, "work", work, "running", !work.finished()));
  }

  /** The same for a script: whether it is still running, and how far. */
  Response state(Request request) throws UnusableInput {
    String text =
        pages
            .queue
            .of(request.number("id"))
            .filter(w -> !w.finished())
            .map(w -> w.done() + " " + w.total())
            .orElse("finished");
    return Response.text("plain", text, Map.of());
  }

  Response cancel(Request request) throws UnusableInput {
    pages.queue.of(request.number("id")).ifPresent(Work::cancel);
    return Response.seeOther("./work?id=" + request.number("id"));
  }
}
