package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.Figure;
import org.twinrig.proof.Promise;
import org.twinrig.proof.ProofOutcome;
import org.twinrig.proof.ProofPlan;
import org.twinrig.proof.ProofRow;
import org.twinrig.study.PredictionModel;

/**
 * What an interval proof gave, as a table and sentences for a terminal and as JSON for a machine.
 *
 * @param outcome what it gave
 */
public record ProofWords(ProofOutcome outcome) {
  /** With fewer studies the standard errors themselves are too unsure to judge by. */
  private static final int ENOUGH_STUDIES = 20;

  /**
   * Table and sentences; the last sentences say whether the promise is kept.
   *
   * @return line by line
   */
  public List<String> lines() {
    List<String> lines = new ArrayList<>(table());
    lines.add("");
    lines.addAll(sentences());
    return lines;
  }

  private List<String> table() {
    List<String> lines = new ArrayList<>();
    String tried = word(outcome.plan().model());
    String block = "";
    for (ProofRow row : outcome.rows()) {
      String head =
          row.place().units()
              + " units of each kind in the study, old graphs of "
              + Numbers.count(row.place().graphSeatings(), "seating", "seatings")
              + ", "
              + Numbers.count(row.studies(), "study", "studies");
      if (!head.equals(block)) {
        block = head;
        lines.add("");
        lines.add(head);
        lines.add(
            format(
                "kind",
                "region",
                "offset rms dB",
                tried + " rms dB",
                tried + "/offset",
                "offset in %",
                tried + " in %",
                "half-widths dB"));
      }
      lines.add(line(row));
    }
    return lines;
  }

  private List<PredictionModel> models() {
    return List.of(PredictionModel.OFFSET, outcome.plan().model());
  }

  private static String line(ProofRow row) {
    return format(
        row.place().kind(),
        row.place().span().word(),
        withError(row.offset().rmsDb(), 1, 3),
        withError(row.tried().rmsDb(), 1, 3),
        withError(row.ratio(), 1, 3),
        withError(row.offset().coverage(), 100, 1),
        withError(row.tried().coverage(), 100, 1),
        Numbers.fixed(row.offset().meanHalfDb(), 2)
            + ", "
            + Numbers.fixed(row.tried().meanHalfDb(), 2));
  }

  private static String format(Object... cells) {
    return String.format(Locale.ROOT, "%-16s %-16s %16s %16s %16s %14s %14s %15s", cells);
  }

  private static String withError(Figure figure, double scale, int decimals) {
    return Numbers.fixed(figure.value() * scale, decimals)
        + " ± "
        + Numbers.fixed(figure.monteCarloSe() * scale, decimals);
  }

  private List<String> sentences() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "± is one Monte Carlo standard error between studies; `in` is how often unseen units lie"
            + " inside their prediction interval.");
    int studies = outcome.plan().studies();
    if (studies < ENOUGH_STUDIES) {
      lines.add(
          "With "
              + studies
              + " studies nothing is settled: the standard errors need "
              + ENOUGH_STUDIES
              + " or more.");
    }
    lines.add(
        "The promise of a "
            + percent(outcome.confidence(), 0)
            + " prediction interval: unseen units lie inside it "
            + Numbers.fixed(Promise.LEAST_AVERAGED * 100, 0)
            + " to "
            + percent(Promise.MOST_AVERAGED, 0)
            + " of the time averaged over the bands, and no less than "
            + percent(Promise.LEAST_IN_A_REGION, 0)
            + " in any region, for every number of units, kind and sort of old graph.");
    models().forEach(model -> lines.addAll(verdict(outcome.promise(model), outcome.confidence())));
    return lines;
  }

  private static List<String> verdict(Promise promise, double confidence) {
    List<String> lines = new ArrayList<>();
    Figure region = promise.leastRegion().under(promise.model()).coverage();
    lines.add(
        "The model `"
            + word(promise.model())
            + "` "
            + (promise.kept()
                ? "keeps it in every row"
                : "breaks it in " + Numbers.count(promise.breaches().size(), "row", "rows"))
            + ": stated "
            + percent(confidence, 0)
            + ", averaged over the bands "
            + averaged(promise, promise.leastAveraged())
            + " to "
            + averaged(promise, promise.mostAveraged())
            + " %, least in any region "
            + atLeast(region.value(), Promise.LEAST_IN_A_REGION)
            + error(region)
            + " ("
            + where(promise.leastRegion())
            + ").");
    promise.breaches().forEach(breach -> lines.add("  " + sentence(breach)));
    return lines;
  }

  private static String averaged(Promise promise, ProofRow row) {
    double value = row.under(promise.model()).coverage().value();
    double middle = (Promise.LEAST_AVERAGED + Promise.MOST_AVERAGED) / 2;
    return value < middle
        ? atLeast(value, Promise.LEAST_AVERAGED)
        : atMost(value, Promise.MOST_AVERAGED);
  }

  private static String sentence(Promise.Breach breach) {
    double share = breach.coverage().value();
    return where(breach.row())
        + ": "
        + (breach.below() ? atLeast(share, breach.bound()) : atMost(share, breach.bound()))
        + error(breach.coverage())
        + (breach.below() ? ", but at least " : ", but at most ")
        + percent(breach.bound(), 0)
        + " is promised"
        + (breach.perhapsChance() ? " (within two standard errors: more studies must tell)." : ".");
  }

  /** Per cent on the same side of the printed bound as the share is of the bound. */
  private static String atMost(double share, double bound) {
    return Numbers.against(share * 100, bound * 100, 1);
  }

  /** The same for a lower bound: what is above it, mirrored, is below. */
  private static String atLeast(double share, double bound) {
    return Numbers.against(-share * 100, -bound * 100, 1).replace("-", "");
  }

  private static String error(Figure coverage) {
    return " ± " + percent(coverage.monteCarloSe(), 1);
  }

  private static String where(ProofRow row) {
    return row.place().units()
        + " units, "
        + row.place().kind()
        + ", old graphs of "
        + Numbers.count(row.place().graphSeatings(), "seating", "seatings")
        + ", "
        + row.place().span().word();
  }

  private static String percent(double share, int decimals) {
    return Numbers.fixed(share * 100, decimals) + " %";
  }

  private static String word(PredictionModel model) {
    return model.name().toLowerCase(Locale.ROOT);
  }

  /**
   * The same for machines.
   *
   * @return JSON
   */
  public String json() {
    ProofPlan plan = outcome.plan();
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("studies", plan.studies())
        .put("seed", plan.seed())
        .put("seatings", plan.seatings())
        .put("unseen_per_kind", plan.unseenPerKind())
        .put("confidence", outcome.confidence());
    ObjectNode kept = root.putObject("promise_kept");
    models().forEach(model -> kept.put(word(model), outcome.promise(model).kept()));
    ArrayNode rows = root.putArray("rows");
    for (ProofRow row : outcome.rows()) {
      ObjectNode node =
          rows.addObject()
              .put("units", row.place().units())
              .put("kind", row.place().kind())
              .put("graph_seatings", row.place().graphSeatings())
              .put("region", row.place().span().word())
              .put("from_hz", row.place().span().fromHz())
              .put("to_hz", row.place().span().toHz())
              .put("judgements", row.judgements());
      put(node, "ratio", row.ratio());
      models().forEach(model -> put(node.putObject(word(model)), row.under(model)));
    }
    return root.toPrettyString();
  }

  private static void put(ObjectNode node, ProofRow.ByModel figures) {
    put(node, "rms_db", figures.rmsDb());
    put(node, "coverage", figures.coverage());
    node.put("below", figures.below()).put("half_db", figures.meanHalfDb());
  }

  private static void put(ObjectNode node, String name, Figure figure) {
    node.put(name, figure.value()).put(name + "_mc_se", figure.monteCarloSe());
  }
}
