package org.twinrig.simulation;

/** A complex number, for quantities of the form {@code x·e^(jωt)}. */
record Complex(double re, double im) {
  static final Complex ZERO = new Complex(0, 0);
  static final Complex ONE = new Complex(1, 0);

  Complex plus(Complex other) {
    return new Complex(re + other.re, im + other.im);
  }

  Complex times(Complex other) {
    return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
  }

  Complex times(double factor) {
    return new Complex(re * factor, im * factor);
  }

  Complex reciprocal() {
    double square = re * re + im * im;
    return new Complex(re / square, -im / square);
  }

  Complex over(Complex other) {
    double square = other.re * other.re + other.im * other.im;
    return new Complex(
        (re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
  }

  double power() {
    return re * re + im * im;
  }

  /** Magnitude in decibels, {@code 20·lg|x|}. */
  double decibels() {
    return 10 * Math.log10(power());
  }

  /** Angle in radians, from -π to π. */
  double argument() {
    return Math.atan2(im, re);
  }
}
