package org.twinrig.internal.linalg;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.twinrig.regression.Flops;

/** The decomposition of one window: 40 units in 5 stacked bands, and 300. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 10, time = 1)
@Fork(1)
public class ThinSvdBenchmark {
  private static final int COLUMNS = 13;

  /** Rows {@code m}; there are 13 columns. */
  @Param({"200", "1500"})
  public int rows;

  private double[] matrix;

  /** A matrix of random numbers. */
  @Setup
  public void fill() {
    Random random = new Random(1);
    matrix = random.doubles((long) rows * COLUMNS).toArray();
  }

  /**
   * One decomposition. Nominal count {@code 6mp² + 20p³} (Golub and Van Loan, Matrix Computations,
   * table of 8.6, from memory); what the iteration does is not known beforehand.
   */
  @Benchmark
  public ThinSvd decompose(Flops work) {
    work.flops += 6L * rows * COLUMNS * COLUMNS + 20L * COLUMNS * COLUMNS * COLUMNS;
    return ThinSvd.of(matrix, rows, COLUMNS);
  }
}
