package org.twinrig.intake;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Guesses which known name a misspelt one was meant to be. */
public final class NearestName {
  private static final int LONGEST = 200;
  private static final int SHORTEST_BEGINNING = 3;

  private NearestName() {}

  /**
   * The known name nearest to a misspelt one: with the fewest letters inserted, left out, replaced
   * or swapped with their neighbour (optimal string alignment distance), not counting case, spaces,
   * hyphens and underscores. Names further than a third of the misspelt one's letters are no guess;
   * where none is nearer, one that alone begins with what was written, cut short, is. Of several as
   * near, the first is taken.
   */
  public static Optional<String> among(String misspelt, Collection<String> known) {
    String wanted = bare(misspelt);
    if (wanted.length() > LONGEST) {
      return Optional.empty();
    }
    int farthest = Math.min(Math.max(1, wanted.length() / 3), wanted.length() - 1);
    Optional<String> nearest = Optional.empty();
    int least = farthest + 1;
    for (String name : known) {
      String candidate = bare(name);
      int difference = Math.abs(candidate.length() - wanted.length());
      if (difference < least && distance(wanted, candidate) < least) {
        least = distance(wanted, candidate);
        nearest = Optional.of(name);
      }
    }
    return nearest.isPresent() ? nearest : completed(wanted, known);
  }

  /** The guess as a question with a blank behind it, to begin a remedy; empty without one. */
  public static String question(String misspelt, Collection<String> known) {
    return among(misspelt, known).map(near -> "did you mean `" + near + "`? ").orElse("");
  }

  private static Optional<String> completed(String wanted, Collection<String> known) {
    List<String> longer =
        known.stream()
            .filter(name -> wanted.length() >= SHORTEST_BEGINNING && bare(name).startsWith(wanted))
            .distinct()
            .toList();
    return longer.size() == 1 ? Optional.of(longer.get(0)) : Optional.empty();
  }

  /** What is left of a name when case, spaces, hyphens and underscores do not count. */
  public static String bare(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "");
  }

  /** Rows of the usual dynamic programme; {@code before} is the row two letters back. */
  static int distance(String a, String b) {
    int[] before = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replaced, 1 + Math.min(last[j], row[j - 1]));
        boolean pair = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2);
        if (pair && a.charAt(i - 2) == b.charAt(j - 1)) {
          row[j] = Math.min(row[j], before[j - 2] + 1);
        }
      }
      before = last;
      last = row;
    }
    return last[b.length()];
  }
}
