package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.twinrig.evidence.Plan;
import org.twinrig.internal.Parallel;
import org.twinrig.report.figure.Caption;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.PlanFigure;
import org.twinrig.report.table.PlanResults;

/** What a plan writes: tables, a figure per kind, the run record. */
public final class PlanFolder {
  private PlanFolder() {}

  /**
   * Writes them.
   *
   * @param folder an empty folder
   * @param planned the plans
   * @param threads how many threads to draw on
   * @throws IOException when something cannot be written
   */
  public static void write(Path folder, PlannedStudy planned, RunRecord record, int threads)
      throws IOException {
    PlanResults.write(planned.plans(), planned.limits(), folder);
    Path figures = Files.createDirectories(folder.resolve("figures"));
    for (Figure figure : figures(planned, threads)) {
      Files.writeString(
          figures.resolve(figure.name() + ".svg"), figure.svg(), StandardCharsets.UTF_8);
      Files.write(figures.resolve(figure.name() + ".png"), figure.png());
    }
    record.with(
        "plan",
        node ->
            node.put("units_max", planned.limits().unitsMax())
                .put("seatings_max", planned.limits().seatingsMax())
                .put("study_fingerprint", planned.outcome().fingerprint()));
    record.lap("write");
    record.write(folder);
  }

  private static List<Figure> figures(PlannedStudy planned, int threads) {
    return Parallel.map(
        planned.plans().stream().filter(p -> !p.zones().isEmpty()).toList(),
        threads,
        plan ->
            PlanFigure.of(
                plan,
                PlanResults.seatings(planned.limits()),
                planned.limits().unitsMax(),
                caption(planned, plan)));
  }

  private static Caption caption(PlannedStudy planned, Plan plan) {
    return new Caption(
        plan.kind(),
        plan.present().units(),
        planned.outcome().study().settings().confidence(),
        planned.outcome().fingerprint());
  }
}
