package org.twinrig.regression;

import java.util.Arrays;
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

/** What Java can reach on one core of this machine: the yardstick for the other benchmarks. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 10, time = 1)
@Fork(1)
public class PeakBenchmark {
  /** 8 kB, far within the first cache. */
  private static final int LENGTH = 1024;

  private final double[] x = new double[LENGTH];
  private double factor;
  private double addend;

  /** Numbers that stay where they are: 1 = 0.5·1 + 0.5. */
  @Setup
  public void fill() {
    Arrays.fill(x, 1);
    factor = 0.5;
    addend = 0.5;
  }

  /**
   * Sixteen fused multiply-adds per element that is loaded; elements do not wait for each other.
   */
  @Benchmark
  public double[] fused(Flops work) {
    double f = factor;
    double a = addend;
    for (int i = 0; i < LENGTH; i++) {
      double v = Math.fma(x[i], f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      v = Math.fma(v, f, a);
      x[i] = Math.fma(v, f, a);
    }
    work.flops += 2L * 16 * LENGTH;
    return x;
  }

  /** The same with a rounding after each multiplication, as plain Java arithmetic has it. */
  @Benchmark
  public double[] plain(Flops work) {
    double f = factor;
    double a = addend;
    for (int i = 0; i < LENGTH; i++) {
      double v = x[i] * f + a;
      v = v * f + a;
      v = v * f + a;
      v = v * f + a;
      v = v * f + a;
      v = v * f + a;
      v = v * f + a;
      x[i] = v * f + a;
    }
    work.flops += 2L * 8 * LENGTH;
    return x;
  }
}
