package org.twinrig.reliability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Fixture;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Levels;
import org.twinrig.study.Bands;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;

/** Kinds with given differences between the fixtures, and rules with few frills. */
final class RedrawnKind {
  private RedrawnKind() {}

  /** One row per unit, one column per band, dB; NaN where the unit has no level. */
  static KindEstimate estimate(BandGrid grid, double[][] differencesDb) {
    List<String> units = new ArrayList<>();
    List<Levels> to = new ArrayList<>();
    for (double[] row : differencesDb) {
      units.add("Alder " + units.size());
      to.add(Levels.copyOf(grid, row));
    }
    Levels zero = Levels.copyOf(grid, new double[grid.size()]);
    return new TransferEstimator(0.95, PredictionModel.AVERAGE, 1)
        .fit(
            new PairedUnits(
                "in-ear",
                grid,
                units,
                onFixture(grid, Collections.nCopies(units.size(), zero)),
                onFixture(grid, to)));
  }

  private static PairedUnits.OnFixture onFixture(BandGrid grid, List<Levels> means) {
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(means.size(), Collections.nCopies(grid.size(), 1)),
        Levels.copyOf(grid, unknown),
        means.stream().map(List::of).toList());
  }

  /** Reliable to 1.5 dB, caution to 3 dB. */
  static Settings settings(BandGrid grid, int minUnits, List<DeclaredZone> zones) {
    return Settings.defaults()
        .with(Setting.BANDS, new Bands(grid.perOctave(), grid.lowerHz(), grid.upperHz()))
        .with(Setting.MIN_UNITS, minUnits)
        .with(Setting.ZONES, zones);
  }

  /** A rule between two fixtures specified from 20 Hz to 20 kHz. */
  static MarkRule rule(Settings settings, List<FrequencyRange> wandering) {
    return new MarkRule(
        settings,
        List.of(
            new Fixture("plate", "Plate", "", 20, 20_000),
            new Fixture("head", "Head", "", 20, 20_000)),
        wandering,
        Map.of());
  }
}
