package org.twinrig.regression;

import java.util.Random;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.twinrig.internal.linalg.Matrix;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.PredictionModel;

/** One kind of 40 units on 120 bands: the whole estimate, and the matrix product of its flips. */
@State(Scope.Thread)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 8, time = 2)
@Fork(1)
public class TransferBenchmark {
  private static final int UNITS = 40;
  private static final int BANDS = 120;
  private static final int FLIPS = 4999;

  private PairedUnits paired;
  private Matrix flips;
  private Matrix residuals;

  /** Curves whose neighbouring bands are alike, and differences that follow the next band. */
  @Setup
  public void fill() {
    double[][] x = smooth(1);
    double[][] d = smooth(2);
    for (int i = 0; i < UNITS; i++) {
      for (int b = 0; b + 1 < BANDS; b++) {
        d[i][b] += x[i][b + 1];
      }
    }
    paired = KindOfNumbers.of(x, d, 12);
    residuals = Matrix.ofRows(d);
    SplittableRandom random = new SplittableRandom(1);
    double[][] signs = new double[FLIPS][UNITS];
    for (double[] pattern : signs) {
      for (int i = 0; i < UNITS; i++) {
        pattern[i] = random.nextBoolean() ? 1 : -1;
      }
    }
    flips = Matrix.ofRows(signs);
  }

  /** Everything about the kind, on one thread, the model chosen. */
  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  public KindEstimate estimate() {
    return new TransferEstimator(0.95, PredictionModel.AVERAGE, 1).fit(paired);
  }

  /** Flips times residuals. */
  @Benchmark
  @BenchmarkMode(Mode.Throughput)
  public Matrix flipProduct(Flops work) {
    work.flops += 2L * FLIPS * UNITS * BANDS;
    return flips.times(residuals);
  }

  private static double[][] smooth(int seed) {
    Random random = new Random(seed);
    double[][] curves = new double[UNITS][BANDS];
    for (double[] curve : curves) {
      double level = 0;
      for (int b = 0; b < BANDS; b++) {
        level = 0.7 * level + random.nextGaussian();
        curve[b] = level;
      }
    }
    return curves;
  }
}
