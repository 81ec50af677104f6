package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.FixtureFeature;

/** The features that the units of a kind share, and how to read them. */
final class FeatureSheet {
  private FeatureSheet() {}

  static String howToRead(StudyOutcome outcome) {
    return "A peak or notch that nearly all units show at the same place belongs to the fixtures, or"
        + " to the kind, not to a unit. It is looked for in the mean curve minus its own smooth over"
        + " one octave, and listed where the "
        + percent(outcome)
        + " interval that holds at all bands at once excludes 0 and at least 80 % of the units"
        + " share the sign. What stands in new minus old is the fixtures' own; what stands on one"
        + " fixture alone may be the kind's. A tall peak lowers its own"
        + " surroundings in this comparison: a shallow notch beside it, or peak beside a deep notch, is"
        + " its shadow. Heights below "
        + Numbers.fixed(least(outcome), 1)
        + " dB, the difference that makes none, are left to features.csv.";
  }

  private static String percent(StudyOutcome outcome) {
    return Numbers.fixed(100 * outcome.study().settings().confidence(), 0) + " %";
  }

  /** The height from which on a feature is worth a line, dB. */
  private static double least(StudyOutcome outcome) {
    return outcome.study().settings().tolerance().equivalenceDb();
  }

  static Sheet of(StudyOutcome outcome) {
    List<List<Sheet.Cell>> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence().features().all().stream()
          .filter(f -> Math.abs(f.height().value()) >= least(outcome))
          .forEach(f -> rows.add(row(kind.kind(), f)));
    }
    return new Sheet(
        "Features that units share",
        List.of(
            Sheet.names("Kind"),
            Sheet.names("Curve"),
            Sheet.names("Shape"),
            Sheet.ranges("Centre"),
            Sheet.ranges("Height (dB)"),
            Sheet.ranges("Width (octaves)"),
            Sheet.numbers("Units that share it")),
        rows);
  }

  private static List<Sheet.Cell> row(String kind, FixtureFeature f) {
    double db = f.height().value();
    FixtureFeature.Estimate c = f.centre();
    return List.of(
        Sheet.text(kind),
        Sheet.text(curve(f.curve())),
        Sheet.text(f.shape().name().toLowerCase(Locale.ROOT)),
        Sheet.ordered(
            Numbers.hertz(c.value())
                + " ("
                + Numbers.hertz(c.low())
                + " to "
                + Numbers.hertz(c.high())
                + ")",
            c.value()),
        Sheet.ordered(
            ranged(db, db - f.simultaneousHalfDb(), db + f.simultaneousHalfDb()), Math.abs(db)),
        f.width()
            .map(w -> Sheet.ordered(ranged(w.value(), w.low(), w.high()), w.value()))
            .orElse(Sheet.ordered("not bounded", -1)),
        Sheet.ordered(f.sharing() + " of " + f.units(), f.share()));
  }

  private static String ranged(double value, double low, double high) {
    return Numbers.fixed(value, 2)
        + " ("
        + Numbers.fixed(low, 2)
        + " to "
        + Numbers.fixed(high, 2)
        + ")";
  }

  private static String curve(FixtureFeature.Curve curve) {
    return switch (curve) {
      case TRANSFER -> "new minus old";
      case FROM -> "old fixture";
      case TO -> "new fixture";
    };
  }
}
