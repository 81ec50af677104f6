package org.twinrig.spectrum;

import org.twinrig.internal.Checks;

/** One channel of sound: samples relative to full scale, evenly spaced in time. Immutable. */
public final class Signal {
  private final double[] samples;
  private final double rateHz;

  private Signal(double[] samples, double rateHz) {
    this.samples = samples;
    this.rateHz = rateHz;
  }

  /** A signal from its samples, one or more finite numbers, 1 at full scale. */
  public static Signal copyOf(double[] samples, double rateHz) {
    if (samples.length == 0) {
      throw new IllegalArgumentException("a signal needs at least one sample");
    }
    for (double sample : samples) {
      Checks.finite(sample, "a sample");
    }
    return new Signal(samples.clone(), Checks.positive(rateHz, "a sampling rate in Hz"));
  }

  /** Takes over an array that nobody else holds. */
  static Signal of(double[] samples, double rateHz) {
    return new Signal(samples, rateHz);
  }

  /** How many samples there are: 1 or more. */
  public int size() {
    return samples.length;
  }

  /** One sample relative to full scale, from index 0. */
  public double sample(int index) {
    return samples[index];
  }

  /** The sampling rate, samples per second. */
  public double rateHz() {
    return rateHz;
  }

  /** A time as a whole number of samples. */
  int samplesIn(double milliseconds) {
    return (int) Math.round(milliseconds * rateHz / 1000);
  }

  /** A number of samples as a time. */
  double milliseconds(int count) {
    return 1000 * count / rateHz;
  }

  /** The sample furthest from zero, the first of several. */
  int peakIndex() {
    int peak = 0;
    for (int i = 1; i < samples.length; i++) {
      if (Math.abs(samples[i]) > Math.abs(samples[peak])) {
        peak = i;
      }
    }
    return peak;
  }

  /** The furthest a sample of {@code [from, to)} lies from zero; 0 when there is none. */
  double peak(int from, int to) {
    double peak = 0;
    for (int i = from; i < to; i++) {
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    return peak;
  }

  /** The mean of all samples. */
  double mean() {
    return sum(0, samples.length) / samples.length;
  }

  /** The sum over {@code [from, to)}. */
  double sum(int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += samples[i];
    }
    return sum;
  }

  /** The sum of squares over {@code [from, to)}, each sample less {@code offset}. */
  double energy(int from, int to, double offset) {
    double energy = 0;
    for (int i = from; i < to; i++) {
      energy += (samples[i] - offset) * (samples[i] - offset);
    }
    return energy;
  }
}
