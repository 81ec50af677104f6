package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code twinrig simulate}: a study whose truth is known. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    description = {
      "Makes a study whose truth is known: captures of units drawn from a physical model of"
          + " headphones on two fixtures, with the true transfer beside them."
    })
final class SimulateCommand implements Callable<Integer>, WithCommonOptions {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      required = true,
      description = "A new or empty folder for the study.")
  private Path out;

  @Option(
      names = "--seed",
      paramLabel = "N",
      required = true,
      description = "Starts every draw: the same seed makes the same files.")
  private long seed;

  @Option(
      names = "--demo",
      description =
          "The plan of the demonstration: four kinds, mixed file dialects, lost seals, a drifting"
              + " session and a catalogue.")
  private boolean demo;

  @Option(names = "--units", paramLabel = "N", description = "Units per kind (default: 12).")
  private Integer units;

  @Option(
      names = "--seatings",
      paramLabel = "N",
      description = "Seatings of every unit on each fixture (default: 5).")
  private Integer seatings;

  @Option(
      names = "--kinds",
      paramLabel = "KIND",
      split = ",",
      description =
          "Which kinds, separated by commas (default: open over-ear, closed over-ear, in-ear).")
  private List<String> kinds;

  @Option(
      names = "--points",
      paramLabel = "N",
      description = "Points of every capture (default: 240).")
  private Integer points;

  @Option(names = "--one-side", description = "Capture one side of every unit only.")
  private boolean oneSide;

  @Option(
      names = "--catalogue",
      paramLabel = "N",
      description = "How many old graphs to add as a back catalogue (default: 0).")
  private Integer catalogue;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  SimulateCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput, CannotWrite {
    SimulationPlan plan = plan();
    CommonOptions.refuseAmongResults(out);
    common.progress("Drawing the captures.");
    SimulatedStudy drawn = plan.draw();
    common.progress(
        "Writing "
            + Numbers.count(drawn.captures().size(), "capture", "captures")
            + " and their truth, which takes longest.");
    try {
      drawn.writeTo(out);
    } catch (IOException e) {
      throw new CannotWrite(out + ": the study could not be written (" + e.getMessage() + ")", e);
    }
    common.out().println("Study: " + out.resolve("study.yaml"));
    common.out().println("True transfer: " + out.resolve("truth"));
    common.out().println("Next: " + CommonOptions.called() + " study " + typed(out));
    return 0;
  }

  /** A name with blanks is one word only between quotes, in every shell. */
  private static String typed(Path place) {
    String name = place.toString();
    return name.indexOf(' ') < 0 ? name : "\"" + name + "\"";
  }

  private SimulationPlan plan() {
    SimulationPlan plan = (demo ? SimulationPlan.demo() : SimulationPlan.standard()).withSeed(seed);
    if (kinds != null) {
      plan =
          plan.withKinds(
              SimulatedKinds.named(kinds, spec.commandLine()).toArray(SimulatedKind[]::new));
    }
    if (units != null) {
      plan = plan.withUnitsPerKind(atLeast(1, units, "--units"));
    }
    if (seatings != null) {
      plan = plan.withSeatings(atLeast(1, seatings, "--seatings"));
    }
    if (points != null) {
      SimulationPlan.Axis axis = plan.axis();
      plan =
          plan.withAxis(
              new SimulationPlan.Axis(atLeast(30, points, "--points"), axis.fromHz(), axis.toHz()));
    }
    if (oneSide) {
      plan = plan.withBothSidesShare(0);
    }
    if (catalogue != null) {
      plan = plan.withCatalogueGraphs(atLeast(0, catalogue, "--catalogue"));
    }
    return plan;
  }

  private int atLeast(int least, int value, String option) {
    if (value < least) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), option + " must be " + least + " or more, but is " + value);
    }
    return value;
  }
}
