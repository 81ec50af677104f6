package org.twinrig.cli;

import java.util.Arrays;
import java.util.List;
import org.twinrig.simulation.SimulatedKind;
import picocli.CommandLine;

/** The option {@code --kinds} of commands that simulate. */
final class SimulatedKinds {
  private SimulatedKinds() {}

  /**
   * The kinds a user named.
   *
   * @param labels as typed
   * @param line the command, for the complaint
   * @throws CommandLine.ParameterException when there is no such kind
   */
  static List<SimulatedKind> named(List<String> labels, CommandLine line) {
    return labels.stream().map(label -> named(label.trim(), line)).toList();
  }

  private static SimulatedKind named(String label, CommandLine line) {
    return Arrays.stream(SimulatedKind.values())
        .filter(k -> k.label().equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                new CommandLine.ParameterException(
                    line,
                    "there is no kind `"
                        + label
                        + "`; known kinds: "
                        + String.join(
                            ", ",
                            Arrays.stream(SimulatedKind.values())
                                .map(SimulatedKind::label)
                                .toList())));
  }
}
