package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.ErrorVariance;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.StudentT;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Translator;

/**
 * One unit predicted by a rule that never saw its difference.
 *
 * <p>Errors are measured minus predicted, dB per band, of the model and of the plain offset; at
 * confidence {@code C} the prediction interval reaches {@code t_ν(C)} times the scale, dB, which is
 * missing where no interval can be made; {@code ν} per band.
 */
public record Trial(
    String unit, Levels errors, Levels offsetErrors, Levels scale, List<Double> degreesOfFreedom) {

  /** With fewer errors at a band none of them can be judged by the others. */
  private static final int FEWEST_JUDGED = 4;

  public Trial {
    degreesOfFreedom = List.copyOf(degreesOfFreedom);
  }

  /**
   * The units of a kind, each left out in turn, in the order of the study.
   *
   * <p>The interval that unit {@code i} is held against is made from the errors {@code r̃_j} of the
   * others as the study's own is from all, see {@link ErrorVariance}. A band needs four units for
   * that; with three there are errors and no interval.
   */
  public static List<Trial> leftOut(KindEstimate estimate) {
    return IntStream.range(0, estimate.units().size()).mapToObj(i -> leftOut(estimate, i)).toList();
  }

  private static Trial leftOut(KindEstimate estimate, int unit) {
    BandGrid grid = estimate.grid();
    int[] others = new int[grid.size()];
    double[] meanSquares = new double[grid.size()];
    for (int b = 0; b < others.length; b++) {
      for (int j = 0; j < estimate.errors().size(); j++) {
        Levels errors = estimate.errors().get(j);
        if (j != unit && errors.has(b)) {
          others[b]++;
          meanSquares[b] += errors.db(b) * errors.db(b);
        }
      }
      meanSquares[b] /= Math.max(1, others[b]);
    }
    ErrorVariance made = new ErrorVariance.Bands(others, grid.perOctave()).of(meanSquares);
    Levels errors = estimate.errors().get(unit);
    double[] scale = new double[others.length];
    Arrays.setAll(
        scale,
        b ->
            errors.has(b) && others[b] >= FEWEST_JUDGED - 1
                ? Math.sqrt(made.variance(b))
                : Double.NaN);
    return new Trial(
        estimate.units().get(unit),
        errors,
        estimate.offsetErrors().get(unit),
        Levels.copyOf(grid, scale),
        IntStream.range(0, others.length).mapToObj(made::degreesOfFreedom).toList());
  }

  /**
   * Units that the lab kept out of every fit of the kind, on the study's bands: their mean on the
   * old fixture is re-expressed like a graph of the catalogue and compared with their mean on the
   * new one.
   *
   * <p>The interval widens where the unit has fewer seatings on the old fixture than the study;
   * fewer seatings on the new one are not counted in, so that units seated once may fall outside
   * more often than stated.
   */
  public static List<Trial> heldOut(
      Translation translation, KindEstimate estimate, PairedUnits unseen) {
    Translator translator = new Translator(translation);
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < unseen.units().size(); i++) {
      Levels from = unseen.from().means().get(i);
      List<TranslatedBand> bands = translator.applyPinned(graph(unseen, i), from).bands();
      Levels to = unseen.to().means().get(i);
      trials.add(heldOut(unseen.units().get(i), bands, to, estimate, translation.confidence()));
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

  private static Trial heldOut(
      String unit,
      List<TranslatedBand> bands,
      Levels measured,
      KindEstimate estimate,
      double confidence) {
    int n = bands.size();
    double[] errors = new double[n];
    double[] offset = new double[n];
    double[] scale = new double[n];
    Double[] freedom = new Double[n];
    Arrays.fill(freedom, 0.0);
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
        freedom[b] = predicted.get().own().degreesOfFreedom();
        scale[b] = predicted.get().halfDb() / StudentT.twoSided(confidence, freedom[b]);
      }
    }
    return new Trial(
        unit,
        Levels.copyOf(estimate.grid(), errors),
        Levels.copyOf(estimate.grid(), offset),
        Levels.copyOf(estimate.grid(), scale),
        List.of(freedom));
  }
}
