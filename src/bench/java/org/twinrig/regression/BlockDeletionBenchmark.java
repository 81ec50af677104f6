package org.twinrig.regression;

import java.util.Arrays;
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

/** Leaving out every pair of units of one window, as the nested choice does. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 10, time = 1)
@Fork(1)
public class BlockDeletionBenchmark {
  /** Units. */
  @Param({"40", "300"})
  public int units;

  /** Stacked rows of a unit. */
  @Param({"1", "3", "5"})
  public int rows;

  /** Predictors. */
  @Param({"5", "13"})
  public int predictors;

  private BlockDeletion blocks;
  private double[] onPartner;
  private double[] onUnit;

  /** Small random rows: the cost does not depend on what they hold. */
  @Setup
  public void fill() {
    Random random = new Random(1);
    blocks = new BlockDeletion(units, rows, predictors);
    double size = Math.sqrt(0.2 / (rows * predictors));
    for (double[] row : blocks.z()) {
      Arrays.setAll(row, i -> size * random.nextGaussian());
    }
    for (double[] row : blocks.e()) {
      Arrays.setAll(row, i -> random.nextGaussian());
    }
    blocks.prepare();
    onPartner = new double[units];
    onUnit = new double[units];
  }

  /** All pairs of units. */
  @Benchmark
  public double withoutTwo(Flops work) {
    double sum = 0;
    for (int i = 0; i < units - 1; i++) {
      blocks.withoutTwo(i, i + 1, onPartner, onUnit);
      sum += onPartner[units - 1] + onUnit[units - 1];
    }
    work.flops += (long) units * (units - 1) / 2 * flopsPerPair();
    return sum;
  }

  /** Operations of one pair, term by term as the equations of {@link BlockDeletion} ask. */
  private long flopsPerPair() {
    long r = rows;
    long cross = 2 * r * r * predictors;
    long schur = 2 * r * r * (r + 1) / 2;
    long rightHandSide = 2 * r * r;
    long factor = r + r * (r - 1) / 2 + 2 * ((r - 1) * r * (r + 1) / 6);
    long substitute = 2 * r * (r - 1) + r;
    long unit = 2 * r + 1;
    return cross + schur + rightHandSide + factor + substitute + unit;
  }
}
