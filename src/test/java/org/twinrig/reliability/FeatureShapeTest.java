package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.regression.MeanCurve;
import org.twinrig.regression.RandomEffects;
import org.twinrig.regression.UnitSample;
import org.twinrig.reliability.FixtureFeature.Curve;

/** Extremes of drawn curves, and their intervals against the definition in plain loops. */
class FeatureShapeTest {
  private static final double BAND_OCTAVES = 0.3 / 12 / Math.log10(2);
  private static final int RESAMPLES = 99;

  /**
   * {@code 100·Φ(-t)} with t at 50 % on 2, 3 and 4 degrees of freedom, rounded down; scipy 1.17.1:
   * {@code norm.cdf(-t.ppf(.75, n - 1))} is 0.20711, 0.22217 and 0.22943.
   */
  private static final int[] TAILS = {0, 0, 0, 20, 22, 22};

  private static BandGrid grid(int bands) {
    return new BandGrid(IntStream.range(0, bands).mapToObj(b -> Band.ofIndex(b, 12)).toList());
  }

  private static MeanCurve.Mean mean(double db, double tauSquared, int units) {
    return new MeanCurve.Mean(
        new RandomEffects.Result(db, 0.1, tauSquared, units, 0.95, 0.2), Math.abs(db) / 2);
  }

  private static FeatureShape shape(
      double[] curve, List<UnitSample> samples, double tauSquared, Resamples resamples) {
    List<Optional<MeanCurve.Mean>> means = new ArrayList<>();
    for (double db : curve) {
      means.add(
          Double.isNaN(db)
              ? Optional.empty()
              : Optional.of(mean(db, tauSquared, resamples.counts()[0].length)));
    }
    return new FeatureShape(grid(curve.length), samples, means, resamples, 0.5);
  }

  /** The study itself as its only resample, of units that are all alike. */
  private static FeatureShape drawn(double[] curve) {
    List<UnitSample> alike = new ArrayList<>();
    for (double db : curve) {
      alike.add(
          Double.isNaN(db)
              ? new UnitSample(new int[0], new double[0], new double[0])
              : new UnitSample(new int[] {0, 1, 2}, new double[] {db, db, db}, new double[3]));
    }
    return shape(curve, alike, 1, new Resamples(new double[][] {{1, 1, 1}}));
  }

  private static double[] numbers(String list) {
    return Arrays.stream(list.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  @ParameterizedTest
  @CsvSource({
    "'0 1 4 1 0', 2",
    // A shoulder, and what is no shoulder because the curve falls to half between.
    "'0 3 2.5 4 1 0', 3",
    "'0 4 2.5 3 1 0', 1",
    "'0 3 1.6 4 0', 3",
    "'0 3 1.5 4 0', '1 3'",
    "'0 4 2 1.6 3 0', 1",
    "'0 4 2 1.5 3 0', '1 4'",
    // The ends of the curve are seen, though they are no features themselves.
    "'4 2.5 3 2 0', ''",
    "'2 2.5 3 2 0', 2",
    "'0 2 3 2.5 4', ''",
    "'0 2 3 2.5 2', 2",
    // Of a plateau its first band; two alike are both the greatest.
    "'0 3 3 0', 1",
    "'0 3 2 3 0', '1 3'",
    "'0 0 0', ''",
    "'2 1 2', ''",
    "'NaN 3 1 0', ''",
    "'0 1 3 NaN', ''",
    "'-1 2 -3 2 -1', '1 2 3'"
  })
  void theGreatestAsFarAsTheCurveStaysAboveHalf(String curve, String bands) {
    for (int sign = -1; sign <= 1; sign += 2) {
      int s = sign;
      double[] db = Arrays.stream(numbers(curve)).map(v -> s * v).toArray();
      FeatureShape shape = drawn(db);
      List<String> found =
          IntStream.range(1, db.length - 1)
              .filter(shape::greatestAt)
              .mapToObj(Integer::toString)
              .toList();
      assertEquals(bands, String.join(" ", found));
    }
  }

  /**
   * The vertex of the parabola through three bands, and the width where lines cross half height.
   */
  @ParameterizedTest
  @CsvSource({
    "'NaN 0 1 4 2 1 0 NaN', 3, 3.1, 1.666667",
    "'NaN 0 4 4 0 NaN', 2, 2.5, 2",
    "'NaN -1 3 5 4 3 2 0 NaN', 3, 3.166667, 3.625"
  })
  void placeAndWidthAreReadOffTheDrawing(String curve, int band, double place, double widthBands) {
    double[] db = numbers(curve);
    FixtureFeature peak = drawn(db).feature(Curve.TO, band, mean(db[band], 1, 3));
    double hz = Band.ofIndex(0, 12).midHz() * Math.pow(10, 0.3 * place / 12);
    assertEquals(hz, peak.centre().value(), hz * 1e-7);
    assertEquals(widthBands * BAND_OCTAVES, peak.width().orElseThrow().value(), 1e-6);
    assertEquals(Resonance.Shape.PEAK, peak.shape());
    double[] upsideDown = Arrays.stream(db).map(v -> -v).toArray();
    FixtureFeature notch = drawn(upsideDown).feature(Curve.TO, band, mean(upsideDown[band], 1, 3));
    assertEquals(Resonance.Shape.NOTCH, notch.shape());
    assertEquals(peak.centre(), notch.centre());
    assertEquals(peak.width(), notch.width());
  }

  @ParameterizedTest
  @CsvSource({"'NaN 3 4 3.5 0 NaN', 2", "'NaN 0 4 3.5 3 NaN', 2", "'NaN 0 4 3.5 3', 2"})
  void aCurveThatEndsAboveHalfHasNoWidth(String curve, int band) {
    double[] db = numbers(curve);
    FixtureFeature feature = drawn(db).feature(Curve.TO, band, mean(db[band], 1, 3));
    assertEquals(Optional.empty(), feature.width());
  }

  @Test
  void unitsThatShareTheSignAreCounted() {
    List<UnitSample> samples = new ArrayList<>();
    for (int b = 0; b < 3; b++) {
      samples.add(
          new UnitSample(
              new int[] {0, 1, 2, 3}, new double[] {2, -0.1, 0, 0.1}, new double[] {1, 1, 1, 1}));
    }
    Resamples one = new Resamples(new double[][] {{1, 1, 1, 1}});
    assertEquals(2, shape(new double[] {0, 0.5, 0}, samples, 1, one).sharing(1));
    assertEquals(1, shape(new double[] {0, -0.5, 0}, samples, 1, one).sharing(1));
  }

  /** A peak or notch of units that scatter; some lack the upper bands, some have no variance. */
  @Property(tries = 60)
  void intervalsAreThoseOfTheDefinition(
      @ForAll @IntRange(min = 3, max = 5) int units,
      @ForAll @IntRange(min = 0, max = 1_000_000) int seed,
      @ForAll boolean notch,
      @ForAll boolean exact) {
    int bands = 26;
    int sign = notch ? -1 : 1;
    Random random = new Random(seed);
    double tauSquared = exact ? 0 : 0.2;
    double[] variances = random.doubles(units, 0.1, 2).toArray();
    variances[0] = exact ? 0 : variances[0];
    variances[1] = exact ? 0 : variances[1];
    double[][] db = new double[units][bands];
    for (double[] unit : db) {
      double centre = 12.5 + 0.7 * random.nextGaussian();
      Arrays.setAll(
          unit,
          b ->
              b < 2 || b > 23
                  ? Double.NaN
                  : sign * 5 * Math.exp(-0.5 * Math.pow((b - centre) / 2, 2))
                      + 0.4 * random.nextGaussian());
    }
    Arrays.fill(db[0], 16, bands, Double.NaN);
    Literal literal = new Literal(db, variances, tauSquared, sign);
    double[] ones = new double[units];
    Arrays.fill(ones, 1);
    double[] whole = literal.curve(ones, new double[bands]);
    int band = literal.greatest(whole, 8, 17);
    int first = band;
    int last = band;
    while (sign * whole[first - 1] > sign * whole[band] / 2) {
      first--;
    }
    while (sign * whole[last + 1] > sign * whole[band] / 2) {
      last++;
    }
    Resamples resamples = Resamples.drawn(units, RESAMPLES, seed);
    double[] places = new double[RESAMPLES];
    double[] widths = new double[RESAMPLES];
    for (int r = 0; r < RESAMPLES; r++) {
      double[] curve = literal.curve(resamples.counts()[r], whole);
      // Half an octave beyond the study's extent is looked at.
      Arrays.fill(curve, 0, Math.max(0, first - 6), Double.NaN);
      Arrays.fill(curve, Math.min(bands, last + 7), bands, Double.NaN);
      int at = literal.greatest(curve, first, last);
      places[r] = literal.place(curve, at);
      widths[r] = literal.width(curve, at);
    }
    Arrays.sort(places);
    Arrays.sort(widths);
    int tail = TAILS[units];
    double place = literal.place(whole, band);
    double width = literal.width(whole, band);
    FeatureShape shape = shape(whole, literal.samples(), tauSquared, resamples);
    FixtureFeature found =
        shape.feature(Curve.TRANSFER, band, mean(whole[band], tauSquared, units));
    assertEquals(hz(place), found.centre().value(), 1e-6);
    assertEquals(hz(Math.min(place, places[tail - 1])), found.centre().low(), 1e-6);
    assertEquals(hz(Math.max(place, places[RESAMPLES - tail])), found.centre().high(), 1e-6);
    double high = Math.max(width, widths[RESAMPLES - tail]);
    assertEquals(Double.isInfinite(high), found.width().isEmpty());
    found
        .width()
        .ifPresent(
            w -> {
              assertEquals(width * BAND_OCTAVES, w.value(), 1e-9);
              assertEquals(Math.min(width, widths[tail - 1]) * BAND_OCTAVES, w.low(), 1e-9);
              assertEquals(high * BAND_OCTAVES, w.high(), 1e-9);
            });
    assertTrue(found.centre().low() < found.centre().high(), "units scatter");
  }

  private static double hz(double place) {
    return Band.ofIndex(0, 12).midHz() * Math.pow(10, 0.3 * place / 12);
  }

  /** Weighted means over units and their extremes, term by term. */
  @SuppressWarnings("ArrayRecordComponent") // stays in this test
  private record Literal(double[][] db, double[] variances, double tauSquared, int sign) {
    /** The mean where a unit with a weight is drawn; otherwise what stands in for it. */
    double[] curve(double[] counts, double[] otherwise) {
      double[] curve = new double[db[0].length];
      for (int b = 0; b < curve.length; b++) {
        boolean anyExact = false;
        for (int i = 0; i < db.length; i++) {
          anyExact |= !Double.isNaN(db[i][b]) && tauSquared + variances[i] == 0;
        }
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < db.length; i++) {
          if (!Double.isNaN(db[i][b])) {
            double variance = tauSquared + variances[i];
            double weight = anyExact ? (variance == 0 ? 1 : 0) : 1 / variance;
            sum += counts[i] * weight * db[i][b];
            weights += counts[i] * weight;
          }
        }
        boolean measured = b >= 2 && b <= 23;
        curve[b] = !measured ? Double.NaN : weights == 0 ? otherwise[b] : sum / weights;
      }
      return curve;
    }

    int greatest(double[] curve, int first, int last) {
      int at = first;
      for (int b = first; b <= last; b++) {
        at = sign * curve[b] > sign * curve[at] ? b : at;
      }
      return at;
    }

    double place(double[] curve, int at) {
      double bend = curve[at - 1] - 2 * curve[at] + curve[at + 1];
      double vertex = (curve[at - 1] - curve[at + 1]) / (2 * bend);
      return Math.abs(vertex) <= 0.5 ? at + vertex : at;
    }

    double width(double[] curve, int at) {
      double half = sign * curve[at] / 2;
      double width = 0;
      for (int step = -1; step <= 1; step += 2) {
        int b = at;
        while (b >= 0 && b < curve.length && sign * curve[b] > half) {
          b += step;
        }
        if (b < 0 || b >= curve.length || Double.isNaN(curve[b])) {
          return Double.POSITIVE_INFINITY;
        }
        double inner = sign * curve[b - step];
        width += Math.abs(b - at) - (half - sign * curve[b]) / (inner - sign * curve[b]);
      }
      return width;
    }

    List<UnitSample> samples() {
      List<UnitSample> samples = new ArrayList<>();
      for (int b = 0; b < db[0].length; b++) {
        int band = b;
        int[] members =
            IntStream.range(0, db.length).filter(i -> !Double.isNaN(db[i][band])).toArray();
        samples.add(
            new UnitSample(
                members,
                Arrays.stream(members).mapToDouble(i -> db[i][band]).toArray(),
                Arrays.stream(members).mapToDouble(i -> variances[i]).toArray()));
      }
      return samples;
    }
  }
}
