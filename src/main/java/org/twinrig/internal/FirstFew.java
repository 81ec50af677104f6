package org.twinrig.internal;

import java.util.Collection;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/** Long lists in one sentence: the first few, and how many more there are. */
public final class FirstFew {
  private FirstFew() {}

  /**
   * Such as "a, b, c and 4 more files", of which {@code more} says the last; at most {@code most}.
   */
  public static String of(Collection<String> all, int most, IntFunction<String> more) {
    String listed = all.stream().limit(most).collect(Collectors.joining(", "));
    int left = all.size() - most;
    return left > 0 ? listed + " and " + more.apply(left) : listed;
  }
}
