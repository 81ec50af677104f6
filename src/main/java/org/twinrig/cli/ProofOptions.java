package org.twinrig.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** What every command that proves something on simulated studies is given. */
final class ProofOptions {
  private static final int PROGRESS_STEPS = 10;

  @CommandLine.Spec(CommandLine.Spec.Target.MIXEE)
  private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--seed",
      paramLabel = "N",
      required = true,
      description = "Starts every draw: the same seed gives the same figures.")
  private long seed;

  @Option(names = "--out", paramLabel = "FILE", description = "Also write the table as CSV.")
  private Path out;

  /** For the command-line library. */
  ProofOptions() {}

  long seed() {
    return seed;
  }

  /** The table that was asked for, if any; its place is tried before any time is spent. */
  Optional<OutputTable> table() throws CannotWrite {
    Optional<OutputTable> table = Optional.ofNullable(out).map(OutputTable::new);
    if (table.isPresent()) {
      table.get().check();
    }
    return table;
  }

  /** Whether another tenth is done, and worth telling. */
  static boolean isTenth(int done, int of) {
    return done * PROGRESS_STEPS / of > (done - 1) * PROGRESS_STEPS / of;
  }

  int atLeast(int least, int value, String option) {
    refuse(value < least, option + " must be " + least + " or more, but is " + value);
    return value;
  }

  void refuse(boolean wrong, String text) {
    if (wrong) {
      throw new CommandLine.ParameterException(spec.commandLine(), text);
    }
  }
}
