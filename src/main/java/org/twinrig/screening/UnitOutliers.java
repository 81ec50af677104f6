package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.internal.Numbers;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;

/**
 * Finds units whose difference between the fixtures departs from the kind's.
 *
 * <p>At a band a unit is judged by its {@linkplain StudentisedResiduals leave-one-out studentised
 * residual} {@code t_i}. A unit is reported when its greatest {@code |t_i|} over the bands exceeds
 * the bound of {@link PeakBound}, which holds for all bands and, by Bonferroni, for all units at
 * once: a kind of like units is accused once in a hundred studies. Departures of 1 dB or less are
 * not reported.
 *
 * <p>Below 8 units nothing is judged: the bound would ask for more than some fifteen standard
 * errors. Judged are the bands at which at least nine tenths of the units have a level. Differences
 * of real units are not normal; in simulated studies the rule accuses about one unit in a hundred
 * of the kinds whose bass is skewed by leaks, fewer elsewhere. The level of 0.01, the 8 units and
 * the 1 dB are our choice.
 *
 * @param units how many of the kind have a difference between the fixtures
 * @param verdicts the units that depart from the others, in the order of the study's table
 * @param notJudged why the units cannot be judged; empty when they were
 */
public record UnitOutliers(
    String kind, int units, List<UnitVerdict> verdicts, Optional<String> notJudged) {
  private static final double LEVEL = 0.01;
  private static final int LEAST_UNITS = 8;
  private static final double LEAST_SHARE = 0.9;
  private static final double LEAST_DB = 1;

  public UnitOutliers {
    verdicts = List.copyOf(verdicts);
  }

  static UnitOutliers of(PairedUnits paired) {
    int units = paired.units().size();
    if (units < LEAST_UNITS) {
      return tooFew(paired.kind(), units);
    }
    List<StudentisedResiduals> bands = new ArrayList<>();
    for (int b = 0; b < paired.grid().size(); b++) {
      BandSample sample = paired.at(b);
      if (sample.size() >= LEAST_UNITS && sample.size() >= LEAST_SHARE * units) {
        bands.add(StudentisedResiduals.of(b, sample, units));
      }
    }
    int fewest = bands.stream().mapToInt(StudentisedResiduals::members).min().orElse(0);
    if (fewest == 0) {
      return tooFew(paired.kind(), 0);
    }
    double limit =
        PeakBound.of(bands.stream().map(StudentisedResiduals::direction).toList(), fewest - 2)
            .at(LEVEL / units);
    List<UnitVerdict> verdicts =
        IntStream.range(0, units)
            .boxed()
            .flatMap(i -> worst(paired, bands, i, limit).stream())
            .toList();
    return new UnitOutliers(paired.kind(), units, verdicts, Optional.empty());
  }

  static UnitOutliers tooFew(String kind, int units) {
    return new UnitOutliers(
        kind,
        units,
        List.of(),
        Optional.of(
            "whether one of the %s departs from the others cannot be judged: that takes %s"
                .formatted(Numbers.count(units, "unit", "units"), LEAST_UNITS)));
  }

  /** The verdict on a unit at the band where it departs most by its standard error, if any. */
  private static Optional<UnitVerdict> worst(
      PairedUnits paired, List<StudentisedResiduals> bands, int unit, double limit) {
    UnitVerdict worst = null;
    for (StudentisedResiduals at : bands) {
      double t = Math.abs(at.t()[unit]);
      double departureDb = at.departuresDb()[unit];
      if (t > (worst == null ? limit : worst.value()) && Math.abs(departureDb) > LEAST_DB) {
        double bandHz = paired.grid().band(at.band()).midHz();
        String name = paired.units().get(unit);
        worst = new UnitVerdict(paired.kind(), name, bandHz, departureDb, t, limit);
      }
    }
    return Optional.ofNullable(worst);
  }
}
