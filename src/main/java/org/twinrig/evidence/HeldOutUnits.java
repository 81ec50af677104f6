package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Translator;

/**
 * Units that the lab kept out of every fit: their mean on the old fixture is re-expressed like a
 * graph of the catalogue and compared with their mean on the new one.
 *
 * <p>The interval widens where the unit has fewer seatings on the old fixture than the study; fewer
 * seatings on the new one are not counted in, so that units seated once may fall outside more often
 * than stated.
 */
public record HeldOutUnits(Translation translation, KindEstimate estimate) {

  /** Predicts held-out units of the kind, on the study's bands: one trial per unit. */
  public List<Trial> judge(PairedUnits paired) {
    Translator translator = new Translator(translation);
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < paired.units().size(); i++) {
      Levels from = paired.from().means().get(i);
      List<TranslatedBand> bands = translator.applyPinned(graph(paired, i), from).bands();
      trials.add(trial(paired.units().get(i), bands, paired.to().means().get(i)));
    }
    return trials;
  }

  private static CatalogueEntry graph(PairedUnits paired, int unit) {
    String name = paired.units().get(unit);
    int seatings =
        paired.from().seatings().get(unit).stream()
            .filter(n -> n > 0)
            .mapToInt(n -> n)
            .min()
            .orElse(1);
    return CatalogueEntry.raw(name, paired.kind(), seatings);
  }

  private Trial trial(String unit, List<TranslatedBand> bands, Levels measured) {
    int n = bands.size();
    double[] errors = new double[n];
    double[] offset = new double[n];
    double[] scale = new double[n];
    for (int b = 0; b < n; b++) {
      Optional<TranslatedBand.Predicted> predicted = bands.get(b).predicted();
      errors[b] = offset[b] = scale[b] = Double.NaN;
      OptionalDouble level = measured.level(b);
      if (predicted.isPresent()
          && level.isPresent()
          && estimate.bands().get(b) instanceof BandOutcome.Fitted fitted) {
        double fromDb = bands.get(b).fromDb().orElseThrow();
        errors[b] = level.getAsDouble() - predicted.get().toDb();
        offset[b] = level.getAsDouble() - fromDb - fitted.mean().meanDb();
        scale[b] =
            predicted.get().halfDb()
                / StudentT.twoSided(translation.confidence(), fitted.mean().degreesOfFreedom());
      }
    }
    return new Trial(
        unit,
        Levels.copyOf(estimate.grid(), errors),
        Levels.copyOf(estimate.grid(), offset),
        Levels.copyOf(estimate.grid(), scale),
        IntStream.range(0, n).map(b -> estimate.bands().get(b).units() - 1).boxed().toList());
  }
}
