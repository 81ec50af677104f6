package org.twinrig.translation;

import java.util.List;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** A simulated study of in-ears, analysed, and curves of the old fixture like its own. */
final class SmallStudy {
  private final SimulatedStudy drawn;
  private final Study study;
  private final StudyOutcome outcome;

  private SmallStudy(SimulatedStudy drawn, Study study) throws UnusableInput {
    this.drawn = drawn;
    this.study = study;
    this.outcome = Analysis.of(study, drawn.captures(), "none", 2);
  }

  static SmallStudy of(int units, long seed, Settings settings) throws UnusableInput {
    SimulatedStudy drawn =
        SimulationPlan.standard()
            .withKinds(SimulatedKind.IN_EAR)
            .withUnitsPerKind(units)
            .withSeatings(3)
            .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
            .withSeed(seed)
            .draw();
    return new SmallStudy(drawn, drawn.declared(settings));
  }

  SmallStudy reversed() throws UnusableInput {
    return new SmallStudy(drawn, study.reversed());
  }

  StudyOutcome outcome() {
    return outcome;
  }

  Translation translation() {
    return outcome.translation();
  }

  /** The captures of the fixture the study starts from. */
  List<Response> old() {
    return drawn.captures().stream()
        .filter(c -> c.entry().fixture().equals(study.from().name()))
        .map(Capture::response)
        .toList();
  }
}
