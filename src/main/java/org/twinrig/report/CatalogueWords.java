package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.report.html.CatalogueSentences;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;
import org.twinrig.translation.Translation;

/**
 * What became of a catalogue, in words for a terminal and as JSON for a machine.
 *
 * @param catalogue its name in messages
 * @param outcome what became of it
 * @param translation what was applied
 * @param folder where the results are
 */
public record CatalogueWords(
    String catalogue,
    Findings<CatalogueRun.Outcome> outcome,
    Translation translation,
    Path folder) {

  /**
   * Notes on the catalogue itself. Those on how each graph's file was taken stand in the report.
   */
  public List<Problem> notes() {
    return outcome.problems().stream()
        .filter(p -> p.kind() == Problem.Kind.NOTE && p.source().equals(catalogue))
        .toList();
  }

  /** Plain sentences, one a line; in = out + refused stands in the first. */
  public List<String> sentences() {
    CatalogueRun.Outcome done = outcome.value();
    List<String> lines = new ArrayList<>();
    lines.add(
        "Of "
            + Numbers.count(done.rows(), "graph", "graphs")
            + ", "
            + done.lines().size()
            + " re-expressed and "
            + done.refused()
            + " refused.");
    lines.add(
        "Re-expressed, "
            + count(Decision.PUBLISH)
            + " may be published without marks, "
            + count(Decision.PUBLISH_WITH_MARKS)
            + " with their marks; "
            + count(Decision.RE_MEASURE)
            + " must be measured again"
            + withoutKind()
            + ".");
    lines.addAll(CatalogueSentences.tooFewUnits(translation));
    lines.add("Report: " + folder.resolve("report.html"));
    return lines;
  }

  /** The same for machines, as JSON. */
  public String json() {
    CatalogueRun.Outcome done = outcome.value();
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("graphs", done.rows())
        .put("translated", done.lines().size())
        .put("refused", done.refused())
        .put("publish", count(Decision.PUBLISH))
        .put("publish_with_marks", count(Decision.PUBLISH_WITH_MARKS))
        .put("re_measure", count(Decision.RE_MEASURE))
        .put("report", folder.resolve("report.html").toString());
    ArrayNode tooFew = root.putArray("kinds_with_too_few_units");
    translation.kindsWithTooFewUnits().forEach(k -> tooFew.add(k.kind()));
    ArrayNode problems = root.putArray("problems");
    outcome.refused().stream().map(Problem::text).forEach(problems::add);
    ArrayNode notes = root.putArray("notes");
    notes().stream().map(Problem::text).forEach(notes::add);
    return root.toPrettyString();
  }

  /** Graphs of a kind the study does not have are measured again for that alone. */
  private String withoutKind() {
    long strange =
        outcome.value().lines().stream()
            .filter(l -> l.reasons().contains(Reason.KIND_NOT_IN_THE_STUDY))
            .count();
    return strange == 0 ? "" : ", " + strange + " of them for want of their kind in the study";
  }

  private long count(Decision decision) {
    return outcome.value().lines().stream().filter(l -> l.decision() == decision).count();
  }
}
