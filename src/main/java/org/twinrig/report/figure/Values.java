package org.twinrig.report.figure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.response.Levels;

/** Numbers to draw, one per band; NaN where there is none: that is a break in the line. */
final class Values {
  private Values() {}

  static <T> double[] of(List<T> items, ToDoubleFunction<T> value) {
    return items.stream().mapToDouble(value).toArray();
  }

  static <T> double[] known(List<Optional<T>> items, ToDoubleFunction<T> value) {
    return of(items, i -> i.isPresent() ? value.applyAsDouble(i.get()) : Double.NaN);
  }

  static double[] levels(Levels levels) {
    return IntStream.range(0, levels.grid().size())
        .mapToDouble(b -> levels.level(b).orElse(Double.NaN))
        .toArray();
  }

  static double[] hz(List<MarkedBand> bands) {
    return of(bands, b -> b.band().midHz());
  }

  static double[] fitted(List<MarkedBand> bands, ToDoubleFunction<BandOutcome.Fitted> value) {
    return of(
        bands,
        b -> b.outcome() instanceof BandOutcome.Fitted f ? value.applyAsDouble(f) : Double.NaN);
  }

  /** The least of numbers that are known and of a bound. */
  static double least(double bound, double[]... values) {
    return Math.min(bound, known(values).min().orElse(bound));
  }

  static double greatest(double bound, double[]... values) {
    return Math.max(bound, known(values).max().orElse(bound));
  }

  private static DoubleStream known(double[]... values) {
    return Arrays.stream(values).flatMapToDouble(Arrays::stream).filter(v -> !Double.isNaN(v));
  }
}
