package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Settings;

/**
 * Studies of the same two fixtures held against each other, kind by kind.
 *
 * @param kinds the kinds that two studies or more have, in the order they first stand
 * @param lonely kinds that one study alone has, with its name
 */
public record StudyComparison(List<Named> studies, List<Kind> kinds, Map<String, String> lonely) {

  public StudyComparison {
    studies = List.copyOf(studies);
    kinds = List.copyOf(kinds);
    lonely = Collections.unmodifiableMap(new LinkedHashMap<>(lonely));
  }

  /**
   * A study and what to call it.
   *
   * @param name different from the others'
   * @param place where it lies, for complaints
   */
  public record Named(String name, String place, StudyOutcome outcome) {
    private Optional<KindOutcome> kind(String kind) {
      return outcome.kinds().stream().filter(k -> k.kind().equals(kind)).findFirst();
    }
  }

  /**
   * One kind.
   *
   * @param pairs every two studies that have it, in order
   * @param combined all studies that have it together
   */
  public record Kind(String kind, List<Pair> pairs, CombinedTransfer combined) {
    public Kind {
      pairs = List.copyOf(pairs);
    }
  }

  /**
   * Two studies.
   *
   * @param unitsFirst how many units of the kind the first has
   * @param shared how many units carry the same name in both
   * @param difference first minus second
   */
  public record Pair(
      String first,
      String second,
      int unitsFirst,
      int unitsSecond,
      int shared,
      MeanDifference difference) {}

  /**
   * Compares.
   *
   * @return the comparison, judged by the terms of the first, which all share
   * @throws UnusableInput when fixtures, bands, anchor, smoothing, confidence or equivalence_db
   *     differ, a study is given twice, or no kind is found in two of them
   */
  public static StudyComparison of(List<Named> studies) throws UnusableInput {
    List<Problem> problems = new ArrayList<>();
    for (int k = 1; k < studies.size(); k++) {
      problems.addAll(Comparability.problems(studies.subList(0, k), studies.get(k)));
    }
    if (!problems.isEmpty()) {
      throw new UnusableInput(problems);
    }
    Map<String, List<Named>> byKind = new LinkedHashMap<>();
    for (Named study : studies) {
      for (KindOutcome kind : study.outcome.kinds()) {
        byKind.computeIfAbsent(kind.kind(), k -> new ArrayList<>()).add(study);
      }
    }
    List<Kind> kinds = new ArrayList<>();
    Map<String, String> lonely = new LinkedHashMap<>();
    byKind.forEach(
        (kind, holders) -> {
          if (holders.size() > 1) {
            kinds.add(kind(kind, holders));
          } else {
            lonely.put(kind, holders.get(0).name);
          }
        });
    if (kinds.isEmpty()) {
      throw new UnusableInput(
          Problem.fatal(
              studies.get(studies.size() - 1).place,
              0,
              "no kind is found in two of the studies; they have "
                  + lonely.keySet().stream()
                      .map(k -> "`" + k + "`")
                      .collect(Collectors.joining(", ")),
              "write kinds the same way in units.csv of each"));
    }
    return new StudyComparison(studies, kinds, lonely);
  }

  private static Kind kind(String kind, List<Named> holders) {
    Settings settings = holders.get(0).outcome.study().settings();
    MeanDifference.Terms terms =
        new MeanDifference.Terms(
            settings.tolerance().equivalenceDb(), settings.confidence(), settings.anchor());
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < holders.size(); i++) {
      for (int j = i + 1; j < holders.size(); j++) {
        pairs.add(pair(kind, holders.get(i), holders.get(j), terms));
      }
    }
    return new Kind(
        kind,
        pairs,
        CombinedTransfer.of(
            holders.stream().map(h -> h.kind(kind).orElseThrow().estimate()).toList(),
            settings.confidence()));
  }

  private static Pair pair(String kind, Named first, Named second, MeanDifference.Terms terms) {
    KindOutcome one = first.kind(kind).orElseThrow();
    KindOutcome two = second.kind(kind).orElseThrow();
    List<String> units = one.paired().units();
    return new Pair(
        first.name,
        second.name,
        units.size(),
        two.paired().units().size(),
        (int) units.stream().filter(two.paired().units()::contains).count(),
        MeanDifference.of(one.estimate(), two.estimate(), terms));
  }
}
