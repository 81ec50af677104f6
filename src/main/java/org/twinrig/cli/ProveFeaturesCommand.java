package org.twinrig.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.twinrig.proof.FeaturePlan;
import org.twinrig.proof.FeatureProof;
import org.twinrig.proof.FeatureRow;
import org.twinrig.report.FeatureProofWords;
import org.twinrig.report.table.FeatureProofTable;
import org.twinrig.simulation.FixturePair;
import org.twinrig.study.Settings;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * {@code twinrig prove-features}: whether shared features are found, and none that is not there.
 */
@Command(
    name = "prove-features",
    mixinStandardHelpOptions = true,
    description = {
      "Looks for features that units share in simulated studies: on fixtures that differ by a planted"
          + " peak or notch, and on fixtures that are alike."
    })
final class ProveFeaturesCommand implements Callable<Integer>, WithCommonOptions {
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--studies",
      paramLabel = "N",
      required = true,
      description = "How many studies to draw for each number of units and pair of fixtures.")
  private int studies;

  @Option(
      names = "--units",
      paramLabel = "N",
      split = ",",
      description = "Units per kind, separated by commas (default: 8,12,16,30).")
  private List<Integer> units;

  @Option(
      names = "--fixtures",
      paramLabel = "PAIR",
      split = ",",
      description =
          "Which pairs of fixtures, separated by commas: plate to head, alike, peak on new, notch on"
              + " old, peak and notch (default: all).")
  private List<String> fixtures;

  @Mixin private ProofOptions proof;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  ProveFeaturesCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws CannotWrite {
    FeaturePlan plan = plan();
    Optional<OutputTable> table = proof.table();
    List<FeatureRow> rows =
        FeatureProof.run(
            plan,
            common.threads(),
            (n, fixtures) ->
                common.progress(n + " units per kind, fixtures " + fixtures.word() + ": done."));
    if (table.isPresent()) {
      table.get().write(file -> FeatureProofTable.write(rows, file));
    }
    FeatureProofWords.lines(rows).forEach(common.out()::println);
    return 0;
  }

  private FeaturePlan plan() {
    FeaturePlan plan = FeaturePlan.standard(proof.atLeast(1, studies, "--studies"), proof.seed());
    if (units != null) {
      units.forEach(n -> proof.atLeast(Settings.FEWEST_UNITS, n, "--units"));
      plan = plan.withUnitsPerKind(units.stream().distinct().toList());
    }
    return fixtures == null
        ? plan
        : plan.withFixtures(fixtures.stream().map(this::pair).distinct().toList());
  }

  private FixturePair pair(String word) {
    return Arrays.stream(FixturePair.values())
        .filter(p -> p.word().equals(word.strip()))
        .findFirst()
        .orElseThrow(
            () ->
                new CommandLine.ParameterException(
                    spec.commandLine(),
                    "there are no fixtures `"
                        + word.strip()
                        + "`; known pairs: "
                        + Arrays.stream(FixturePair.values())
                            .map(FixturePair::word)
                            .collect(Collectors.joining(", "))));
  }
}
