package org.twinrig.report;

import java.util.List;
import java.util.Locale;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.study.FrequencyRange;

/**
 * A study with its plans.
 *
 * @param outcome what the study found
 * @param limits what is asked for, with what at most
 * @param plans one per kind, in the order of the study
 * @param choices units of the study's catalogue worth capturing, the most useful of a kind first;
 *     none without a catalogue
 */
public record PlannedStudy(
    StudyOutcome outcome,
    PlanLimits limits,
    List<Plan> plans,
    List<UnitsToMeasure.Choice> choices) {
  public PlannedStudy {
    plans = List.copyOf(plans);
    choices = List.copyOf(choices);
  }

  /**
   * Plans every kind of a study.
   *
   * @param outcome what the study found
   * @param limits what is asked for, with what at most
   * @param choices units of its catalogue worth capturing
   */
  public static PlannedStudy of(
      StudyOutcome outcome, PlanLimits limits, List<UnitsToMeasure.Choice> choices) {
    double confidence = outcome.study().settings().confidence();
    return new PlannedStudy(
        outcome,
        limits,
        outcome.kinds().stream()
            .map(k -> Plan.of(k.paired(), k.estimate(), limits, confidence))
            .toList(),
        choices);
  }

  /**
   * Where no number of units and seatings meets the tolerance.
   *
   * @param plan of a kind
   * @return runs of adjacent bands, rising in frequency
   */
  public static List<FrequencyRange> incurable(Plan plan) {
    return FrequencyRange.runs(plan.bands(), b -> !b.curable(), Plan.BandPlan::band);
  }

  /**
   * An outlook as files write it.
   *
   * @return for example {@code even chance}
   */
  public static String word(ZonePlan.Outlook outlook) {
    return outlook.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
