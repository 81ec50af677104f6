package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.KindEstimate;

/** Where resonances wander in each resample: the zones are found anew from the units drawn. */
final class RedrawnWander {
  private final BandGrid grid;
  private final Resamples resamples;
  private final List<Feature> features = new ArrayList<>();

  RedrawnWander(KindEstimate estimate, List<ResonanceWander> wandering, Resamples resamples) {
    this.grid = estimate.grid();
    this.resamples = resamples;
    Map<String, Integer> columns = new HashMap<>();
    for (int i = 0; i < estimate.units().size(); i++) {
      columns.put(estimate.units().get(i), i);
    }
    for (ResonanceWander wander : wandering) {
      features.add(Feature.of(wander, columns));
    }
  }

  /** Sets the flag of every band that overlaps a zone of one resample. */
  void flag(int resample, boolean[] wanders) {
    for (Feature feature : features) {
      Optional<ResonanceWander.Range> zone = feature.zone(resamples.counts()[resample]);
      if (zone.isPresent()) {
        double fromHz = zone.get().fromHz();
        double toHz = zone.get().toHz();
        for (int b = 0; b < wanders.length; b++) {
          wanders[b] |= MarkRule.overlaps(grid.band(b), fromHz, toHz);
        }
      }
    }
  }

  /** One notch or peak: its units' columns in the resamples, and their counts in one of them. */
  @SuppressWarnings("ArrayRecordComponent") // stays in this file
  private record Feature(WanderZone wander, int[] columns, double[] counts) {
    static Feature of(ResonanceWander wander, Map<String, Integer> columns) {
      int[] own = wander.positions().stream().mapToInt(p -> column(p.unit(), columns)).toArray();
      return new Feature(
          new WanderZone(wander.positions(), wander.searched()), own, new double[own.length]);
    }

    private static int column(String unit, Map<String, Integer> columns) {
      Integer column = columns.get(unit);
      if (column == null) {
        throw new IllegalArgumentException("the unit " + unit + " is none of the estimate's");
      }
      return column;
    }

    Optional<ResonanceWander.Range> zone(double[] resample) {
      for (int k = 0; k < counts.length; k++) {
        counts[k] = resample[columns[k]];
      }
      // A resample's variance is (n-1)/n of the study's on average; this takes that back.
      return wander.under(counts, counts.length / (counts.length - 1.0));
    }
  }
}
