package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.twinrig.band.FrequencyRange;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Numbers;

/** What the text of a plan words by rules; the prose around it is the template's. */
public final class PlanSentences {
  private PlanSentences() {}

  /** What is asked for, such as {@code 1.5 dB} or {@code 1 dB to 2.25 dB by frequency}. */
  public static String tolerance(PlanLimits limits) {
    List<Double> steps =
        limits.tolerance().steps().stream().map(s -> s.db()).distinct().sorted().toList();
    return steps.size() == 1
        ? db(steps.get(0))
        : db(steps.get(0)) + " to " + db(steps.get(steps.size() - 1)) + " by frequency";
  }

  /** To 0.1 dB, or to 0.01 dB where that is not the number the lab gave. */
  private static String db(double value) {
    String hundredths = Numbers.fixed(value, 2);
    return (hundredths.endsWith("0") ? Numbers.fixed(value, 1) : hundredths) + " dB";
  }

  public static String row(Object... cells) {
    return String.format(Locale.ROOT, "  %-20s %6s %12s  %-17s %-17s %s", cells).stripTrailing();
  }

  /** A design for an octave, or why there is none. */
  public static String cell(ZonePlan zone, Optional<Design> design) {
    return switch (zone.outlook()) {
      case MET -> "met";
      case NEVER -> "no plan";
      default ->
          design
              .map(d -> d.units() + " x (" + d.seatingsFrom() + " + " + d.seatingsTo() + ")")
              .orElse("beyond limits");
    };
  }

  /** Such as "4 of 10 octaves": the others are not brought there by the design. */
  public static String zones(Plan plan, Predicate<ZonePlan> meets) {
    return plan.zones().stream().filter(meets).count()
        + " of "
        + Numbers.count(plan.zones().size(), "octave", "octaves");
  }

  public static long count(Plan plan, ZonePlan.Outlook outlook) {
    return plan.zones().stream().filter(z -> z.outlook() == outlook).count();
  }

  /** Where no number of units and seatings meets the tolerance, rising in frequency. */
  public static List<FrequencyRange> incurable(Plan plan) {
    return FrequencyRange.runs(plan.bands(), b -> !b.curable(), Plan.BandPlan::band);
  }
}
