package org.twinrig.internal;

import java.util.Optional;
import java.util.function.Supplier;

/** A value that is worked out when it is first asked for, once, whichever thread asks. */
public final class Later<T> implements Supplier<T> {
  private final Supplier<T> work;
  private Optional<T> done = Optional.empty();

  public Later(Supplier<T> work) {
    this.work = work;
  }

  @Override
  public synchronized T get() {
    if (done.isEmpty()) {
      done = Optional.of(work.get());
    }
    return done.get();
  }

  /** Equal to another whose value is equal: both are worked out. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Later<?> later && get().equals(later.get());
  }

  @Override
  public int hashCode() {
    return get().hashCode();
  }

  @Override
  public String toString() {
    return get().toString();
  }
}
