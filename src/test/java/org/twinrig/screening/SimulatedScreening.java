package org.twinrig.screening;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.SessionCorrection;
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
            List.of());
    return new SimulatedScreening(study, drawn.captures());
  }

  SimulatedScreening with(List<Capture> others) {
    return new SimulatedScreening(study, others);
  }

  Screening screen() {
    return Screening.of(study, anchored());
  }

  List<AnchoredCapture> anchored() {
    return Anchoring.of(study.settings(), 1)
        .apply(SessionCorrection.apply(captures, study))
        .value();
  }
}
