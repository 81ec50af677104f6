package org.twinrig.screening;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Unit;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** A simulated study on its way into screening. */
record SimulatedScreening(Study study, List<Capture> captures) {

  static SimulatedScreening of(SimulatedStudy drawn) {
    Study study =
        new Study(
            Path.of("."),
            "simulated",
            drawn.from(),
            drawn.to(),
            drawn.units(),
            drawn.captures().stream().map(Capture::entry).toList(),
            drawn.sessions(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    return new SimulatedScreening(study, drawn.captures());
  }

  SimulatedScreening with(List<Capture> others) {
    return new SimulatedScreening(study, others);
  }

  Screening screen() {
    return Screening.of(study, anchored());
  }

  List<AnchoredCapture> anchored() {
    return Anchoring.of(study.settings(), 1).apply(study.corrected(captures)).value();
  }

  /** Studies of all kinds, half of the units measured on both sides. */
  static List<SimulatedScreening> drawn(int studies, int seatings, int units, long firstSeed) {
    List<SimulatedScreening> drawn = new ArrayList<>();
    for (int s = 0; s < studies; s++) {
      drawn.add(
          of(
              SimulationPlan.standard()
                  .withKinds(SimulatedKind.values())
                  .withUnitsPerKind(units)
                  .withSeatings(seatings)
                  .withBothSidesShare(0.5)
                  .withSeed(firstSeed + s)
                  .draw()));
    }
    return drawn;
  }

  Map<String, String> kinds() {
    return study.units().stream().collect(Collectors.toMap(Unit::name, Unit::kind));
  }
}
