package org.twinrig.response;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;

/**
 * A frequency response: levels in dB at strictly rising frequencies in Hz, piecewise linear in (ln
 * f, dB) between the points and undefined outside them. Immutable, compared by content.
 *
 * <p>A straight line over a hole is not a measurement: where neighbouring points are further apart
 * than 1/3 octave there is no level between them either, and where they are further apart than 1/6
 * octave the curve is coarse. Tables stand at preferred frequencies (ISO 3, ISO 266), whose steps
 * are uneven by rounding; a step counts as 1/3 octave up to the widest of the series R 10, 125 to
 * 160 (0.36 octave), and as 1/6 octave up to the widest of R 20, 140 to 160 (0.19 octave). Points
 * {@code Δ} Hz apart, as a Fourier transform gives them, are therefore coarse below {@code 7Δ} and
 * leave a hole below about {@code 3.6Δ}: 35 Hz and 18 Hz for steps of 5 Hz.
 *
 * <p>A curve may also have a resolution, which is the same number of Hz everywhere, however close
 * its points are.
 */
public final class Response {
  private static final double WIDEST_STEP = 160.0 / 125 * (1 + 1e-9);
  private static final double WIDEST_FINE_STEP = 160.0 / 140 * (1 + 1e-9);

  private static final double NEPERS_PER_DB = Math.log(10) / 10;

  private final double[] frequenciesHz;
  private final double[] levelsDb;

  /**
   * For each piece between two points, the ratio of the measured frequencies it lies between; empty
   * where all points are measured ones.
   */
  private final double[] steps;

  private final double resolutionHz;

  private Response(double[] frequenciesHz, double[] levelsDb, double[] steps, double resolutionHz) {
    this.frequenciesHz = frequenciesHz;
    this.levelsDb = levelsDb;
    this.steps = steps;
    this.resolutionHz = resolutionHz;
  }

  /** A response from two or more points: strictly rising above 0 Hz, with finite levels; copied. */
  public static Response copyOf(double[] frequenciesHz, double[] levelsDb) {
    if (frequenciesHz.length != levelsDb.length || frequenciesHz.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a response needs two or more points, but has %d frequencies and %d levels",
              frequenciesHz.length,
              levelsDb.length));
    }
    for (int i = 0; i < frequenciesHz.length; i++) {
      Checks.positive(frequenciesHz[i], "a frequency in Hz");
      Checks.finite(levelsDb[i], "a level in dB");
      if (i > 0 && !(frequenciesHz[i] > frequenciesHz[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "frequencies must rise, but %s Hz follows %s Hz",
                frequenciesHz[i],
                frequenciesHz[i - 1]));
      }
    }
    return new Response(frequenciesHz.clone(), levelsDb.clone(), new double[0], 0);
  }

  /**
   * The same curve as one that tells nothing apart within so many Hz: of a spectrum, the reciprocal
   * of its window's length.
   */
  public Response resolving(double hz) {
    return new Response(frequenciesHz, levelsDb, steps, Checks.positive(hz, "a resolution in Hz"));
  }

  /** How many points there are: 2 or more. */
  public int size() {
    return frequenciesHz.length;
  }

  /** The frequency of a point. */
  public double frequencyHz(int point) {
    return frequenciesHz[point];
  }

  /** The level of a point. */
  public double levelDb(int point) {
    return levelsDb[point];
  }

  /** The lowest frequency. */
  public double fromHz() {
    return frequenciesHz[0];
  }

  /** The highest frequency. */
  public double toHz() {
    return frequenciesHz[frequenciesHz.length - 1];
  }

  /**
   * The level at any frequency above 0 Hz, linear in (ln f, dB) between points; nothing outside the
   * measured range and inside a hole.
   */
  public OptionalDouble levelAt(double hz) {
    Checks.positive(hz, "a frequency in Hz");
    int found = Arrays.binarySearch(frequenciesHz, hz);
    if (found >= 0) {
      return OptionalDouble.of(levelsDb[found]);
    }
    int left = -found - 2;
    return left < 0 || left == size() - 1 || isHole(left)
        ? OptionalDouble.empty()
        : OptionalDouble.of(between(left, hz));
  }

  /** The same curve with a finite shift added to every level. */
  public Response plus(double shiftDb) {
    Checks.finite(shiftDb, "a shift in dB");
    return withLevels(Arrays.stream(levelsDb).map(l -> l + shiftDb).toArray());
  }

  /** As many other finite levels at the same frequencies, measured as these are; copied. */
  public Response withLevels(double[] otherDb) {
    return new Response(
        frequenciesHz, copyOf(frequenciesHz, otherDb).levelsDb, steps, resolutionHz);
  }

  /**
   * The sum of two curves where both reach, at the points of both: exact for lines between. What
   * either of them did not measure the sum does not have; nothing when they do not overlap.
   */
  public Optional<Response> plus(Response other) {
    double lowHz = Math.max(fromHz(), other.fromHz());
    double highHz = Math.min(toHz(), other.toHz());
    if (!(lowHz < highHz)) {
      return Optional.empty();
    }
    double[] hz =
        DoubleStream.concat(Arrays.stream(frequenciesHz), Arrays.stream(other.frequenciesHz))
            .filter(f -> f >= lowHz && f <= highHz)
            .sorted()
            .distinct()
            .toArray();
    double[] sums = new double[hz.length];
    double[] widest = new double[hz.length - 1];
    for (int i = 0; i < hz.length; i++) {
      sums[i] = onLine(hz[i]) + other.onLine(hz[i]);
      if (i > 0) {
        widest[i - 1] = Math.max(step(piece(hz[i - 1])), other.step(other.piece(hz[i - 1])));
      }
    }
    double coarser = Math.max(resolutionHz, other.resolutionHz);
    return Optional.of(new Response(hz, copyOf(hz, sums).levelsDb, widest, coarser));
  }

  /**
   * Whether two curves are one but for their level: where both reach, at the points of both, their
   * difference stays within a tolerance of a constant. Curves that share less than half of the axis
   * they cover together are not compared.
   *
   * @param toleranceDb 0 or more, dB
   */
  public boolean sameShape(Response other, double toleranceDb) {
    double lowHz = Math.max(fromHz(), other.fromHz());
    double highHz = Math.min(toHz(), other.toHz());
    double all = Math.max(toHz(), other.toHz()) / Math.min(fromHz(), other.fromHz());
    if (!(lowHz < highHz) || Math.log(highHz / lowHz) < Math.log(all) / 2) {
      return false;
    }
    // A look at a few points first: curves that part late would take long for thousands of pairs.
    // Arithmetic on levels of a hundred dB errs by less than the last term.
    double widestDb = 2 * toleranceDb + 1e-9;
    return parallel(other, new double[] {lowHz, highHz}, 61, widestDb)
        && parallel(other, new double[] {lowHz, highHz}, 1, widestDb);
  }

  /** Whether the difference of two curves, at every so many points of either, varies but little. */
  private boolean parallel(Response other, double[] endsHz, int stride, double widestDb) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Response points : List.of(this, other)) {
      int first = Arrays.binarySearch(points.frequenciesHz, endsHz[0]);
      for (int p = first < 0 ? -first - 1 : first;
          p < points.size() && points.frequenciesHz[p] <= endsHz[1];
          p += stride) {
        double hz = points.frequenciesHz[p];
        double differenceDb = onLine(hz) - other.onLine(hz);
        least = Math.min(least, differenceDb);
        most = Math.max(most, differenceDb);
        if (most - least > widestDb) {
          return false;
        }
      }
    }
    return true;
  }

  /**
   * Whether two measured points next to each other are too far apart for a level between them.
   *
   * @param piece the point below, from 0
   * @return true when they are further apart than 1/3 octave
   */
  public boolean isHole(int piece) {
    return step(piece) > WIDEST_STEP;
  }

  /**
   * The first hole that reaches into a stretch.
   *
   * @param lowHz lower end of the stretch, Hz
   * @param highHz upper end, Hz
   * @return the point below the hole; nothing where there is none
   */
  public OptionalInt holeIn(double lowHz, double highHz) {
    return IntStream.range(0, size() - 1)
        .filter(p -> isHole(p) && frequencyHz(p) < highHz && frequencyHz(p + 1) > lowHz)
        .findFirst();
  }

  /** Whether the points about a piece are further apart than 1/6 octave. */
  boolean isCoarse(int piece) {
    return step(piece) > WIDEST_FINE_STEP;
  }

  /** Whether a band is narrower than what the curve tells apart; its level is interpolated. */
  boolean blurs(Band band) {
    return band.upperHz() - band.lowerHz() < resolutionHz * (1 - 1e-9);
  }

  private double step(int piece) {
    return steps.length == 0 ? frequenciesHz[piece + 1] / frequenciesHz[piece] : steps[piece];
  }

  /** The piece that starts at or holds a frequency inside the range. */
  private int piece(double hz) {
    int found = Arrays.binarySearch(frequenciesHz, hz);
    return Math.min(found >= 0 ? found : -found - 2, size() - 2);
  }

  /** The level at a frequency inside the range, on the straight line also where there is a hole. */
  private double onLine(double hz) {
    int found = Arrays.binarySearch(frequenciesHz, hz);
    return found >= 0 ? levelsDb[found] : between(-found - 2, hz);
  }

  /** Level at {@code hz} on the piece that starts at point {@code left}. */
  double between(int left, double hz) {
    double span = Math.log(frequenciesHz[left + 1] / frequenciesHz[left]);
    double share = Math.log(hz / frequenciesHz[left]) / span;
    return levelsDb[left] + share * (levelsDb[left + 1] - levelsDb[left]);
  }

  /**
   * The mean-square level over a stretch that lies inside the response, per unit of log frequency.
   *
   * <p>{@code L = 10·lg( 1/(u2-u1) · ∫ 10^(L(u)/10) du )}, {@code u = ln f} from {@code u1} to
   * {@code u2}. Each piece is integrated in closed form: from level {@code L0} to {@code L1} over
   * {@code Δu} it contributes {@code Δu·10^(L0/10)·(e^z - 1)/z} with {@code z = (L1-L0)·ln(10)/10}.
   *
   * @param firstPiece the point the piece of the lower end starts at
   */
  double meanSquareDb(double lowerHz, double upperHz, int firstPiece) {
    // Powers are taken relative to the level at the lower end, so that no level can overflow.
    double reference = between(firstPiece, lowerHz);
    double leftHz = lowerHz;
    double leftDb = reference;
    double integral = 0;
    for (int piece = firstPiece; leftHz < upperHz; piece++) {
      double endHz = frequenciesHz[piece + 1];
      double rightHz = Math.min(endHz, upperHz);
      double rightDb = endHz <= upperHz ? levelsDb[piece + 1] : between(piece, rightHz);
      double power = Math.exp(NEPERS_PER_DB * (leftDb - reference));
      double z = NEPERS_PER_DB * (rightDb - leftDb);
      integral += Math.log(rightHz / leftHz) * power * (z == 0 ? 1 : Math.expm1(z) / z);
      leftHz = rightHz;
      leftDb = rightDb;
    }
    return reference + Math.log(integral / Math.log(upperHz / lowerHz)) / NEPERS_PER_DB;
  }

  /**
   * The mean-square level of a band most of which lies inside the response, which goes on at its
   * outermost level up to the edge that it does not reach.
   */
  double meanSquareDb(Band band, int firstPiece) {
    double lowHz = Math.max(band.lowerHz(), fromHz());
    double highHz = Math.min(band.upperHz(), toHz());
    double insideDb = meanSquareDb(lowHz, highHz, firstPiece);
    double below = Math.log(lowHz / band.lowerHz());
    double above = Math.log(band.upperHz() / highHz);
    if (below == 0 && above == 0) {
      return insideDb;
    }
    double[] partsDb = {insideDb, levelsDb[0], levelsDb[size() - 1]};
    double[] spans = {Math.log(highHz / lowHz), below, above};
    // Relative to the greatest, so that no power can overflow.
    double reference = Arrays.stream(partsDb).max().orElseThrow();
    double integral = 0;
    for (int p = 0; p < partsDb.length; p++) {
      integral += spans[p] * Math.exp(NEPERS_PER_DB * (partsDb[p] - reference));
    }
    double span = Math.log(band.upperHz() / band.lowerHz());
    return reference + Math.log(integral / span) / NEPERS_PER_DB;
  }

  /**
   * The mean of the levels in dB over a stretch that lies inside the response, per unit of log
   * frequency: {@code 1/(u2-u1) · ∫ L(u) du}, exact for the lines between points.
   *
   * @param firstPiece the point the piece of the lower end starts at
   */
  double meanLevelDb(double lowerHz, double upperHz, int firstPiece) {
    double leftHz = lowerHz;
    double leftDb = between(firstPiece, lowerHz);
    double integral = 0;
    for (int piece = firstPiece; leftHz < upperHz; piece++) {
      double rightHz = Math.min(frequenciesHz[piece + 1], upperHz);
      double rightDb = between(piece, rightHz);
      integral += Math.log(rightHz / leftHz) * (leftDb + rightDb) / 2;
      leftHz = rightHz;
      leftDb = rightDb;
    }
    return integral / Math.log(upperHz / lowerHz);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Response that
        && Arrays.equals(frequenciesHz, that.frequenciesHz)
        && Arrays.equals(levelsDb, that.levelsDb)
        && Arrays.equals(steps, that.steps)
        && resolutionHz == that.resolutionHz;
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(frequenciesHz) + Arrays.hashCode(levelsDb);
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "Response[%d points, %s Hz to %s Hz]", size(), fromHz(), toHz());
  }
}
