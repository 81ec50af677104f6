package org.twinrig.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Mark;
import org.twinrig.report.html.CatalogueSentences;
import org.twinrig.report.html.StudySentences;

/** What a study found, in words for a terminal and as JSON for a machine. */
public record StudyWords(StudyOutcome outcome) {

  /** Plain sentences, one a line. */
  public List<String> sentences() {
    List<String> lines = new ArrayList<>();
    lines.add(
        outcome.study().title()
            + ": from "
            + outcome.study().from().label()
            + " to "
            + outcome.study().to().label()
            + ".");
    for (KindOutcome kind : outcome.kinds()) {
      lines.add(
          kind.kind()
              + ", "
              + Numbers.count(kind.paired().units().size(), "unit", "units")
              + ": "
              + octaves(kind, Mark.RELIABLE)
              + " octaves reliable, "
              + octaves(kind, Mark.CAUTION)
              + " with caution, "
              + octaves(kind, Mark.UNRELIABLE)
              + " unreliable.");
    }
    lines.addAll(CatalogueSentences.tooFewUnits(outcome.translation()));
    lines.add(
        "Screening doubts "
            + Numbers.count(StudySentences.doubted(outcome), "capture", "captures")
            + " and leaves out "
            + StudySentences.leftOut(outcome)
            + "; the lab left out "
            + outcome.study().leftOutByLab()
            + ".");
    return lines;
  }

  /** The same for machines, as JSON; {@code results} is the result folder. */
  public String json(String results, List<Problem> problems) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("title", outcome.study().title())
        .put("fingerprint", outcome.fingerprint())
        .put("results", results);
    ArrayNode kinds = root.putArray("kinds");
    for (KindOutcome kind : outcome.kinds()) {
      kinds
          .addObject()
          .put("kind", kind.kind())
          .put("units", kind.paired().units().size())
          .put("reliable_octaves", octaves(kind, Mark.RELIABLE))
          .put("caution_octaves", octaves(kind, Mark.CAUTION))
          .put("unreliable_octaves", octaves(kind, Mark.UNRELIABLE));
    }
    ArrayNode texts = root.putArray("problems");
    problems.stream().map(Problem::text).forEach(texts::add);
    return root.toPrettyString();
  }

  private static String octaves(KindOutcome kind, Mark mark) {
    return Numbers.fixed(kind.transfer().octaves(mark), 1);
  }
}
