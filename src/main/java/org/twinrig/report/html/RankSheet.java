package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.RankCorrelation;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.internal.Numbers;

/** Whether units keep their rank, and how to read it. */
final class RankSheet {
  private static final int NAMED = 3;

  private RankSheet() {}

  static String howToRead() {
    return "Each unit's deviation from its fixture's reference curve (root mean square, dB) is taken"
        + " on both fixtures, and units are ranked by it, the nearest first. A rank correlation of 1"
        + " says that both fixtures put the units in the same order, 0 that one order says nothing of"
        + " the other. Seating scatter alone shuffles units that lie close together.";
  }

  static Sheet of(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence().ranks().ifPresent(ranks -> rows.add(row(kind.kind(), ranks)));
    }
    return new Sheet(
        "How far the order of units keeps",
        List.of(
            Sheet.names("Kind"),
            Sheet.numbers("Units"),
            Sheet.ranges("Spearman"),
            Sheet.ranges("Kendall tau-b"),
            Sheet.words("Ranks that change most"),
            Sheet.words("Not ranked")),
        rows);
  }

  private static List<Sheet.Cell> row(String kind, RankKeeping.Result ranks) {
    String changes =
        ranks.mostChanged(NAMED).stream()
            .map(u -> u.unit() + " from " + rank(u.rankFrom()) + " to " + rank(u.rankTo()))
            .collect(Collectors.joining("; "));
    return List.of(
        Sheet.text(kind),
        Sheet.count(ranks.units().size()),
        coefficient(ranks.spearman()),
        coefficient(ranks.kendall()),
        Sheet.text(changes.isEmpty() ? "none changes" : changes),
        Sheet.text(
            ranks.leftOut().isEmpty()
                ? "none"
                : String.join(", ", ranks.leftOut()) + ": a band is missing"));
  }

  private static String rank(double rank) {
    return Numbers.fixed(rank, rank == Math.rint(rank) ? 0 : 1);
  }

  private static Sheet.Cell coefficient(Optional<RankCorrelation> found) {
    if (found.isEmpty()) {
      return Sheet.ordered("no order", -2);
    }
    RankCorrelation r = found.get();
    String interval =
        r.interval()
            .map(i -> " (" + Numbers.fixed(i.low(), 2) + " to " + Numbers.fixed(i.high(), 2) + ")")
            .orElse("");
    return Sheet.ordered(Numbers.fixed(r.coefficient(), 2) + interval, r.coefficient());
  }
}
