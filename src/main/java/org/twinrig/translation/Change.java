package org.twinrig.translation;

import java.util.OptionalDouble;
import org.twinrig.study.PublishingRule;

/**
 * How far a graph moved over the range readers compare by.
 *
 * @param totalRmsDb from the graph as it came to the graph as it is given, dB; for a compensated
 *     graph that is given raw, from the graph with its reference added back; nothing where no band
 *     has both
 * @param fixtureRmsDb by the change of fixture alone, dB
 * @param referenceRmsDb by the change of reference alone, dB; nothing for a graph that came raw or
 *     is given raw
 */
public record Change(
    OptionalDouble totalRmsDb, OptionalDouble fixtureRmsDb, OptionalDouble referenceRmsDb) {

  static Change of(Chain.Result result, PublishingRule rule) {
    double total = 0;
    double fixture = 0;
    double reference = 0;
    int bands = 0;
    for (int b = 0; b < result.given().bands().size(); b++) {
      TranslatedBand given = result.given().bands().get(b);
      if (given.predicted().isPresent() && rule.compares(given.band().midHz())) {
        double seen = given.shiftDb();
        double byFixture = result.raw().bands().get(b).shiftDb();
        total += seen * seen;
        fixture += byFixture * byFixture;
        reference += (seen - byFixture) * (seen - byFixture);
        bands++;
      }
    }
    boolean stays = result.given().treatment().now().isPresent();
    return new Change(rms(total, bands), rms(fixture, bands), rms(reference, stays ? bands : 0));
  }

  private static OptionalDouble rms(double squares, int bands) {
    return bands == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(squares / bands));
  }
}
