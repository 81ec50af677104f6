package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Study;

/** What is doubted of units: which stand for others, are one, or stand under the wrong name. */
public final class UnitDoubts {
  /** The more specific first: each explains those below it about the same units. */
  private static final List<String> SPECIFIC_FIRST =
      List.of(
          FixturesExchanged.DOUBT,
          UnitsExchanged.DOUBT,
          KindDoubtful.DOUBT,
          DepartsFromItsKind.DOUBT);

  private UnitDoubts() {}

  /** All of a study's paired units. */
  public static List<Doubt> of(Study study, List<PairedUnits> kinds) {
    List<Doubt> doubts = new ArrayList<>(UnitsExchanged.of(study, kinds));
    kinds.forEach(kind -> doubts.addAll(OneUnitTwice.of(kind)));
    kinds.forEach(kind -> doubts.addAll(FixturesExchanged.of(kind)));
    doubts.addAll(KindDoubtful.of(kinds));
    kinds.forEach(kind -> doubts.addAll(DepartsFromItsKind.of(kind).doubts()));
    return doubts;
  }

  /** One doubt for one cause: without those that a more specific one explains. */
  public static List<Doubt> withoutExplained(List<Doubt> doubts) {
    Map<String, Set<Integer>> ranks = new HashMap<>();
    for (Doubt doubt : doubts) {
      for (String unit : units(doubt)) {
        ranks.computeIfAbsent(unit, u -> new HashSet<>()).add(rank(doubt));
      }
    }
    return doubts.stream()
        .filter(
            d ->
                rank(d) < 0
                    || units(d).isEmpty()
                    || units(d).stream()
                        .noneMatch(u -> ranks.get(u).stream().anyMatch(r -> r >= 0 && r < rank(d))))
        .toList();
  }

  private static int rank(Doubt doubt) {
    return SPECIFIC_FIRST.indexOf(doubt.doubt());
  }

  private static List<String> units(Doubt doubt) {
    return switch (doubt.subject()) {
      case UNIT -> List.of(doubt.name());
      case PAIR -> List.of(doubt.name().split(" / ", -1));
      case CAPTURE, SESSION, STUDY, GRAPH, CATALOGUE -> List.of();
    };
  }
}
