package org.twinrig.screening;

import java.util.List;
import java.util.Optional;

/**
 * What was found about the units of one kind.
 *
 * @param units how many have a difference between the fixtures
 * @param verdicts the units that depart from the others, in the order of the study's table
 * @param notJudged why the units cannot be judged; empty when they were
 */
public record KindScreening(
    String kind, int units, List<UnitVerdict> verdicts, Optional<String> notJudged) {

  public KindScreening {
    verdicts = List.copyOf(verdicts);
  }
}
