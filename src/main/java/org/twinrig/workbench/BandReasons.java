package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.Contribution;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.report.html.Swatch;
import org.twinrig.study.BandSample;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.ZonesView;

/** Everything that made one band's mark, as it was found. */
final class BandReasons {
  private BandReasons() {}

  static ZonesView.Band of(Leaf leaf, KindOutcome kind, int b) {
    List<MarkedBand> bands = kind.transfer().bands();
    MarkedBand marked = bands.get(b);
    String word = marked.empty() ? "no data" : marked.mark().word();
    return new ZonesView.Band(
        Numbers.hertz(marked.band().midHz()) + ": " + word,
        marked.empty() ? Swatch.GAP : Swatch.of(marked.mark()),
        sentences(leaf, marked),
        units(kind, b),
        budget(kind, marked),
        b == 0 ? Optional.empty() : Optional.of(ZonesPages.link(kind, bands.get(b - 1))),
        b + 1 == bands.size()
            ? Optional.empty()
            : Optional.of(ZonesPages.link(kind, bands.get(b + 1))));
  }

  private static List<String> sentences(Leaf leaf, MarkedBand marked) {
    List<String> sentences = new ArrayList<>();
    double hz = marked.band().midHz();
    var tolerance = leaf.study().settings().tolerance();
    if (marked.outcome() instanceof BandOutcome.Fitted f) {
      sentences.add(
          "New minus old is on average "
              + Numbers.fixed(f.mean().meanDb(), 2)
              + " dB ("
              + Numbers.fixed(f.mean().lowDb(), 2)
              + " to "
              + Numbers.fixed(f.mean().highDb(), 2)
              + " dB) for "
              + Numbers.count(f.units(), "unit", "units")
              + "; units scatter by "
              + Numbers.fixed(Math.sqrt(f.mean().tauSquared()), 2)
              + " dB around it.");
      sentences.add(
          "A single unit is predicted within ±"
              + Numbers.fixed(f.prediction().halfDb(), 2)
              + " dB; reliable asks for at most "
              + Numbers.fixed(tolerance.reliable().atHz(hz), 2)
              + " dB, caution for at most "
              + Numbers.fixed(tolerance.caution().atHz(hz), 2)
              + " dB.");
      sentences.add(model(f.prediction()));
    } else {
      sentences.add(
          "There is no estimate: "
              + Numbers.count(marked.outcome().units(), "unit has", "units have")
              + " a level on both fixtures here, and three are needed.");
    }
    for (Reason reason : marked.reasons()) {
      sentences.add(
          "Marked because "
              + (reason == Reason.DECLARED_ZONE
                  ? "the lab declared: "
                      + ZonesPages.declared(leaf, marked.band().lowerHz(), marked.band().upperHz())
                  : reason.plain())
              + ".");
    }
    return sentences;
  }

  private static String model(BandOutcome.Prediction p) {
    String errors =
        "; left-out units were missed by "
            + Numbers.fixed(p.looRmsDb(), 2)
            + " dB RMS, by the offset alone "
            + Numbers.fixed(p.looRmsOffsetDb(), 2)
            + " dB.";
    return p.window()
        .map(
            w ->
                "Predicted by the offset and a window of ±"
                    + Numbers.fixed(w.halfOctaves(), 2)
                    + " octaves of the old graph"
                    + errors)
        .orElse("Predicted by the offset, the mean transfer of the kind" + errors);
  }

  private static List<ZonesView.UnitRow> units(KindOutcome kind, int b) {
    BandSample sample = kind.paired().at(b);
    double mean =
        kind.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted f
            ? f.mean().meanDb()
            : 0;
    boolean fitted = kind.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted;
    List<ZonesView.UnitRow> rows = new ArrayList<>();
    int[] members = sample.members();
    double[] differences = sample.differencesDb();
    for (int k = 0; k < members.length; k++) {
      int i = members[k];
      String unit = kind.paired().units().get(i);
      rows.add(
          new ZonesView.UnitRow(
              new Link(unit, "./unit?name=" + Pages.query(unit)),
              Numbers.fixed(kind.paired().from().means().get(i).db(b), 2),
              Numbers.fixed(kind.paired().to().means().get(i).db(b), 2),
              Numbers.fixed(differences[k], 2),
              fitted ? Numbers.fixed(differences[k] - mean, 2) : "",
              kind.paired().from().seatings().get(i).get(b)
                  + " and "
                  + kind.paired().to().seatings().get(i).get(b)));
    }
    return rows;
  }

  private static List<ZonesView.BudgetRow> budget(KindOutcome kind, MarkedBand marked) {
    Optional<BandBudget> found =
        kind.budget().bands().stream().filter(x -> x.band().equals(marked.band())).findFirst();
    if (found.isEmpty()) {
      return List.of();
    }
    double all = found.get().known().values().stream().mapToDouble(Contribution::variance).sum();
    List<ZonesView.BudgetRow> rows = new ArrayList<>();
    for (ErrorSource source : ErrorSource.values()) {
      OptionalDouble variance = found.get().variance(source);
      if (variance.isPresent()) {
        rows.add(
            new ZonesView.BudgetRow(
                source.word(),
                Numbers.fixed(Math.sqrt(variance.getAsDouble()), 2),
                all == 0 ? "0" : Numbers.fixed(100 * variance.getAsDouble() / all, 0)));
      }
    }
    return rows;
  }
}
