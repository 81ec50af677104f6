package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Reason;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** The catalogue seen from above, as tables of the page. */
final class OverviewSheets {
  private static final int MOST_OF_A_KIND = 5;

  private OverviewSheets() {}

  /** Which units would help the other graphs most. */
  static CatalogueView.Worth worth(CatalogueOverview overview, Translation translation) {
    String range =
        Numbers.hertz(translation.handling().publishing().compared().fromHz())
            + " and "
            + Numbers.hertz(translation.handling().publishing().compared().toHz());
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    Map<String, Integer> shown = new HashMap<>();
    for (UnitsToMeasure.Choice choice : overview.choices()) {
      if (shown.merge(choice.kind(), 1, Integer::sum) > MOST_OF_A_KIND) {
        continue;
      }
      rows.add(
          List.of(
              Sheet.text(choice.unit()),
              Sheet.text(choice.kind()),
              Sheet.ordered(Numbers.fixed(choice.beforeDb(), 3), choice.beforeDb()),
              Sheet.ordered(Numbers.fixed(choice.afterDb(), 3), choice.afterDb())));
    }
    return new CatalogueView.Worth(
        "Measured on both fixtures and added to the study, these units would cut the prediction"
            + " error of the other graphs of their kind most. They are chosen one after the other"
            + " among the catalogue's units that the study does not have: how far every graph lies"
            + " from the study's units says how much a unit like it would teach (the change of the"
            + " prediction variance when one row is added to the fit, averaged over the graphs and"
            + " the bands between "
            + range
            + "). The spread of single units about the rule stays; no unit can cut that. Kinds the"
            + " study has too few units of come first. The first "
            + MOST_OF_A_KIND
            + " of each kind are listed; units-to-measure.csv has more.",
        new Sheet(
            "Units worth measuring on both fixtures",
            List.of(
                Sheet.names("Unit"),
                Sheet.names("Kind"),
                Sheet.numbers("Prediction error before (dB)"),
                Sheet.numbers("Prediction error after (dB)")),
            rows));
  }

  /** What became of the study's zones. */
  static Sheet zones(CatalogueOverview overview) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (CatalogueOverview.ZoneShare share : overview.zones()) {
      List<Sheet.Cell> row = new ArrayList<>();
      row.add(Sheet.text(share.kind()));
      row.add(
          Sheet.ordered(
              Numbers.hertz(share.zone().fromHz()) + " to " + Numbers.hertz(share.zone().toHz()),
              share.zone().fromHz()));
      row.add(Sheet.marked(Swatch.of(share.zone())));
      for (double s : share.shares()) {
        row.add(Sheet.ordered(Numbers.fixed(100 * s, 0), s));
      }
      row.add(
          Sheet.text(
              share.zone().reasons().stream()
                  .map(Reason::plain)
                  .collect(Collectors.joining("; "))));
      rows.add(row);
    }
    return new Sheet(
        "The study's zones, and what share of the catalogue's graphs got which mark in them",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Zone"),
            Sheet.names("Mark in the study"),
            Sheet.numbers("Reliable (%)"),
            Sheet.numbers("Caution (%)"),
            Sheet.numbers("Unreliable (%)"),
            Sheet.numbers("Missing (%)"),
            Sheet.words("Why")),
        rows);
  }

  /** How much of the change of compensated graphs comes from the references. */
  static Sheet compensated(List<CatalogueRun.Line> lines) {
    Map<String, List<CatalogueRun.Line>> byPair = new TreeMap<>();
    for (CatalogueRun.Line line : lines) {
      if (line.treatment().before().isPresent()) {
        byPair.computeIfAbsent(pair(line.treatment()), p -> new ArrayList<>()).add(line);
      }
    }
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (List<CatalogueRun.Line> group : byPair.values()) {
      Treatment treatment = group.get(0).treatment();
      rows.add(
          List.of(
              Sheet.text(named(treatment.before().orElseThrow())),
              Sheet.text(treatment.now().map(OverviewSheets::named).orElse("none: given raw")),
              Sheet.count(group.size()),
              rms(group, l -> l.change().totalRmsDb()),
              rms(group, l -> l.change().fixtureRmsDb()),
              rms(group, l -> l.change().referenceRmsDb())));
    }
    return new Sheet(
        "Compensated graphs: how much of the change comes from the references alone",
        List.of(
            Sheet.words("Old reference"),
            Sheet.words("New reference"),
            Sheet.numbers("Graphs"),
            Sheet.numbers("Change, RMS (dB)"),
            Sheet.numbers("By the fixture (dB)"),
            Sheet.numbers("By the references alone (dB)")),
        rows);
  }

  private static String pair(Treatment treatment) {
    return named(treatment.before().orElseThrow())
        + "\n"
        + treatment.now().map(OverviewSheets::named).orElse("");
  }

  private static String named(Treatment.Reference reference) {
    return reference.file() + " (" + reference.smoothingWords() + ")";
  }

  private static Sheet.Cell rms(
      List<CatalogueRun.Line> lines, Function<CatalogueRun.Line, OptionalDouble> of) {
    double[] known =
        lines.stream()
            .map(of)
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .toArray();
    if (known.length == 0) {
      return Sheet.ordered("not defined", -1);
    }
    double sum = 0;
    for (double v : known) {
      sum += v * v;
    }
    return Sheet.hundredths(Math.sqrt(sum / known.length));
  }
}
