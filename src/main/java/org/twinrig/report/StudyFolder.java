package org.twinrig.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Problem;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.StudyDrawings;
import org.twinrig.report.html.StudyPage;
import org.twinrig.report.table.StudyResults;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Setting;
import org.twinrig.translation.TranslationFile;

/**
 * Everything a study writes: tables, translation, figures, report, and the record of the run.
 *
 * @param outcome what the study found
 * @param problems what was wrong with the lab's files
 * @param threads how many threads to draw on
 */
public record StudyFolder(
    StudyOutcome outcome,
    InputFingerprint fingerprint,
    List<Problem> problems,
    RunRecord record,
    int threads) {

  /**
   * Writes all of it.
   *
   * @param folder an empty folder
   * @throws IOException when something cannot be written
   */
  public void write(Path folder) throws IOException {
    StudyResults.write(folder, outcome);
    Files.writeString(
        folder.resolve("translation.json"),
        TranslationFile.text(outcome.translation()),
        StandardCharsets.UTF_8);
    StudyDrawings drawings = StudyDrawings.of(outcome, threads);
    record.lap("draw");
    Path figures = Files.createDirectory(folder.resolve("figures"));
    List<Figure> all = drawings.all();
    List<byte[]> pictures = Parallel.map(all, threads, Figure::png);
    for (int k = 0; k < all.size(); k++) {
      String name = all.get(k).name();
      Files.writeString(figures.resolve(name + ".svg"), all.get(k).svg(), StandardCharsets.UTF_8);
      Files.write(figures.resolve(name + ".png"), pictures.get(k));
    }
    Files.writeString(
        folder.resolve("report.html"),
        StudyPage.html(outcome, fingerprint, problems, drawings),
        StandardCharsets.UTF_8);
    record.lap("write");
    record.with("study", this::describe).with("settings", this::settings);
    record.with("exclusions", this::exclusions).with("inputs", this::inputs);
    record.write(folder);
  }

  private void describe(ObjectNode node) {
    node.put("title", outcome.study().title())
        .put("from", outcome.study().from().name())
        .put("to", outcome.study().to().name())
        .put("fingerprint", outcome.fingerprint());
  }

  private void settings(ObjectNode node) {
    ObjectMapper json = new ObjectMapper();
    for (Setting<?> setting : Setting.ALL) {
      node.set(setting.key(), json.valueToTree(setting.value(outcome.study().settings())));
    }
  }

  private void exclusions(ObjectNode node) {
    ArrayNode byLab = node.putArray("by_lab");
    outcome.study().captures().stream()
        .filter(c -> c.excludedByLab())
        .forEach(c -> byLab.addObject().put("file", c.file()).put("reason", c.exclude()));
    ArrayNode byRule = node.putArray("by_rule");
    outcome.screening().verdicts().stream()
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
