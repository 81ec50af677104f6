package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.PlanFigure;
import org.twinrig.report.html.Page;
import org.twinrig.report.html.PlanSentences;
import org.twinrig.report.table.PlanResults;

/**
 * A study with its plans.
 *
 * @param limits what is asked for, with what at most
 * @param plans one per kind, in the order of the study
 * @param choices units of the study's catalogue worth capturing, the most useful of a kind first;
 *     none without a catalogue
 */
public record PlanReport(
    StudyOutcome outcome, PlanLimits limits, List<Plan> plans, List<UnitsToMeasure.Choice> choices)
    implements Report {
  private static final int MOST_CHOICES = 3;

  public PlanReport {
    plans = List.copyOf(plans);
    choices = List.copyOf(choices);
  }

  public static PlanReport of(
      StudyOutcome outcome, PlanLimits limits, List<UnitsToMeasure.Choice> choices) {
    double confidence = outcome.study().settings().confidence();
    return new PlanReport(
        outcome,
        limits,
        outcome.kinds().stream()
            .map(k -> Plan.of(k.paired(), k.estimate(), limits, confidence))
            .toList(),
        choices);
  }

  @Override
  public List<String> sentences(Optional<Path> results) {
    Map<String, List<String>> next = new HashMap<>();
    plans.forEach(p -> next.put(p.kind(), next(p.kind()).limit(MOST_CHOICES).toList()));
    return Page.lines(
        "terminal/plan.jte",
        Map.of(
            "outcome", outcome,
            "limits", limits,
            "plans", plans,
            "next", next,
            "results", results.map(Path::toString)));
  }

  /** Units of the catalogue to capture next. */
  private Stream<String> next(String kind) {
    return choices.stream().filter(c -> c.kind().equals(kind)).map(UnitsToMeasure.Choice::unit);
  }

  @Override
  public String json(Optional<Path> results) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("title", outcome.study().title())
        .put("fingerprint", outcome.fingerprint())
        .put("units_max", limits.unitsMax())
        .put("seatings_max", limits.seatingsMax())
        .put("difference_db", limits.differenceDb())
        .put("chance", Plan.CHANCE)
        .put("slack", Plan.SLACK);
    ArrayNode kinds = root.putArray("kinds");
    plans.forEach(plan -> put(kinds.addObject(), plan));
    return root.toPrettyString();
  }

  private void put(ObjectNode node, Plan plan) {
    node.put("kind", plan.kind())
        .put("units", plan.present().units())
        .put("seatings", plan.presentSeatings());
    put(node, "even_chance", plan.evenWhole());
    put(node, "cautious", plan.whole());
    ArrayNode zones = node.putArray("zones");
    for (ZonePlan zone : plan.zones()) {
      ObjectNode z =
          zones
              .addObject()
              .put("from_hz", zone.fromHz())
              .put("to_hz", zone.toHz())
              .put("tolerance_db", zone.toleranceDb())
              .put("present_half_db", zone.variance().presentHalfDb())
              .put("never_below_db", zone.variance().neverBelowDb())
              .put("outlook", zone.outlook().name().toLowerCase(Locale.ROOT).replace('_', ' '));
      put(z, "even_chance", zone.evenChance());
      put(z, "cautious", zone.cautious());
      zone.unitsToShow(limits.differenceDb(), limits.unitsMax())
          .ifPresent(n -> z.put("units_to_show_difference", n));
    }
    ArrayNode incurable = node.putArray("incurable");
    PlanSentences.incurable(plan)
        .forEach(r -> incurable.addObject().put("from_hz", r.fromHz()).put("to_hz", r.toHz()));
    ArrayNode next = node.putArray("capture_next");
    next(plan.kind()).forEach(next::add);
  }

  private static void put(ObjectNode node, String name, Optional<Design> design) {
    design.ifPresent(
        d ->
            node.putObject(name)
                .put("units", d.units())
                .put("seatings_from", d.seatingsFrom())
                .put("seatings_to", d.seatingsTo())
                .put("seatings", d.seatings()));
  }

  @Override
  public void write(Path folder, RunRecord record, int threads) throws IOException {
    PlanResults.write(plans, limits, folder);
    Figure.write(
        folder,
        Parallel.map(
            plans.stream().filter(p -> !p.zones().isEmpty()).toList(),
            threads,
            plan ->
                PlanFigure.of(
                    plan, PlanResults.seatings(limits), limits.unitsMax(), caption(plan))),
        threads);
    record.with(
        "plan",
        node ->
            node.put("units_max", limits.unitsMax())
                .put("seatings_max", limits.seatingsMax())
                .put("study_fingerprint", outcome.fingerprint()));
    record.lap("write");
    record.write(folder);
  }

  private Caption caption(Plan plan) {
    return new Caption(
        plan.kind(),
        plan.present().units(),
        outcome.study().settings().confidence(),
        outcome.fingerprint());
  }
}
