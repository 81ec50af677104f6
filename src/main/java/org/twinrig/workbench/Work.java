package org.twinrig.workbench;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Something that takes longer than a page may: it tells how far it is, and can be stopped. */
public final class Work {
  public final long id;
  public final String title;

  /** The page the result is shown on. */
  public final String back;

  private final AtomicInteger done = new AtomicInteger();
  private volatile int total;
  private volatile boolean cancelled;
  private volatile Optional<Exception> failure = Optional.empty();
  private volatile boolean finished;
  private Optional<Thread> worker = Optional.empty();

  private Work(long id, String title, String back) {
    this.id = id;
    this.title = title;
    this.back = back;
  }

  /** What is to be done; it calls {@link #step} often. */
  @FunctionalInterface
  interface Task {
    void run(Work work) throws Exception;
  }

  /** Takes one piece of work at a time. */
  static final class Queue implements AutoCloseable {
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
    synchronized Work begin(String title, String back, Task task) throws UnusableInput {
      refuseBusy();
      started++;
      Work work = new Work(started, title, back);
      latest = Optional.of(work);
      thread.execute(() -> work.run(task));
      return work;
    }

    synchronized void refuseBusy() throws UnusableInput {
      if (latest.isPresent() && !latest.get().finished()) {
        throw UnusableInput.fatal(
            "the workbench",
            0,
            "it is still busy (" + latest.get().title + ")",
            "wait until that is done, or stop it");
      }
    }

    Optional<Work> of(long id) {
      return latest.filter(w -> w.id == id);
    }

    @Override
    public void close() {
      latest.ifPresent(Work::cancel);
      thread.shutdownNow();
    }
  }

  private void run(Task task) {
    try {
      onThread(Optional.of(Thread.currentThread()));
      stopIfCancelled();
      task.run(this);
    } catch (Exception e) {
      // What is interrupted fails in many ways; the reason is that it was stopped.
      failure = Optional.of(cancelled ? new CancellationException("stopped by the lab") : e);
    } finally {
      onThread(Optional.empty());
      finished = true;
    }
  }

  /** The thread is the pool's: whoever comes next must not find it interrupted. */
  private synchronized void onThread(Optional<Thread> thread) {
    worker = thread;
    if (thread.isEmpty()) {
      Thread.interrupted();
    }
  }

  void expect(int steps) {
    total = steps;
  }

  void step() {
    done.incrementAndGet();
    stopIfCancelled();
  }

  void stopIfCancelled() {
    if (cancelled) {
      throw new CancellationException("stopped by the lab");
    }
  }

  /** Stops it where it is; what it has done already stays unseen, if it keeps to that. */
  synchronized void cancel() {
    cancelled = true;
    worker.ifPresent(Thread::interrupt);
  }

  /** The page that shows how far it is. */
  String path() {
    return "./work?id=" + id;
  }

  public int done() {
    return done.get();
  }

  /** Steps in all; 0 while not known. */
  public int total() {
    return total;
  }

  public boolean finished() {
    return finished;
  }

  public boolean cancelled() {
    return cancelled;
  }

  Optional<Exception> failure() {
    return failure;
  }

  public boolean stopped() {
    return failure
        .filter(
            e ->
                e instanceof CancellationException || e.getCause() instanceof CancellationException)
        .isPresent();
  }

  /** Why it failed; empty where it did not, or was stopped. */
  public List<String> problems() {
    if (failure.isEmpty() || stopped()) {
      return List.of();
    }
    return failure.get() instanceof UnusableInput unusable
        ? unusable.problems().stream().map(Problem::text).toList()
        : List.of("This should not have happened and is a fault of the program.");
  }
}
