package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.PlanFigure;
import org.twinrig.report.html.Texts;
import org.twinrig.report.table.PlanResults;
import org.twinrig.study.FrequencyRange;

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

  /** Plans every kind of a study. */
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

  /** Where no number of units and seatings meets the tolerance, rising in frequency. */
  private static List<FrequencyRange> incurableRuns(Plan plan) {
    return FrequencyRange.runs(plan.bands(), b -> !b.curable(), Plan.BandPlan::band);
  }

  @Override
  public List<String> sentences(Optional<Path> results) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "%s: what it takes to bring the prediction half-width to %s."
            .formatted(outcome.study().title(), tolerance()));
    plans.forEach(plan -> lines.addAll(table(plan)));
    lines.add("");
    lines.addAll(howToRead());
    results.ifPresent(folder -> lines.add("Tables and figures: " + folder));
    return lines;
  }

  private String tolerance() {
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

  private String differenceDb() {
    return Numbers.fixed(limits.differenceDb(), 2) + " dB";
  }

  private List<String> table(Plan plan) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add(
        "%s, now %s, %s in all"
            .formatted(
                plan.kind(),
                Numbers.count(plan.present().units(), "unit", "units"),
                Numbers.count(plan.presentSeatings(), "seating", "seatings")));
    lines.add(
        row(
            "octave",
            "now",
            "never below",
            "even chance with",
            "nine in ten with",
            differenceDb() + " shown by"));
    for (ZonePlan zone : plan.zones()) {
      OptionalInt units = zone.unitsToShow(limits.differenceDb(), limits.unitsMax());
      lines.add(
          row(
              Texts.range(zone.fromHz(), zone.toHz()),
              Numbers.against(zone.presentHalfDb(), zone.toleranceDb(), 2),
              Numbers.against(zone.neverBelowDb(), zone.toleranceDb(), 2),
              cell(zone, zone.evenChance()),
              cell(zone, zone.cautious()),
              units.isPresent() ? units.getAsInt() + " units" : "beyond limits"));
    }
    lines.addAll(sentences(plan));
    return lines;
  }

  private static String row(Object... cells) {
    return String.format(Locale.ROOT, "  %-20s %6s %12s  %-17s %-17s %s", cells).stripTrailing();
  }

  private static String cell(ZonePlan zone, Optional<Design> design) {
    return switch (zone.outlook()) {
      case MET -> "met";
      case NEVER -> "no plan";
      default ->
          design
              .map(d -> d.units() + " x (" + d.seatingsFrom() + " + " + d.seatingsTo() + ")")
              .orElse("beyond limits");
    };
  }

  /** What the table comes to; without a word on what is met everywhere. */
  private List<String> sentences(Plan plan) {
    List<String> lines = new ArrayList<>();
    if (count(plan, ZonePlan.Outlook.MET) == plan.zones().size()) {
      lines.add("  Nothing is needed: every octave meets the tolerance.");
    }
    String cheapest = "  Cheapest for %s, those that %s: %s.";
    plan.evenWhole()
        .map(
            d ->
                cheapest.formatted(
                    zones(plan, z -> z.expects(d)), "can be expected to meet it", spelt(d, plan)))
        .ifPresent(lines::add);
    plan.whole()
        .map(
            d ->
                cheapest.formatted(
                    zones(plan, z -> z.meetsCautiously(d)),
                    "meet it nine times in ten",
                    spelt(d, plan)))
        .ifPresent(lines::add);
    if (plan.whole().isEmpty() && count(plan, ZonePlan.Outlook.EVEN_CHANCE) > 0) {
      lines.add(
          "  Nothing beyond what is met can be promised nine times in ten: %s the variances too badly."
              .formatted(unitsTell(plan)));
    }
    List<FrequencyRange> incurable = incurableRuns(plan);
    if (!incurable.isEmpty()) {
      lines.add(incurable(plan, incurable));
    }
    List<String> next =
        choices.stream()
            .filter(c -> c.kind().equals(plan.kind()))
            .limit(MOST_CHOICES)
            .map(c -> c.unit())
            .toList();
    if (!next.isEmpty()) {
      lines.add("  Of the catalogue, capture next: " + String.join(", ", next) + ".");
    }
    return lines;
  }

  private static String unitsTell(Plan plan) {
    return Numbers.count(plan.present().units(), "unit tells", "units tell");
  }

  /** Such as "4 of 10 octaves": the others are not brought there by the design. */
  private static String zones(Plan plan, Predicate<ZonePlan> meets) {
    return plan.zones().stream().filter(meets).count()
        + " of "
        + Numbers.count(plan.zones().size(), "octave", "octaves");
  }

  private static long count(Plan plan, ZonePlan.Outlook outlook) {
    return plan.zones().stream().filter(z -> z.outlook() == outlook).count();
  }

  private static String spelt(Design d, Plan plan) {
    int more = d.seatings() - plan.presentSeatings();
    return "%s with %s seatings on the old fixture and %s on the new one, %s in all%s"
        .formatted(
            Numbers.count(d.units(), "unit", "units"),
            d.seatingsFrom(),
            d.seatingsTo(),
            Numbers.count(d.seatings(), "seating", "seatings"),
            more > 0 ? ", " + more + " more than now" : "");
  }

  private static String incurable(Plan plan, List<FrequencyRange> runs) {
    return ("  As far as %s, no number of units and seatings cures %s: there the units differ by more"
            + " than the tolerance allows, beyond what their old graphs tell. Measure such graphs"
            + " again.")
        .formatted(unitsTell(plan), Texts.ranges(runs, ", "));
  }

  private List<String> howToRead() {
    return """
        Half-widths are root mean squares over an octave, in dB, so that narrower parts of it may \
        stay above the tolerance; a design is units x (seatings on the old + on the new fixture), \
        at most UNITS x (SEATINGS + SEATINGS), the present units and seatings among them.
        Even chance: the variances taken as this study found them; about every other study misses. \
        Nine in ten: the variances of this study, and of what is still to be captured, at their \
        95 % limits, 10 % above the tolerance allowed; on simulated studies nine of ten octaves \
        promised so, and more, came within that. A few units can promise little: capture part of \
        any plan, then plan again.
        Last column: with so many units, seated as now, a paired t test shows a mean difference of \
        DIFFERENCE at a band in nine of ten studies, if it is there.
        A plan cuts half-widths only: outside the range of an ear simulator, in declared zones and \
        where a resonance wanders, marks stay at caution.
        """
        .replace("UNITS", String.valueOf(limits.unitsMax()))
        .replace("SEATINGS", String.valueOf(limits.seatingsMax()))
        .replace("DIFFERENCE", differenceDb())
        .lines()
        .toList();
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
              .put("present_half_db", zone.presentHalfDb())
              .put("never_below_db", zone.neverBelowDb())
              .put("outlook", zone.outlook().name().toLowerCase(Locale.ROOT).replace('_', ' '));
      put(z, "even_chance", zone.evenChance());
      put(z, "cautious", zone.cautious());
      zone.unitsToShow(limits.differenceDb(), limits.unitsMax())
          .ifPresent(n -> z.put("units_to_show_difference", n));
    }
    ArrayNode incurable = node.putArray("incurable");
    incurableRuns(plan)
        .forEach(r -> incurable.addObject().put("from_hz", r.fromHz()).put("to_hz", r.toHz()));
    ArrayNode next = node.putArray("capture_next");
    choices.stream().filter(c -> c.kind().equals(plan.kind())).forEach(c -> next.add(c.unit()));
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
    FigureFiles.write(
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
