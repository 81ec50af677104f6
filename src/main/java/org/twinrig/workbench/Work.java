package org.twinrig.workbench;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;

/** Something that takes longer than a page may: it tells how far it is, and can be stopped. */
final class Work {
  private final long id;
  private final String title;
  private final String back;
  private final AtomicInteger done = new AtomicInteger();
  private volatile int total;
  private volatile boolean cancelled;
  private volatile Optional<Exception> failure = Optional.empty();
  private volatile boolean finished;
  private Optional<Thread> worker = Optional.empty();

  Work(long id, String title, String back) {
    this.id = id;
    this.title = title;
    this.back = back;
  }

  /** What is to be done; it calls {@link #step} often. */
  @FunctionalInterface
  interface Task {
    void run(Work work) throws Exception;
  }

  void run(Task task) {
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

  /** One step more is done. */
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

  long id() {
    return id;
  }

  String title() {
    return title;
  }

  /** The page the result is shown on. */
  String back() {
    return back;
  }

  int done() {
    return done.get();
  }

  int total() {
    return total;
  }

  boolean finished() {
    return finished;
  }

  boolean cancelled() {
    return cancelled;
  }

  Optional<Exception> failure() {
    return failure;
  }
}
