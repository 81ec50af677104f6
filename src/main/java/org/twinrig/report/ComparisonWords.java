package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.MeanDifference;
import org.twinrig.report.html.ComparisonSentences;

/** What a comparison of studies found, as sentences and as JSON for a machine. */
public record ComparisonWords(StudyComparison comparison) {
  /** All of it, one sentence or more a line. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(ComparisonSentences.lead(comparison));
    for (StudyComparison.Kind kind : comparison.kinds()) {
      kind.pairs().forEach(pair -> lines.add(ComparisonSentences.verdict(pair)));
    }
    lines.addAll(ComparisonSentences.remarks(comparison));
    return lines;
  }

  /** The same for machines, as JSON. */
  public String json() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    ArrayNode studies = root.putArray("studies");
    for (StudyComparison.Named study : comparison.studies()) {
      studies
          .addObject()
          .put("name", study.name())
          .put("fingerprint", study.outcome().fingerprint());
    }
    ArrayNode pairs = root.putArray("pairs");
    for (StudyComparison.Kind kind : comparison.kinds()) {
      for (StudyComparison.Pair pair : kind.pairs()) {
        ObjectNode node =
            pairs
                .addObject()
                .put("kind", kind.kind())
                .put("first", pair.first())
                .put("second", pair.second())
                .put("equivalence_db", pair.difference().limitDb())
                .put("confidence", pair.difference().confidence());
        put(node.putArray("different"), pair, MeanDifference.Verdict::different);
        put(node.putArray("equivalent"), pair, MeanDifference.Verdict::equivalent);
      }
    }
    ArrayNode lonely = root.putArray("kinds_in_one_study");
    comparison
        .lonely()
        .forEach((kind, study) -> lonely.addObject().put("kind", kind).put("study", study));
    return root.toPrettyString();
  }

  private static void put(
      ArrayNode runs, StudyComparison.Pair pair, Predicate<MeanDifference.Verdict> what) {
    pair.difference()
        .runs(what)
        .forEach(r -> runs.addObject().put("from_hz", r.fromHz()).put("to_hz", r.toHz()));
  }
}
