package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code twinrig simulate}: a study whose truth is known. */
@Command(
    name = "simulate",
    description = {
      "Makes a study whose truth is known: captures of units drawn from a physical model of"
          + " headphones on two fixtures, with the true transfer beside them."
    })
final class SimulateCommand extends TwinrigCommand {
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

  @Override
  public Integer call() throws UnusableInput {
    SimulationPlan plan = plan();
    refuseAmongResults(out);
    progress("Drawing the captures.");
    SimulatedStudy drawn = plan.draw();
    progress(
        "Writing "
            + Numbers.count(drawn.captures().size(), "capture", "captures")
            + " and their truth, which takes longest.");
    try {
      drawn.writeTo(out);
    } catch (IOException e) {
      throw cannot(out, "the study could not be written", e);
    }
    out().println("Study: " + out.resolve("study.yaml"));
    out().println("True transfer: " + out.resolve("truth"));
    out().println("Next: " + called() + " study " + typed(out));
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
      plan = plan.withKinds(kinds.stream().map(this::kind).toArray(SimulatedKind[]::new));
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

  private SimulatedKind kind(String text) {
    List<String> known = Arrays.stream(SimulatedKind.values()).map(SimulatedKind::label).toList();
    refuse(
        !known.contains(text.trim()),
        "there is no kind `%s`; known kinds: %s".formatted(text.trim(), String.join(", ", known)));
    return SimulatedKind.ofLabel(text.trim());
  }

  private int atLeast(int least, int value, String option) {
    refuse(value < least, option + " must be " + least + " or more, but is " + value);
    return value;
  }
}
