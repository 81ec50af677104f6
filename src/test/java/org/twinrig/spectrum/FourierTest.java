package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FourierTest {
  /** Against the definition, summed literally. */
  @Test
  void isTheSumOfItsDefinition() {
    int size = 64;
    Random random = new Random(3);
    double[] x = random.doubles(size, -1, 1).toArray();
    double[] real = x.clone();
    double[] imaginary = new double[size];
    Fourier.forward(real, imaginary);
    for (int k = 0; k < size; k++) {
      double re = 0;
      double im = 0;
      for (int n = 0; n < size; n++) {
        re += x[n] * Math.cos(2 * Math.PI * k * n / size);
        im -= x[n] * Math.sin(2 * Math.PI * k * n / size);
      }
      assertEquals(re, real[k], 1e-12);
      assertEquals(im, imaginary[k], 1e-12);
    }
    Fourier.inverse(real, imaginary);
    assertArrayEquals(x, real, 1e-14);
  }

  /** Powers of a real sequence against the complex transform of the same. */
  @Test
  void powersAreThoseOfTheWholeTransform() {
    for (int size : new int[] {4, 8, 1024, 1 << 17}) {
      double[] x = new Random(size).doubles(size, -1, 1).toArray();
      double[] real = x.clone();
      double[] imaginary = new double[size];
      Fourier.forward(real, imaginary);
      double[] powers = Fourier.powers(x);
      assertEquals(size / 2 + 1, powers.length);
      for (int k = 0; k < powers.length; k++) {
        double whole = real[k] * real[k] + imaginary[k] * imaginary[k];
        assertEquals(Math.sqrt(whole), Math.sqrt(powers[k]), 1e-11 * size);
      }
    }
  }

  @Test
  void aLongTransformComesBack() {
    double[] x = new Random(4).doubles(1 << 20, -1, 1).toArray();
    double[] real = x.clone();
    double[] imaginary = new double[x.length];
    Fourier.forward(real, imaginary);
    Fourier.inverse(real, imaginary);
    assertArrayEquals(x, real, 1e-9);
    assertEquals(0, Arrays.stream(imaginary).map(Math::abs).max().orElseThrow(), 1e-9);
  }

  @Test
  void lengthsArePowersOfTwo() {
    assertEquals(1, Fourier.lengthFor(1));
    assertEquals(8, Fourier.lengthFor(8));
    assertEquals(16, Fourier.lengthFor(9));
  }
}
