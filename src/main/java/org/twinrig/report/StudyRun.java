package org.twinrig.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.html.Page;
import org.twinrig.report.html.StudyPage;
import org.twinrig.report.table.StudyResults;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Setting;
import org.twinrig.study.Study;
import org.twinrig.translation.TranslationFile;

/**
 * A study run once: its captures named by their fingerprint and analysed, what was found told and
 * written.
 *
 * @param outcome what was found; nothing when the input cannot give a result
 * @param problems all there is to say of the lab's files, from reading to marking, in that order
 */
public record StudyRun(
    Study study,
    InputFingerprint fingerprint,
    Optional<StudyOutcome> outcome,
    List<Problem> problems)
    implements Report {
  public StudyRun {
    problems = List.copyOf(problems);
  }

  /**
   * Analyses a study on some threads; kinds that a change since an earlier outcome does not touch
   * are taken over from it.
   *
   * @throws UnusableInput when a file of the study has gone since it was read
   */
  public static StudyRun of(
      Findings<Study> declared,
      Findings<List<Capture>> captures,
      Optional<StudyOutcome> earlier,
      int threads)
      throws UnusableInput {
    InputFingerprint fingerprint = InputFingerprint.of(declared.value(), captures.value());
    return of(declared, captures, fingerprint, earlier, threads);
  }

  /** The same of captures that go by a fingerprint of their own. */
  public static StudyRun of(
      Findings<Study> declared,
      Findings<List<Capture>> captures,
      InputFingerprint fingerprint,
      Optional<StudyOutcome> earlier,
      int threads) {
    Study study = declared.value();
    String name = fingerprint.shortText();
    List<Problem> problems = new ArrayList<>(declared.problems());
    problems.addAll(captures.problems());
    Optional<StudyOutcome> outcome = Optional.empty();
    try {
      outcome =
          Optional.of(
              earlier.isPresent()
                  ? Analysis.again(earlier.get(), study, captures.value(), name, threads)
                  : Analysis.of(study, captures.value(), name, threads));
      problems.addAll(outcome.get().problems());
    } catch (UnusableInput e) {
      problems.addAll(e.problems());
    }
    return new StudyRun(study, fingerprint, outcome, problems);
  }

  /**
   * What was found.
   *
   * @throws UnusableInput with all problems when the input cannot give a result
   */
  public StudyOutcome found() throws UnusableInput {
    return outcome.orElseThrow(() -> new UnusableInput(problems));
  }

  @Override
  public List<String> sentences(Optional<Path> results) {
    return lines(
        outcome.orElseThrow(), count(Problem.Kind.REFUSED), count(Problem.Kind.NOTE), results);
  }

  /** What an outcome comes to, in plain sentences, one a line. */
  public static List<String> sentences(StudyOutcome outcome) {
    return lines(outcome, 0, 0, Optional.empty());
  }

  private static List<String> lines(
      StudyOutcome outcome, int refused, int notes, Optional<Path> results) {
    return Page.lines(
        "terminal/study.jte",
        Map.of(
            "outcome", outcome,
            "refused", refused,
            "notes", notes,
            "report", Report.page(results)));
  }

  private int count(Problem.Kind kind) {
    return (int) problems.stream().filter(p -> p.kind() == kind).count();
  }

  @Override
  public String json(Optional<Path> results) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("title", study.title()).put("fingerprint", fingerprint.shortText());
    results.ifPresent(folder -> root.put("results", folder.toString()));
    ArrayNode kinds = root.putArray("kinds");
    for (KindOutcome kind : outcome.orElseThrow().kinds()) {
      kinds
          .addObject()
          .put("kind", kind.kind())
          .put("units", kind.paired().units().size())
          .put("reliable_octaves", octaves(kind, Mark.RELIABLE))
          .put("caution_octaves", octaves(kind, Mark.CAUTION))
          .put("unreliable_octaves", octaves(kind, Mark.UNRELIABLE));
    }
    ArrayNode doubts = root.putArray("doubts");
    outcome.orElseThrow().doubts().stream().map(Doubt::sentence).forEach(doubts::add);
    ArrayNode texts = root.putArray("problems");
    problems.stream().map(Problem::text).forEach(texts::add);
    return root.toPrettyString();
  }

  private static String octaves(KindOutcome kind, Mark mark) {
    return Numbers.fixed(kind.transfer().octaves(mark), 1);
  }

  @Override
  public void write(Path folder, RunRecord record, int threads) throws IOException {
    StudyOutcome found = outcome.orElseThrow();
    StudyResults.write(folder, found);
    Files.writeString(
        folder.resolve("translation.json"), TranslationFile.text(found.translation()));
    StudyDrawings drawings = StudyDrawings.of(found, threads);
    record.lap("draw");
    Figure.write(folder, drawings.all(), threads);
    Files.writeString(
        folder.resolve("report.html"), StudyPage.html(found, fingerprint, problems, drawings));
    record.lap("write");
    record.with("study", this::describe).with("settings", this::settings);
    record.with("exclusions", node -> exclusions(node, found)).with("inputs", this::inputs);
    record.write(folder);
  }

  private void describe(ObjectNode node) {
    node.put("title", study.title())
        .put("from", study.from().name())
        .put("to", study.to().name())
        .put("fingerprint", fingerprint.shortText());
  }

  private void settings(ObjectNode node) {
    ObjectMapper json = new ObjectMapper();
    for (Setting<?> setting : Setting.ALL) {
      node.set(setting.key(), json.valueToTree(setting.value(study.settings())));
    }
  }

  private void exclusions(ObjectNode node, StudyOutcome found) {
    ArrayNode byLab = node.putArray("by_lab");
    study.captures().stream()
        .filter(c -> c.excludedByLab())
        .forEach(c -> byLab.addObject().put("file", c.file()).put("reason", c.exclude()));
    ArrayNode byRule = node.putArray("by_rule");
    found.screening().verdicts().stream()
        .filter(v -> v.excluded())
        .forEach(
            v -> byRule.addObject().put("file", v.capture().file()).put("reason", v.sentence()));
    ArrayNode refused = node.putArray("refused");
    problems.stream()
        .filter(p -> p.kind() == Problem.Kind.REFUSED)
        .map(Problem::text)
        .forEach(refused::add);
  }

  private void inputs(ObjectNode node) {
    fingerprint.inputs().forEach(i -> node.put(i.name(), i.sha256()));
  }
}
