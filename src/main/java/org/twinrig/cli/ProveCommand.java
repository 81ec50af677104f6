package org.twinrig.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.proof.IntervalProof;
import org.twinrig.proof.ProofOutcome;
import org.twinrig.proof.ProofPlan;
import org.twinrig.report.ProofWords;
import org.twinrig.report.table.ProofTable;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Settings;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code twinrig prove}: whether prediction intervals hold units a study never saw. */
@Command(
    name = "prove",
    mixinStandardHelpOptions = true,
    description = {
      "Tries the prediction intervals on simulated studies: draws studies, analyses each, and counts"
          + " how often units that no fit saw fall inside their intervals, with the plain offset and"
          + " with another model."
    })
final class ProveCommand implements Callable<Integer>, WithCommonOptions {
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--studies",
      paramLabel = "N",
      required = true,
      description = "How many studies to draw for each number of units.")
  private int studies;

  @Option(
      names = "--units",
      paramLabel = "N",
      split = ",",
      description = "Units per kind, separated by commas (default: 8,16,30).")
  private List<Integer> units;

  @Option(
      names = "--kinds",
      paramLabel = "KIND",
      split = ",",
      description =
          "Which kinds, separated by commas (default: open over-ear, closed over-ear, in-ear).")
  private List<String> kinds;

  @Option(
      names = "--seatings",
      paramLabel = "N",
      description = "Seatings of every unit on each fixture (default: 5).")
  private Integer seatings;

  @Option(
      names = "--model",
      paramLabel = "MODEL",
      description =
          "What is tried beside the plain offset: auto, window or average (default: auto).")
  private PredictionModel model = PredictionModel.AUTO;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private ProofOptions proof;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  ProveCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws CannotWrite {
    ProofPlan plan = plan();
    Optional<OutputTable> table = proof.table();
    ProofOutcome outcome = IntervalProof.run(plan, common.threads(), this::progress);
    if (table.isPresent()) {
      table.get().write(file -> ProofTable.write(outcome, file));
    }
    ProofWords words = new ProofWords(outcome);
    if (json) {
      common.json(words.json());
    } else {
      words.lines().forEach(common.out()::println);
    }
    return 0;
  }

  private void progress(int unitsPerKind, int done) {
    if (ProofOptions.isTenth(done, studies)) {
      common.progress(unitsPerKind + " units per kind: " + done + " of " + studies + " studies.");
    }
  }

  private ProofPlan plan() {
    ProofPlan plan =
        ProofPlan.standard(
            proof.atLeast(ProofPlan.FEWEST_STUDIES, studies, "--studies"), proof.seed());
    if (units != null) {
      units.forEach(n -> proof.atLeast(Settings.FEWEST_UNITS, n, "--units"));
      once(units, "--units");
      plan = plan.withUnitsPerKind(units);
    }
    if (kinds != null) {
      List<SimulatedKind> named = SimulatedKinds.named(kinds, spec.commandLine());
      once(named.stream().map(SimulatedKind::label).toList(), "--kinds");
      plan = plan.withKinds(named);
    }
    if (model == PredictionModel.OFFSET) {
      throw new CommandLine.ParameterException(
          spec.commandLine(),
          "--model names what is tried beside the offset: give auto, window or average");
    }
    plan = plan.withModel(model);
    return seatings == null ? plan : plan.withSeatings(proof.atLeast(1, seatings, "--seatings"));
  }

  private void once(List<?> values, String option) {
    for (Object value : values) {
      if (values.stream().filter(value::equals).count() > 1) {
        throw new CommandLine.ParameterException(
            spec.commandLine(), option + " names " + value + " more than once");
      }
    }
  }
}
