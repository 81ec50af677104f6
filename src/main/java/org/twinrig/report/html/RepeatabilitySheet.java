package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.internal.Numbers;

/** How far seatings scatter, what more of them buy, and how to read it. */
final class RepeatabilitySheet {
  private RepeatabilitySheet() {}

  static StudyView.Repeatability view(StudyOutcome outcome) {
    return new StudyView.Repeatability(howToRead(), scatter(outcome), seatings(outcome));
  }

  static String howToRead() {
    return "Taking a unit off and putting it on again changes its level; the standard deviation"
        + " between seatings says by how much, all units of a kind taken together. The second table"
        + " says what averaging more seatings would buy: the half-width of the prediction interval if"
        + " old graph and new measurement were both averaged over so many. The last column is what no"
        + " number of seatings goes below; where it is close, measure more units, not more seatings.";
  }

  private static Sheet scatter(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (Region region : Region.values()) {
        OptionalDouble from = mean(kind.repeatability().from(), region);
        OptionalDouble to = mean(kind.repeatability().to(), region);
        if (from.isPresent() || to.isPresent()) {
          rows.add(List.of(Sheet.text(kind.kind()), place(region), deviation(from), deviation(to)));
        }
      }
    }
    return new Sheet(
        "Standard deviation between seatings, root mean square over the bands of a region",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Region"),
            Sheet.numbers("Old fixture (dB)"),
            Sheet.numbers("New fixture (dB)")),
        rows);
  }

  private static Sheet seatings(StudyOutcome outcome) {
    List<Sheet.Column> columns = new ArrayList<>();
    columns.add(Sheet.names("Kind"));
    columns.add(Sheet.names("Region"));
    for (int m : SeatingsNeeded.SEATINGS) {
      columns.add(Sheet.numbers(Numbers.count(m, "seating", "seatings") + " (± dB)"));
    }
    columns.add(Sheet.numbers("Never below (± dB)"));
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (SeatingsNeeded needed : kind.seatings()) {
        List<Sheet.Cell> row = new ArrayList<>();
        row.add(Sheet.text(kind.kind()));
        row.add(place(needed.region()));
        needed.halfDb().forEach(half -> row.add(Sheet.hundredths(half)));
        row.add(Sheet.hundredths(needed.neverBelowDb()));
        rows.add(row);
      }
    }
    return new Sheet("Prediction half-width against the number of seatings", columns, rows);
  }

  private static Sheet.Cell place(Region region) {
    return Sheet.ordered(region.word(), region.fromHz());
  }

  private static Sheet.Cell deviation(OptionalDouble db) {
    return db.isPresent() ? Sheet.hundredths(db.getAsDouble()) : Sheet.ordered("not repeated", -1);
  }

  private static OptionalDouble mean(List<Optional<Repeatability.Scatter>> bands, Region region) {
    OptionalDouble square =
        bands.stream()
            .flatMap(Optional::stream)
            .filter(s -> region.holds(s.band()))
            .mapToDouble(s -> s.sdDb() * s.sdDb())
            .average();
    return square.isPresent()
        ? OptionalDouble.of(Math.sqrt(square.getAsDouble()))
        : OptionalDouble.empty();
  }
}
