package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Coverage;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionErrors;
import org.twinrig.evidence.UnitErrors;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Numbers;

/** How often intervals held, which units were missed most, and the units the lab held out. */
final class ValidationSheet {
  private ValidationSheet() {}

  static String howToRead(StudyOutcome outcome) {
    return "What counts here is units: the bands of one unit err together. A share is the mean over"
        + " units of each unit's share of bands inside; its "
        + Numbers.fixed(100 * outcome.study().settings().confidence(), 0)
        + " % interval (Clopper and Pearson 1934) treats a unit as wholly in or wholly out, and so is"
        + " rather too wide than too narrow. With a dozen units it is wide: they can refute an"
        + " interval that fails badly, not prove a fine one.";
  }

  static Sheet coverage(StudyOutcome outcome) {
    List<Sheet.Column> columns = new ArrayList<>();
    columns.add(Sheet.names("Kind"));
    columns.add(Sheet.numbers("Units"));
    for (double stated : Coverage.STATED) {
      columns.add(Sheet.ranges(Numbers.fixed(100 * stated, 0) + " % stated"));
    }
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      coverage(kind.kind(), kind.evidence().leftOut()).ifPresent(rows::add);
      coverage(kind.kind() + ", held out", kind.evidence().heldOut()).ifPresent(rows::add);
    }
    return new Sheet("Share of bands inside their interval, all bands (%)", columns, rows);
  }

  private static Optional<List<Sheet.Cell>> coverage(String name, Validation validation) {
    List<Coverage> all = validation.coverage(Optional.empty());
    if (all.isEmpty()) {
      return Optional.empty();
    }
    List<Sheet.Cell> row = new ArrayList<>();
    row.add(Sheet.text(name));
    row.add(Sheet.count(all.get(0).units()));
    for (Coverage c : all) {
      String range = " (" + percent(c.low()) + " to " + percent(c.high()) + ")";
      row.add(Sheet.ordered(percent(c.reached()) + range, c.reached()));
    }
    return Optional.of(row);
  }

  private static String percent(double share) {
    return Numbers.fixed(100 * share, 0);
  }

  static Sheet worst(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (Region region : Region.values()) {
        kind.evidence()
            .leftOut()
            .worst(Optional.of(region))
            .ifPresent(u -> rows.add(worst(kind.kind(), region, u)));
      }
    }
    return new Sheet(
        "The unit that was missed most",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Region"),
            Sheet.names("Unit"),
            Sheet.numbers("RMS error (dB)"),
            Sheet.numbers("RMS error of the plain mean (dB)"),
            Sheet.numbers("Bias (dB)"),
            Sheet.numbers("Inside (%)")),
        rows);
  }

  private static List<Sheet.Cell> worst(String kind, Region region, UnitErrors unit) {
    return List.of(
        Sheet.text(kind),
        Sheet.ordered(region.word(), region.fromHz()),
        Sheet.text(unit.unit()),
        Sheet.hundredths(unit.rmsDb()),
        Sheet.hundredths(unit.rmsOffsetDb()),
        Sheet.hundredths(unit.biasDb()),
        unit.inside().isPresent()
            ? Sheet.ordered(percent(unit.inside().getAsDouble()), unit.inside().getAsDouble())
            : Sheet.ordered("too few units", -1));
  }

  /** What became of the units the lab held out. */
  static List<String> heldOutWords(StudyOutcome outcome) {
    Set<String> judged = new HashSet<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence()
          .heldOut()
          .units()
          .getOrDefault(Optional.empty(), List.of())
          .forEach(u -> judged.add(u.unit()));
    }
    List<String> held =
        outcome.study().units().stream()
            .filter(u -> u.role() == Unit.Role.HOLDOUT)
            .map(Unit::name)
            .toList();
    if (held.isEmpty()) {
      return List.of("The lab held out no unit (role holdout in units.csv).");
    }
    List<String> words = new ArrayList<>();
    words.add(
        Numbers.count(judged.size(), "unit", "units")
            + (judged.size() == 1 ? " that entered no fit was" : " that entered no fit were")
            + " predicted like graphs of the catalogue and compared with their captures on the new"
            + " fixture.");
    String missing =
        held.stream().filter(u -> !judged.contains(u)).collect(Collectors.joining(", "));
    if (!missing.isEmpty()) {
      words.add(
          "Held out but not judged, for want of captures on both fixtures or of a fit for their"
              + " kind: "
              + missing
              + ".");
    }
    return words;
  }

  static Sheet heldOut(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (RegionErrors errors : kind.evidence().heldOut().regions()) {
        rows.add(ErrorSheet.row(kind.kind(), errors));
      }
    }
    return new Sheet("Errors on units that the lab held out", ErrorSheet.columns(), rows);
  }
}
