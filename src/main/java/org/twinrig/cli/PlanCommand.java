package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.PlanReport;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import org.twinrig.report.table.CatalogueOverview;
import org.twinrig.study.DbLimit;
import org.twinrig.study.Tolerance;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Chain;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig plan}: how many units and seatings are still needed. */
@Command(
    name = "plan",
    description =
        "Says, kind by kind and octave by octave, how many units and seatings bring the prediction"
            + " half-width to a tolerance, and where no number of them does.")
final class PlanCommand extends TwinrigCommand {
  /** More units than this a lab rarely has. */
  private static final int DEFAULT_UNITS_MAX = 60;

  @Parameters(
      paramLabel = "STUDY_DIR",
      description = "The folder of the study, with its study.yaml.")
  private Path study;

  @Option(
      names = "--tolerance",
      paramLabel = "DB",
      description = "The half-width to be reached in dB (default: the study's reliable_db).")
  private Double toleranceDb;

  @Option(
      names = "--units-max",
      paramLabel = "N",
      description = "The most units of a kind a plan may ask for (default: 60, or as many as now).")
  private Integer unitsMax;

  @Option(
      names = "--seatings-max",
      paramLabel = "N",
      description = "The most seatings of a unit on either fixture (default: 10).")
  private int seatingsMax = 10;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Also write plan.csv, plan-bands.csv, plan-curves.csv and figures here.")
  private Path out;

  @Option(names = "--json", description = "Print the plan as JSON.")
  private boolean json;

  @Mixin private DataRoots dataRoots;

  @Override
  public Integer call() throws UnusableInput {
    checkOptions();
    RunRecord record = record();
    DeclaredStudy declared = DeclaredStudy.of(study, dataRoots.folders, this);
    Optional<ResultFolder> place =
        wanted(out, ResultFolder.Kind.PLAN, RunInputs.of(declared.study()));
    StudyOutcome outcome = declared.analyse(false).found();
    record.lap("analyse");
    PlanReport planned = PlanReport.of(outcome, limits(outcome), worthCapturing(outcome));
    record.lap("plan");
    give(planned, place, record, json);
    return 0;
  }

  /** Units of the study's catalogue; its graphs are read, none is written. */
  private List<UnitsToMeasure.Choice> worthCapturing(StudyOutcome outcome) throws UnusableInput {
    if (outcome.study().catalogue().isEmpty()) {
      return List.of();
    }
    Path file = outcome.study().catalogue().get();
    progress("Reading the catalogue.");
    try {
      Findings<CatalogueRun.Outcome> run =
          Chain.of(Chain.Link.of(outcome.translation()))
              .run(
                  file,
                  CatalogueReader.read(file, file.toString()),
                  threads(),
                  (graph, came) -> {});
      refusals(run.problems());
      return CatalogueOverview.of(outcome.translation(), run.value()).choices();
    } catch (IOException e) {
      throw cannot(file, "could not be read", e);
    }
  }

  private void checkOptions() {
    refuse(
        toleranceDb != null && !(toleranceDb > 0 && Double.isFinite(toleranceDb)),
        "--tolerance must be above 0 dB, but is " + toleranceDb);
    refuse(
        seatingsMax < PlanLimits.FEWEST_SEATINGS,
        "--seatings-max must be 2 or more, because with one seating its scatter is not known, but is "
            + seatingsMax);
    refuse(unitsMax != null && unitsMax < 1, "--units-max must be 1 or more, but is " + unitsMax);
  }

  private PlanLimits limits(StudyOutcome outcome) throws UnusableInput {
    KindOutcome largest =
        Collections.max(outcome.kinds(), Comparator.comparing(k -> k.paired().units().size()));
    int present = largest.paired().units().size();
    int minUnits = outcome.study().settings().minUnits();
    refuse(
        unitsMax != null && unitsMax < present,
        "--units-max is %s, but the study has %s units of %s already; give %s or more"
            .formatted(unitsMax, present, largest.kind(), present));
    refuse(
        unitsMax != null && unitsMax < minUnits,
        "--units-max is %s, but the study asks for min_units: %s; give %s or more"
            .formatted(unitsMax, minUnits, minUnits));
    Tolerance tolerance = outcome.study().settings().tolerance();
    return new PlanLimits(
        toleranceDb == null ? tolerance.reliable() : DbLimit.everywhere(toleranceDb),
        tolerance.equivalenceDb(),
        minUnits,
        unitsMax == null ? Math.max(DEFAULT_UNITS_MAX, Math.max(present, minUnits)) : unitsMax,
        seatingsMax);
  }
}
