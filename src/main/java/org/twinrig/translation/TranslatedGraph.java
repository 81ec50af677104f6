package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Anchor;

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

  /** Why marks are below reliable, where the graph has a level. */
  public List<Reason> reasons() {
    return bands.stream()
        .filter(b -> !b.missing())
        .flatMap(b -> b.reasons().stream())
        .distinct()
        .sorted()
        .toList();
  }

  /**
   * The largest step between neighbouring bands that neither the old graph nor the study has, dB:
   * by how much the correction changes from one to the next more than any unit's own difference
   * between the fixtures does there; 0 where it never does.
   */
  public double largestStepDb() {
    return bands.stream()
        .flatMap(b -> b.predicted().stream())
        .mapToDouble(TranslatedBand.Predicted::stepDb)
        .max()
        .orElse(0);
  }

  /**
   * The same graph in dB re the mean of the old one over an anchor; nothing where that does not
   * cover it, or where there is none.
   */
  public Optional<TranslatedGraph> re(Anchor anchor) {
    List<TranslatedBand> there = bands.stream().filter(b -> anchor.linesUp(b.band())).toList();
    if (there.isEmpty() || there.stream().anyMatch(TranslatedBand::missing)) {
      return Optional.empty();
    }
    double mean = there.stream().mapToDouble(b -> b.fromDb().orElseThrow()).average().orElseThrow();
    List<TranslatedBand> moved =
        bands.stream()
            .map(
                b ->
                    b.missing()
                        ? b
                        : b.with(
                            OptionalDouble.of(b.fromDb().orElseThrow() - mean),
                            b.predicted().map(p -> p.with(p.toDb() - mean, p.stepDb()))))
            .toList();
    return Optional.of(new TranslatedGraph(entry, moved, treatment));
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
