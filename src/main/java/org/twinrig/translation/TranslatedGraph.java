package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;

/**
 * An old graph re-expressed as if it had been measured on the new fixture.
 *
 * @param bands one per band of the study's grid; of a compensated graph that stays compensated,
 *     both levels are compensated ones
 */
public record TranslatedGraph(
    CatalogueEntry entry, List<TranslatedBand> bands, Treatment treatment) {

  public TranslatedGraph {
    bands = List.copyOf(bands);
  }

  /** How much of the axis carries a mark: octaves of bands that have a level and this mark. */
  public double octaves(Mark mark) {
    return octaves(b -> !b.missing() && b.mark() == mark);
  }

  /** How much of the axis the old graph does not cover: octaves of bands without a level. */
  public double missingOctaves() {
    return octaves(TranslatedBand::missing);
  }

  /**
   * Why marks are below reliable, where the graph has a level.
   *
   * @return in the order of {@link Reason}, without repeats
   */
  public List<Reason> reasons() {
    return bands.stream()
        .filter(b -> !b.missing())
        .flatMap(b -> b.reasons().stream())
        .distinct()
        .sorted()
        .toList();
  }

  /**
   * The largest step between neighbouring bands in what the graph's own shape adds to the mean
   * transfer, dB: a step of the new curve that neither the old graph nor the study's mean has. 0
   * where no two neighbouring bands have a level.
   */
  public double largestStepDb() {
    double largest = 0;
    for (int b = 1; b < bands.size(); b++) {
      Optional<TranslatedBand.Predicted> one = bands.get(b - 1).predicted();
      Optional<TranslatedBand.Predicted> two = bands.get(b).predicted();
      if (one.isPresent() && two.isPresent()) {
        double step = two.get().beyondMeanDb() - one.get().beyondMeanDb();
        largest = Math.max(largest, Math.abs(step));
      }
    }
    return largest;
  }

  double octaves(Predicate<TranslatedBand> which) {
    double sum = 0;
    for (TranslatedBand b : bands) {
      if (which.test(b)) {
        sum += b.band().octaves();
      }
    }
    return sum;
  }
}
