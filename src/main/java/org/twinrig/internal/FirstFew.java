package org.twinrig.internal;

import java.util.Collection;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/** Long lists in one sentence: the first few, and how many more there are. */
public final class FirstFew {
  private FirstFew() {}

  /**
   * Such as "a, b, c and 4 more files".
   *
   * @param all in order
   * @param most how many are listed
   * @param more says how many are not
   * @return the list in words; all of them when there are not more than are listed
   */
  public static String of(Collection<String> all, int most, IntFunction<String> more) {
    String listed = all.stream().limit(most).collect(Collectors.joining(", "));
    int left = all.size() - most;
    return left > 0 ? listed + " and " + more.apply(left) : listed;
  }
}
