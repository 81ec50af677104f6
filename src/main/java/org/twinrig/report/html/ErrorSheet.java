package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Region;
import org.twinrig.evidence.RegionErrors;
import org.twinrig.internal.Numbers;

/** The errors on units that did not enter, and how to read them. */
final class ErrorSheet {
  private ErrorSheet() {}

  static String howToRead(double confidence) {
    return "Each unit was left out in turn and predicted from the other units of its kind, as if it"
        + " were a graph from the back catalogue; the way to predict was chosen anew without it. The"
        + " bias is the mean of those errors, measured minus predicted; it is zero by construction"
        + " where the plain mean of the others predicts and all units reach every band. The RMS error"
        + " is their usual size, beside it that of the plain mean of the others. The"
        + " coverage is the share of errors inside an interval made without that unit, and should"
        + " lie near "
        + Numbers.fixed(100 * confidence, 0)
        + " %.";
  }

  static Sheet of(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.errors().forEach(e -> rows.add(row(kind.kind(), e)));
    }
    return new Sheet("Errors on units that were left out", columns(), rows);
  }

  static List<Sheet.Column> columns() {
    return List.of(
        Sheet.names("Kind"),
        Sheet.names("Region"),
        Sheet.numbers("Units"),
        Sheet.numbers("Bias (dB)"),
        Sheet.numbers("RMS error (dB)"),
        Sheet.numbers("RMS error of the plain mean (dB)"),
        Sheet.numbers("Coverage (%)"));
  }

  static List<Sheet.Cell> row(String kind, RegionErrors e) {
    Region region = e.region();
    String range = Numbers.hertz(region.fromHz()) + " to " + Numbers.hertz(region.toHz());
    return List.of(
        Sheet.text(kind),
        Sheet.ordered(region.word() + ", " + range, region.fromHz()),
        Sheet.count(e.units()),
        Sheet.hundredths(e.biasDb()),
        Sheet.hundredths(e.rmsDb()),
        Sheet.hundredths(e.rmsOffsetDb()),
        e.coverage().isPresent()
            ? Sheet.ordered(
                Numbers.fixed(100 * e.coverage().getAsDouble(), 0), e.coverage().getAsDouble())
            : Sheet.ordered("too few units", -1));
  }
}
