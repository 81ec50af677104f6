package org.twinrig.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.proof.PlanProof;
import org.twinrig.proof.PlanProofRow;
import org.twinrig.proof.PlanTrials;
import org.twinrig.proof.ProofPlan;
import org.twinrig.report.PlanProofWords;
import org.twinrig.report.table.PlanProofTable;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.study.Settings;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code twinrig prove-plan}: whether plans hold what they promise. */
@Command(
    name = "prove-plan",
    mixinStandardHelpOptions = true,
    description =
        "Tries plans on simulated studies: draws small studies, plans each, goes on with it to the"
            + " planned size, and counts how often it reaches the tolerance.")
final class ProvePlanCommand implements Callable<Integer>, WithCommonOptions {
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--studies",
      paramLabel = "N",
      required = true,
      description = "How many small studies to draw.")
  private int studies;

  @Option(
      names = "--units",
      paramLabel = "N",
      description = "Units per kind in a small study (default: 8).")
  private int units = 8;

  @Option(
      names = "--seatings",
      paramLabel = "N",
      description = "Seatings of every unit on each fixture in a small study (default: 2).")
  private int seatings = 2;

  @Option(
      names = "--tolerance",
      paramLabel = "DB",
      description = "The half-width to be reached in dB (default: 2).")
  private double toleranceDb = 2;

  @Option(
      names = "--kinds",
      paramLabel = "KIND",
      split = ",",
      description =
          "Which kinds, separated by commas (default: open over-ear, closed over-ear, in-ear).")
  private List<String> kinds;

  @Mixin private ProofOptions proof;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  ProvePlanCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws CannotWrite {
    PlanTrials trials = trials();
    Optional<OutputTable> table = proof.table();
    List<PlanProofRow> rows = PlanProof.run(trials, common.threads(), this::progress);
    if (table.isPresent()) {
      table.get().write(file -> PlanProofTable.write(trials, rows, file));
    }
    new PlanProofWords(trials, rows).lines().forEach(common.out()::println);
    return 0;
  }

  private void progress(int done) {
    if (ProofOptions.isTenth(done, studies)) {
      common.progress(done + " of " + studies + " studies.");
    }
  }

  private PlanTrials trials() {
    proof.refuse(
        studies < ProofPlan.FEWEST_STUDIES, "--studies must be 2 or more, but is " + studies);
    int least = Settings.defaults().minUnits();
    proof.refuse(
        units < least || units > PlanTrials.MOST_UNITS,
        "--units must be " + least + " to " + PlanTrials.MOST_UNITS + ", but is " + units);
    proof.refuse(seatings < 2, "--seatings must be 2 or more, but is " + seatings);
    proof.refuse(
        !(toleranceDb > 0 && Double.isFinite(toleranceDb)),
        "--tolerance must be above 0 dB, but is " + toleranceDb);
    PlanTrials trials =
        PlanTrials.standard(studies, proof.seed())
            .withPilot(units, seatings)
            .withTolerance(toleranceDb);
    if (kinds == null) {
      return trials;
    }
    List<SimulatedKind> named = SimulatedKinds.named(kinds, spec.commandLine());
    proof.refuse(
        named.stream().distinct().count() < named.size(), "--kinds names a kind more than once");
    return trials.withKinds(named);
  }
}
