package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.twinrig.evidence.Design;
import org.twinrig.evidence.Plan;
import org.twinrig.evidence.ZonePlan;
import org.twinrig.internal.Numbers;
import org.twinrig.report.html.Texts;
import org.twinrig.study.FrequencyRange;

/**
 * What is planned, as tables and sentences for a terminal and as JSON for a machine.
 *
 * @param planned the plans and what they rest on
 */
public record PlanWords(PlannedStudy planned) {
  private static final int MOST_CHOICES = 3;

  /** Kind by kind a table and sentences, line by line. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        planned.outcome().study().title()
            + ": what it takes to bring the prediction half-width to "
            + tolerance()
            + ".");
    planned.plans().forEach(plan -> lines.addAll(lines(plan)));
    lines.add("");
    lines.addAll(howToRead());
    return lines;
  }

  private String tolerance() {
    List<Double> limits =
        planned.limits().tolerance().steps().stream().map(s -> s.db()).distinct().sorted().toList();
    return limits.size() == 1
        ? db(limits.get(0))
        : db(limits.get(0)) + " to " + db(limits.get(limits.size() - 1)) + " by frequency";
  }

  private List<String> lines(Plan plan) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add(
        plan.kind()
            + ", now "
            + Numbers.count(plan.present().units(), "unit", "units")
            + ", "
            + Numbers.count(plan.presentSeatings(), "seating", "seatings")
            + " in all");
    lines.add(
        row(
            "octave",
            "now",
            "never below",
            "even chance with",
            "nine in ten with",
            Numbers.fixed(planned.limits().differenceDb(), 2) + " dB shown by"));
    for (ZonePlan zone : plan.zones()) {
      lines.add(
          row(
              Texts.range(zone.fromHz(), zone.toHz()),
              Numbers.against(zone.presentHalfDb(), zone.toleranceDb(), 2),
              Numbers.against(zone.neverBelowDb(), zone.toleranceDb(), 2),
              cell(zone, zone.evenChance()),
              cell(zone, zone.cautious()),
              shown(zone)));
    }
    lines.addAll(sentences(plan));
    return lines;
  }

  private static String row(Object... cells) {
    return String.format(Locale.ROOT, "  %-20s %6s %12s  %-17s %-17s %s", cells).stripTrailing();
  }

  private String cell(ZonePlan zone, Optional<Design> design) {
    return switch (zone.outlook()) {
      case MET -> "met";
      case NEVER -> "no plan";
      default -> design.map(PlanWords::shape).orElse("beyond limits");
    };
  }

  private String shown(ZonePlan zone) {
    OptionalInt units =
        zone.unitsToShow(planned.limits().differenceDb(), planned.limits().unitsMax());
    return units.isPresent() ? units.getAsInt() + " units" : "beyond limits";
  }

  private static String shape(Design design) {
    return design.units() + " x (" + design.seatingsFrom() + " + " + design.seatingsTo() + ")";
  }

  /** What the table comes to; without a word on what is met everywhere. */
  List<String> sentences(Plan plan) {
    List<String> lines = new ArrayList<>();
    long met = count(plan, ZonePlan.Outlook.MET);
    if (met == plan.zones().size()) {
      lines.add("  Nothing is needed: every octave meets the tolerance.");
    }
    plan.evenWhole()
        .ifPresent(
            d ->
                lines.add(
                    "  Cheapest for "
                        + zones(plan, z -> z.expects(d))
                        + ", those that can be expected to meet it: "
                        + spelt(d, plan)
                        + "."));
    plan.whole()
        .ifPresent(
            d ->
                lines.add(
                    "  Cheapest for "
                        + zones(plan, z -> z.meetsCautiously(d))
                        + ", those that meet it nine times in ten: "
                        + spelt(d, plan)
                        + "."));
    if (plan.whole().isEmpty() && count(plan, ZonePlan.Outlook.EVEN_CHANCE) > 0) {
      lines.add(
          "  Nothing beyond what is met can be promised nine times in ten: "
              + Numbers.count(plan.present().units(), "unit tells", "units tell")
              + " the variances too badly.");
    }
    incurable(plan).ifPresent(lines::add);
    List<String> next =
        planned.choices().stream()
            .filter(c -> c.kind().equals(plan.kind()))
            .limit(MOST_CHOICES)
            .map(c -> c.unit())
            .toList();
    if (!next.isEmpty()) {
      lines.add("  Of the catalogue, capture next: " + String.join(", ", next) + ".");
    }
    return lines;
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
    String all =
        Numbers.count(d.seatings(), "seating", "seatings")
            + " in all"
            + (more > 0 ? ", " + more + " more than now" : "");
    return Numbers.count(d.units(), "unit", "units")
        + " with "
        + d.seatingsFrom()
        + " seatings on the old fixture and "
        + d.seatingsTo()
        + " on the new one, "
        + all;
  }

  private static Optional<String> incurable(Plan plan) {
    List<FrequencyRange> runs = PlannedStudy.incurable(plan);
    if (runs.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "  As far as "
            + Numbers.count(plan.present().units(), "unit tells", "units tell")
            + ", no number of units and seatings cures "
            + runs.stream()
                .map(r -> Texts.range(r.fromHz(), r.toHz()))
                .collect(Collectors.joining(", "))
            + ": there the units differ by more than the tolerance allows, beyond what their old"
            + " graphs tell. Measure such graphs again.");
  }

  private List<String> howToRead() {
    return List.of(
        "Half-widths are root mean squares over an octave, in dB, so that narrower parts of it may stay"
            + " above the tolerance; a design is units x (seatings on the"
            + " old + on the new fixture), at most "
            + planned.limits().unitsMax()
            + " x ("
            + planned.limits().seatingsMax()
            + " + "
            + planned.limits().seatingsMax()
            + "), the present units and seatings among them.",
        "Even chance: the variances taken as this study found them; about every other study misses."
            + " Nine in ten: the variances of this study, and of what is still to be captured, at their"
            + " 95 % limits, 10 % above the tolerance allowed; on simulated studies nine of ten octaves"
            + " promised so, and more, came within that. A few units can promise little: capture part of"
            + " any plan, then plan again.",
        "Last column: with so many units, seated as now, a paired t test shows a mean difference of "
            + Numbers.fixed(planned.limits().differenceDb(), 2)
            + " dB at a band in nine of ten studies, if it is there.",
        "A plan cuts half-widths only: outside the range of an ear simulator, in declared zones and"
            + " where a resonance wanders, marks stay at caution.");
  }

  /** The same for machines, as JSON. */
  public String json() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("title", planned.outcome().study().title())
        .put("fingerprint", planned.outcome().fingerprint())
        .put("units_max", planned.limits().unitsMax())
        .put("seatings_max", planned.limits().seatingsMax())
        .put("difference_db", planned.limits().differenceDb())
        .put("chance", Plan.CHANCE)
        .put("slack", Plan.SLACK);
    ArrayNode kinds = root.putArray("kinds");
    planned.plans().forEach(plan -> put(kinds.addObject(), plan));
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
              .put("outlook", PlannedStudy.word(zone.outlook()));
      put(z, "even_chance", zone.evenChance());
      put(z, "cautious", zone.cautious());
      zone.unitsToShow(planned.limits().differenceDb(), planned.limits().unitsMax())
          .ifPresent(n -> z.put("units_to_show_difference", n));
    }
    ArrayNode incurable = node.putArray("incurable");
    PlannedStudy.incurable(plan)
        .forEach(r -> incurable.addObject().put("from_hz", r.fromHz()).put("to_hz", r.toHz()));
    ArrayNode next = node.putArray("capture_next");
    planned.choices().stream()
        .filter(c -> c.kind().equals(plan.kind()))
        .forEach(c -> next.add(c.unit()));
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

  /** To 0.1 dB, or to 0.01 dB where that is not the number the lab gave. */
  private static String db(double value) {
    String hundredths = Numbers.fixed(value, 2);
    return (hundredths.endsWith("0") ? Numbers.fixed(value, 1) : hundredths) + " dB";
  }
}
