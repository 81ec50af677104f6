package org.twinrig.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** The same work on every item of a list, on a fixed number of threads, results in list order. */
public final class Parallel {
  private Parallel() {}

  /**
   * Applies a function, which must not depend on the order of calls, to every item: one result per
   * item, in the order of the items whatever the number of threads (1 or more).
   */
  public static <T, R> List<R> map(List<T> items, int threads, Function<T, R> work) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads must be 1 or more, but is " + threads);
    }
    if (threads == 1 || items.size() < 2) {
      return items.stream().map(work).toList();
    }
    ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, items.size()));
    try {
      List<Callable<R>> calls =
          items.stream().map(item -> (Callable<R>) () -> work.apply(item)).toList();
      List<R> results = new ArrayList<>(items.size());
      for (Future<R> each : pool.invokeAll(calls)) {
        results.add(each.get());
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while working in parallel", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error error) {
        throw error; // such as memory that ran out: it is told in its own words
      }
      throw new IllegalStateException(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }
}
