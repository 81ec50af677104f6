package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 */
final class UnitOutliers {
  private static final double LEVEL = 0.01;
  private static final int LEAST_UNITS = 8;
  private static final double LEAST_SHARE = 0.9;
  private static final double LEAST_DB = 1;

  private final PairedUnits paired;
  private final int units;

  private UnitOutliers(PairedUnits paired) {
    this.paired = paired;
    this.units = paired.units().size();
  }

  static KindScreening of(PairedUnits paired) {
    return new UnitOutliers(paired).judge();
  }

  private KindScreening judge() {
    if (units < LEAST_UNITS) {
      return tooFew(paired.kind(), units);
    }
    List<StudentisedResiduals> bands = new ArrayList<>();
    for (int b = 0; b < paired.grid().size(); b++) {
      band(b).ifPresent(bands::add);
    }
    int fewest = bands.stream().mapToInt(StudentisedResiduals::members).min().orElse(0);
    if (fewest == 0) {
      return tooFew(paired.kind(), 0);
    }
    double limit =
        PeakBound.of(bands.stream().map(StudentisedResiduals::direction).toList(), fewest - 2)
            .at(LEVEL / units);
    List<UnitVerdict> verdicts = new ArrayList<>();
    for (int i = 0; i < units; i++) {
      worst(bands, i, limit).ifPresent(verdicts::add);
    }
    return new KindScreening(paired.kind(), units, verdicts, Optional.empty());
  }

  static KindScreening tooFew(String kind, int units) {
    return new KindScreening(
        kind,
        units,
        List.of(),
        Optional.of(
            "whether one of the "
                + Numbers.count(units, "unit", "units")
                + " departs from the others cannot be judged: that takes "
                + LEAST_UNITS));
  }

  private Optional<StudentisedResiduals> band(int band) {
    BandSample sample = paired.at(band);
    return sample.size() < LEAST_UNITS || sample.size() < LEAST_SHARE * units
        ? Optional.empty()
        : Optional.of(StudentisedResiduals.of(band, sample, units));
  }

  /** The verdict on a unit at the band where it departs most by its standard error, if any. */
  private Optional<UnitVerdict> worst(List<StudentisedResiduals> bands, int unit, double limit) {
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
