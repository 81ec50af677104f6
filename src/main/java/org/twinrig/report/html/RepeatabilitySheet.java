package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingGain;
import org.twinrig.internal.Numbers;

/** How well seatings repeat, and what more of them would buy. */
final class RepeatabilitySheet {
  private static final int[] SHOWN_SEATINGS = {1, 2, 5, 10};

  private RepeatabilitySheet() {}

  static StudyView.Repeating view(StudyOutcome outcome) {
    return new StudyView.Repeating(
        List.of(howToRead(outcome), gainHowToRead()), scatter(outcome), gain(outcome));
  }

  private static String howToRead(StudyOutcome outcome) {
    return "Taking a unit off and seating it again changes the curve. The standard deviation between"
        + " seatings of one unit on one fixture (sides averaged, relative to the anchor, pooled over the"
        + " units of a kind) says by how much; two thirds of single seatings fall within one of it. The"
        + " table gives its root mean square over the bands of a region, the figures each band with its"
        + " interval, which comes from the chi-square distribution and assumes that all units of a kind"
        + " scatter alike."
        + outcome
            .study()
            .settings()
            .sessions()
            .checkUnit()
            .map(u -> " The check unit " + u + " is left out: it was seated over many sessions.")
            .orElse("");
  }

  private static String gainHowToRead() {
    return "The second table says how many seatings buy what: the ± half-width in which one unit's"
        + " difference between the fixtures falls about the mean transfer, if every unit were seated as"
        + " often on each fixture, and in brackets the share of its variance that is seating. Where even"
        + " endless seatings leave much, units differ, and only the window prediction or a capture of"
        + " the unit itself helps.";
  }

  private static Sheet scatter(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (Repeatability kind : outcome.repeatability()) {
      for (Region region : Region.values()) {
        OptionalDouble old = Repeatability.over(kind.from(), region);
        OptionalDouble now = Repeatability.over(kind.to(), region);
        if (old.isPresent() || now.isPresent()) {
          rows.add(
              List.of(
                  Sheet.text(kind.kind()),
                  region(region),
                  sd(old),
                  freedom(kind.from(), region),
                  sd(now),
                  freedom(kind.to(), region)));
        }
      }
    }
    return new Sheet(
        "Standard deviation between seatings of one unit",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Region"),
            Sheet.numbers("Old fixture (dB)"),
            Sheet.numbers("Least d.f."),
            Sheet.numbers("New fixture (dB)"),
            Sheet.numbers("Least d.f.")),
        rows);
  }

  private static Sheet.Cell region(Region region) {
    String range = Numbers.hertz(region.fromHz()) + " to " + Numbers.hertz(region.toHz());
    return Sheet.ordered(region.word() + ", " + range, region.fromHz());
  }

  private static Sheet.Cell sd(OptionalDouble sd) {
    return sd.isPresent() ? Sheet.hundredths(sd.getAsDouble()) : Sheet.ordered("not repeated", -1);
  }

  private static Sheet.Cell freedom(List<Repeatability.AtBand> bands, Region region) {
    return Sheet.count(
        bands.stream()
            .filter(b -> region.holds(b.band()))
            .mapToInt(Repeatability.AtBand::degreesOfFreedom)
            .min()
            .orElse(0));
  }

  private static Sheet gain(StudyOutcome outcome) {
    List<Sheet.Column> columns = new ArrayList<>();
    columns.add(Sheet.names("Kind"));
    columns.add(Sheet.names("Region"));
    for (int m : SHOWN_SEATINGS) {
      columns.add(Sheet.numbers(Numbers.count(m, "seating", "seatings") + " (dB)"));
    }
    columns.add(Sheet.numbers("Endless (dB)"));
    double confidence = outcome.study().settings().confidence();
    List<Repeatability> repeatability = outcome.repeatability();
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (int k = 0; k < repeatability.size(); k++) {
      KindOutcome kind = outcome.kinds().get(k);
      for (SeatingGain gain : SeatingGain.of(repeatability.get(k), kind.estimate(), confidence)) {
        rows.add(row(kind.kind(), gain));
      }
    }
    return new Sheet(
        "Half-width about the mean transfer by seatings on each fixture, "
            + Numbers.fixed(100 * confidence, 0)
            + " %, and the share of seating",
        columns,
        rows);
  }

  private static List<Sheet.Cell> row(String kind, SeatingGain gain) {
    List<Sheet.Cell> cells = new ArrayList<>();
    cells.add(Sheet.text(kind));
    cells.add(Sheet.ordered(gain.region().word(), gain.region().fromHz()));
    for (int m : SHOWN_SEATINGS) {
      SeatingGain.Step step = gain.steps().get(m - 1);
      String share =
          step.share().isPresent()
              ? " (" + Numbers.fixed(100 * step.share().getAsDouble(), 0) + " %)"
              : "";
      cells.add(Sheet.ordered(Numbers.fixed(step.halfDb(), 2) + share, step.halfDb()));
    }
    cells.add(Sheet.hundredths(gain.endlessHalfDb()));
    return cells;
  }
}
