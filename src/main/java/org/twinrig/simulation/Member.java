package org.twinrig.simulation;

import java.util.List;
import org.twinrig.capture.Unit;

/**
 * A unit of the study, with the specimen behind it.
 *
 * @param unit as the lab has it
 * @param turn when in the study it was measured, from 0
 * @param fixtures keys of the fixtures it was measured on: 0 the old one, 1 the new one
 */
record Member(Unit unit, Specimen specimen, int turn, List<Integer> fixtures) {
  Member {
    fixtures = List.copyOf(fixtures);
  }
}
