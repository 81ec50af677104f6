package org.twinrig.workbench;

import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Long work, one piece at a time. */
final class Works implements AutoCloseable {
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          r -> {
            Thread t = new Thread(r, "twinrig-work");
            t.setDaemon(true);
            return t;
          });
  private volatile Optional<Work> latest = Optional.empty();
  private long started;

  /** Begins something, unless something else is still being done. */
  synchronized Work begin(String title, String back, Work.Task task) throws UnusableInput {
    if (latest.isPresent() && !latest.get().finished()) {
      throw new UnusableInput(
          Problem.fatal(
              "the workbench",
              0,
              "it is still busy (" + latest.get().title() + ")",
              "wait until that is done, or stop it"));
    }
    started++;
    Work work = new Work(started, title, back);
    latest = Optional.of(work);
    thread.execute(() -> work.run(task));
    return work;
  }

  Optional<Work> of(long id) {
    return latest.filter(w -> w.id() == id);
  }

  @Override
  public void close() {
    latest.ifPresent(Work::cancel);
    thread.shutdownNow();
  }
}
