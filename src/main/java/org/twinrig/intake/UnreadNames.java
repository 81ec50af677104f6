package org.twinrig.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.twinrig.intake.PatternMisfit.Found;
import org.twinrig.internal.FirstFew;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/**
 * Names that a pattern does not read in one way. Where the pattern is wrong, all names fail alike;
 * each fault is told once, with the first of its names.
 */
final class UnreadNames {
  private static final int MOST_SHOWN = 3;

  private final NamePattern pattern;
  private final Map<String, List<Found>> misfits = new LinkedHashMap<>();
  private final List<String> ambiguous = new ArrayList<>();
  private String twoWays = "";

  UnreadNames(NamePattern pattern) {
    this.pattern = pattern;
  }

  /** Takes a name with no reading, or with two. */
  void add(String name, List<Map<NamePattern.Part, String>> readings) {
    if (readings.isEmpty()) {
      Found found = pattern.misfit(name);
      misfits.computeIfAbsent(found.sort(), s -> new ArrayList<>()).add(found);
      return;
    }
    if (ambiguous.isEmpty()) {
      twoWays = words(readings.get(0)) + "; or " + words(readings.get(1));
    }
    ambiguous.add(name);
  }

  /** What is wrong with them, of so many files in a folder. */
  List<Problem> problems(String folder, int files) {
    List<Problem> problems = new ArrayList<>();
    int unfit = misfits.values().stream().mapToInt(List::size).sum();
    if (unfit > 0 && unfit == files) {
      problems.add(nothingFits(folder, files));
    } else {
      misfits.values().forEach(alike -> problems.add(unfit(alike)));
    }
    if (!ambiguous.isEmpty()) {
      String first = ambiguous.size() == 1 ? "" : "the first as ";
      problems.add(
          Problem.refused(
              first(ambiguous),
              0,
              "can be read in two ways: " + first + twoWays,
              "name the texts a part may have, such as {fixture:plate|head}"));
    }
    return problems;
  }

  private Problem nothingFits(String folder, int files) {
    // The most frequent fault, the first of several; a stray file, such as a list of contents, may
    // come first of all.
    List<Found> most =
        misfits.values().stream().sorted((a, b) -> b.size() - a.size()).findFirst().orElseThrow();
    String all =
        files == 1
            ? "the only file does not fit the pattern `"
            : "none of the " + files + " files fits the pattern `";
    return Problem.refused(
        folder,
        0,
        all + pattern + "`; take `" + most.get(0).name() + "`: " + told(most),
        "mend the pattern so that it reads as the names do");
  }

  private Problem unfit(List<Found> alike) {
    boolean one = alike.size() == 1;
    return Problem.refused(
        first(alike.stream().map(Found::name).toList()),
        0,
        (one
                ? "does not fit the pattern `%s`: %s"
                : "do not fit the pattern `%s`: in the first, %s")
            .formatted(pattern, told(alike)),
        one ? "rename it, or gather it apart" : "rename them, or gather them apart");
  }

  /** The fault of the first name, and the other values that are not allowed either. */
  private static String told(List<Found> alike) {
    Found first = alike.get(0);
    List<String> others =
        alike.stream()
            .flatMap(m -> m.value().stream())
            .distinct()
            .filter(value -> !first.value().equals(Optional.of(value)))
            .map(value -> "`" + value + "`")
            .toList();
    return others.isEmpty()
        ? first.told()
        : first.told() + " (in others " + FirstFew.of(others, MOST_SHOWN, n -> n + " more") + ")";
  }

  private static String first(List<String> names) {
    return FirstFew.of(names, MOST_SHOWN, n -> Numbers.count(n, "more file", "more files"));
  }

  private static String words(Map<NamePattern.Part, String> reading) {
    return new TreeMap<>(reading)
        .entrySet().stream()
            .map(e -> e.getKey().word() + " `" + e.getValue() + "`")
            .collect(Collectors.joining(", "));
  }
}
