package org.twinrig.regression;

import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Floating-point operations done: an addition, subtraction, multiplication or division counts one,
 * a fused multiply-add two. The rate that is printed, divided by 10⁹, is GFLOP/s.
 */
@State(Scope.Thread)
@AuxCounters(AuxCounters.Type.OPERATIONS)
public class Flops {
  /** How many. */
  public long flops;

  /** Starts an iteration. */
  @Setup(Level.Iteration)
  public void reset() {
    flops = 0;
  }
}
