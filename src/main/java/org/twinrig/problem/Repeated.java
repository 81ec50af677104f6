package org.twinrig.problem;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * What is wrong with many rows in the same words. One slip, such as a wrong session, spoils every
 * row that refers to it; a lab that reads the same sentence forty times misses the forty-first.
 */
public final class Repeated {
  private static final int MOST_RANGES = 6;

  private Repeated() {}

  /**
   * The same problems, each sentence about a file told once.
   *
   * @param problems in any order
   * @return where several lines of a file share one sentence, one problem at the first of them that
   *     names all the lines; every other problem as it was; each where its sentence came first
   */
  public static List<Problem> toldOnce(List<Problem> problems) {
    Map<Problem, NavigableSet<Integer>> lines = new LinkedHashMap<>();
    problems.forEach(p -> lines.computeIfAbsent(p.at(0, ""), s -> new TreeSet<>()).add(p.line()));
    List<Problem> told = new ArrayList<>();
    lines.forEach(
        (p, at) -> told.add(p.at(at.first(), at.size() == 1 ? "" : " (" + rows(at) + ")")));
    return List.copyOf(told);
  }

  private static String rows(NavigableSet<Integer> at) {
    List<String> ranges = ranges(at);
    int more = ranges.size() - MOST_RANGES;
    return "in "
        + at.size()
        + " rows, lines "
        + String.join(", ", ranges.subList(0, Math.min(MOST_RANGES, ranges.size())))
        + (more > 0 ? " and so on" : "");
  }

  /** Three lines or more that follow each other become one range, such as "4 to 9". */
  private static List<String> ranges(NavigableSet<Integer> at) {
    List<String> ranges = new ArrayList<>();
    for (int from : at) {
      if (at.contains(from - 1)) {
        continue;
      }
      int to = from;
      while (at.contains(to + 1)) {
        to++;
      }
      if (to - from >= 2) {
        ranges.add(from + " to " + to);
      } else {
        at.subSet(from, true, to, true).forEach(line -> ranges.add(String.valueOf(line)));
      }
    }
    return ranges;
  }
}
