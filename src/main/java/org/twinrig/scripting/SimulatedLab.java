package org.twinrig.scripting;

import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import org.twinrig.internal.Sha256;
import org.twinrig.response.Levels;
import org.twinrig.simulation.FixturePair;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.Settings;

/**
 * A lab whose truth is known: its study can be analysed like any other, and then held against the
 * truth. Immutable; the same plan, fixtures and settings give the same study.
 */
public final class SimulatedLab {
  private final SimulatedStudy drawn;
  private final FixturePair fixtures;
  private final Settings settings;

  private SimulatedLab(SimulatedStudy drawn, FixturePair fixtures, Settings settings) {
    this.drawn = drawn;
    this.fixtures = fixtures;
    this.settings = settings;
  }

  /**
   * A lab with a plate and a head; the plan says which units it captures and what goes wrong, for
   * example {@code SimulationPlan.standard().withKinds(SimulatedKind.IN_EAR).withSeed(7)}.
   */
  public static SimulatedLab of(SimulationPlan plan) {
    return of(plan, FixturePair.PLATE_TO_HEAD);
  }

  /** A lab with other fixtures. */
  public static SimulatedLab of(SimulationPlan plan, FixturePair fixtures) {
    return new SimulatedLab(plan.draw(fixtures), fixtures, Settings.defaults());
  }

  /** The same lab with other settings in its study.yaml. */
  public SimulatedLab with(UnaryOperator<Settings> change) {
    return new SimulatedLab(drawn, fixtures, change.apply(settings));
  }

  /** Its study, as if it had been read. */
  public LabStudy study() {
    String made = drawn.plan() + " " + fixtures;
    return new LabStudy(
        drawn.declared(settings),
        drawn.captures(),
        Sha256.hex(made.getBytes(StandardCharsets.UTF_8)).substring(0, 12));
  }

  /**
   * The true mean transfer of a kind, new minus old, dB per band: what a study of endlessly many
   * units and seatings would find. Worked out from 2000 units, which takes seconds; all labs with
   * these fixtures share it.
   *
   * @throws IllegalArgumentException when no simulated kind has the name
   */
  public Levels trueMeanTransfer(String kind) {
    return drawn.trueMeanTransfer(SimulatedKind.ofLabel(kind), settings.grid(), settings.anchor());
  }

  /**
   * A unit's own true transfer, new minus old, dB per band: the expectation over its good seatings.
   *
   * @throws IllegalArgumentException when the lab has no such unit
   */
  public Levels trueTransfer(String unit) {
    return drawn.trueUnitTransfer(unit, settings.grid(), settings.anchor());
  }
}
