package org.twinrig.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.SealPlan;
import org.twinrig.proof.SealProof;
import org.twinrig.proof.SealRow;
import org.twinrig.report.table.SealProofTable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code twinrig prove-seals}: whether lost seals are found, and sound captures left alone. */
@Command(
    name = "prove-seals",
    mixinStandardHelpOptions = true,
    description = {
      "Looks for lost seals in simulated studies in which it is known which seals were lost, and says"
          + " what leaving them out does to the mean transfer."
    })
final class ProveSealsCommand implements Callable<Integer>, WithCommonOptions {
  private static final double LOST_SHARE = 0.1;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--studies",
      paramLabel = "N",
      required = true,
      description = "How many studies to draw.")
  private int studies;

  @Option(
      names = "--units",
      paramLabel = "N",
      description = "Units per kind (default: ${DEFAULT-VALUE}).")
  private int units = 10;

  @Option(
      names = "--seatings",
      paramLabel = "N",
      description = "Seatings per side and fixture (default: ${DEFAULT-VALUE}).")
  private int seatings = 4;

  @Mixin private ProofOptions proof;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  ProveSealsCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws CannotWrite {
    SealPlan plan = plan();
    Optional<OutputTable> table = proof.table();
    common.progress("Drawing and screening " + studies + " studies.");
    List<SealRow> rows = SealProof.run(plan, common.threads());
    for (SealRow row : rows) {
      common.out().println(sentence(row));
    }
    if (table.isPresent()) {
      table.get().write(file -> SealProofTable.write(rows, file));
      common.out().println("Table: " + table.get().target());
    }
    return 0;
  }

  private SealPlan plan() {
    try {
      return new SealPlan(studies, proof.seed(), units, seatings, LOST_SHARE);
    } catch (IllegalArgumentException e) {
      throw new CommandLine.ParameterException(spec.commandLine(), e.getMessage(), e);
    }
  }

  private static String sentence(SealRow row) {
    String found =
        String.format(
            Locale.ROOT,
            "%s, %s times the limit: %d of %s found, %s %% of %s accused",
            row.kind(),
            Numbers.fixed(row.limitFactor(), 2),
            row.found(),
            Numbers.count(row.lost(), "lost seal", "lost seals"),
            Numbers.fixed(100 * row.falseAlarms(), 2),
            Numbers.count(row.sound(), "sound capture", "sound captures"));
    return row.effect().suggestDb().isEmpty()
        ? found + "."
        : found
            + "; error of the mean transfer below 200 Hz "
            + Numbers.fixed(row.effect().suggestDb().getAsDouble(), 2)
            + " dB with all captures, "
            + Numbers.fixed(row.effect().excludeDb().orElseThrow(), 2)
            + " dB with those left out, "
            + Numbers.fixed(row.effect().soundDb().orElseThrow(), 2)
            + " dB had every seal held.";
  }
}
