package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.evidence.PlanLimits;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.PlanFolder;
import org.twinrig.report.PlanWords;
import org.twinrig.report.PlannedStudy;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import org.twinrig.study.DbLimit;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig plan}: how many units and seatings are still needed. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    description =
        "Says, kind by kind and octave by octave, how many units and seatings bring the prediction"
            + " half-width to a tolerance, and where no number of them does.")
final class PlanCommand implements Callable<Integer>, WithCommonOptions {
  /** More units than this a lab rarely has. */
  private static final int DEFAULT_UNITS_MAX = 60;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

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

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  PlanCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput, CannotWrite {
    checkOptions();
    RunRecord record = new RunRecord(Version.text(), "plan");
    StudySteps.Declared declared =
        StudySteps.declare(study, StudySteps.Way.plain(dataRoots), "plan", common);
    ResultFolder place =
        out == null
            ? null
            : common.results(out, ResultFolder.Kind.PLAN, RunInputs.of(declared.study()));
    StudyOutcome outcome = declared.analyse().outcome();
    record.lap("analyse");
    PlannedStudy planned =
        PlannedStudy.of(outcome, limits(outcome), UnitsOfCatalogue.worth(outcome, common));
    record.lap("plan");
    if (place != null) {
      place.write(folder -> write(folder, planned, record));
    }
    PlanWords words = new PlanWords(planned);
    if (json) {
      common.json(words.json());
    } else {
      words.lines().forEach(common.out()::println);
      if (out != null) {
        common.out().println("Tables and figures: " + out);
      }
    }
    return 0;
  }

  private Path write(Path folder, PlannedStudy planned, RunRecord record) throws IOException {
    PlanFolder.write(folder, planned, record, common.threads());
    return folder;
  }

  private void checkOptions() {
    refuse(
        toleranceDb != null && !(toleranceDb > 0 && Double.isFinite(toleranceDb)),
        "--tolerance must be above 0 dB, but is " + toleranceDb);
    refuse(
        seatingsMax < PlanLimits.FEWEST_SEATINGS,
        "--seatings-max must be 2 or more, because with one seating its scatter is not known, but"
            + " is "
            + seatingsMax);
    refuse(unitsMax != null && unitsMax < 1, "--units-max must be 1 or more, but is " + unitsMax);
  }

  private PlanLimits limits(StudyOutcome outcome) throws UnusableInput {
    KindOutcome largest = outcome.kinds().get(0);
    for (KindOutcome kind : outcome.kinds()) {
      largest = kind.paired().units().size() > largest.paired().units().size() ? kind : largest;
    }
    int present = largest.paired().units().size();
    int minUnits = outcome.study().settings().minUnits();
    refuse(
        unitsMax != null && unitsMax < present,
        "--units-max is "
            + unitsMax
            + ", but the study has "
            + present
            + " units of "
            + largest.kind()
            + " already; give "
            + present
            + " or more");
    refuse(
        unitsMax != null && unitsMax < minUnits,
        "--units-max is "
            + unitsMax
            + ", but the study asks for min_units: "
            + minUnits
            + "; give "
            + minUnits
            + " or more");
    DbLimit tolerance =
        Optional.ofNullable(toleranceDb)
            .map(DbLimit::everywhere)
            .orElse(outcome.study().settings().tolerance().reliable());
    return new PlanLimits(
        tolerance,
        outcome.study().settings().tolerance().equivalenceDb(),
        minUnits,
        unitsMax == null ? Math.max(DEFAULT_UNITS_MAX, Math.max(present, minUnits)) : unitsMax,
        seatingsMax);
  }

  private void refuse(boolean wrong, String text) {
    if (wrong) {
      throw new CommandLine.ParameterException(spec.commandLine(), text);
    }
  }
}
