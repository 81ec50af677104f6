package org.twinrig.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.response.Smoothing;
import org.twinrig.study.PairedUnits;

/** Units are sums of cosines of log frequency about their kind's mean. */
class GraphDoubtsTest {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);
  private static final double DENSE = 24;

  /** A unit's levels: a broad tuning, and ripples of some tenths of a decibel. */
  private static double[] unit(String kind, long seed) {
    Random random = new Random(seed);
    double[] db = new double[GRID.size()];
    for (int k = 1; k <= 60; k++) {
      double size = 1.5 / (1 + 0.25 * k) * random.nextGaussian();
      double phase = 2 * Math.PI * random.nextDouble();
      int wave = k;
      Arrays.setAll(
          db, b -> db[b] + size * Math.cos(Math.PI * wave * b / (double) db.length + phase));
    }
    double peak = kind.equals("in-ear") ? 6 : -5;
    Arrays.setAll(db, b -> db[b] + peak * bump(GRID.band(b).midHz(), 8000, 0.3));
    return db;
  }

  private static double bump(double hz, double centre, double octaves) {
    double away = Math.log(hz / centre) / Math.log(2) / octaves;
    return Math.exp(-away * away / 2);
  }

  private static KindProfile profile(String kind, int units) {
    List<Levels> means = new ArrayList<>();
    for (int u = 0; u < units; u++) {
      means.add(Levels.copyOf(GRID, unit(kind, kind.hashCode() + 1000L * u)));
    }
    double[] unknown = new double[GRID.size()];
    Arrays.fill(unknown, Double.NaN);
    PairedUnits.OnFixture on =
        new PairedUnits.OnFixture(
            means,
            Collections.nCopies(units, Collections.nCopies(GRID.size(), 1)),
            Levels.copyOf(GRID, unknown),
            means.stream().map(List::of).toList());
    return KindProfile.of(new PairedUnits(kind, GRID, Collections.nCopies(units, "Alder"), on, on));
  }

  private static final double[] REFERENCE = new double[GRID.size()];

  static {
    Arrays.setAll(REFERENCE, b -> 10 * bump(GRID.band(b).midHz(), 2500, 0.6));
  }

  private static final GraphDoubts DOUBTS =
      new GraphDoubts(
          List.of(profile("over-ear", 12), profile("in-ear", 12)),
          Map.of("house.csv", Levels.copyOf(GRID, REFERENCE)));

  private static GraphDoubts.Claims claims(String kind, String reference) {
    return new GraphDoubts.Claims(
        "G-1", "g.csv", kind, reference, OptionalDouble.of(1), Smoothing.NONE, DENSE);
  }

  private static List<Doubt> of(GraphDoubts.Claims claims, double[] db) {
    return DOUBTS.of(claims, Levels.copyOf(GRID, db), b -> 0);
  }

  private static List<String> words(List<Doubt> doubts) {
    return doubts.stream().map(Doubt::doubt).toList();
  }

  private static double[] plus(double[] some, double[] more, double by) {
    double[] sum = new double[some.length];
    Arrays.setAll(sum, i -> some[i] + by * more[i]);
    return sum;
  }

  @Test
  void soundGraphsAreRarelyDoubted() {
    int doubted = 0;
    for (int seed = 1; seed <= 200; seed++) {
      doubted += of(claims("over-ear", ""), unit("over-ear", seed)).isEmpty() ? 0 : 1;
      doubted += of(claims("in-ear", ""), unit("in-ear", seed)).isEmpty() ? 0 : 1;
    }
    assertTrue(doubted <= 20, doubted + " of 400");
  }

  @Test
  void theKindThatFitsIsNamed() {
    Doubt doubt = of(claims("over-ear", ""), unit("in-ear", 7)).get(0);
    assertEquals("kind doubtful", doubt.doubt());
    assertEquals("G-1", doubt.name());
    assertTrue(
        doubt
            .likelyCause()
            .matches(
                "its shape fits `in-ear`, from whose mean it is [0-9.]+ dB RMS away; from that of"
                    + " `over-ear`, as listed, [0-9.]+ dB[.]"),
        doubt.likelyCause());
    assertEquals(
        "It would be translated by the wrong kind's transfer. Correct `kind` in the catalogue; or"
            + " say in `confirmed` why it is right.",
        doubt.remedy());
  }

  @Test
  void aReferenceTooMuchOrTooLittleIsFound() {
    double[] raw = unit("over-ear", 8);
    List<Doubt> compensated = of(claims("over-ear", ""), plus(raw, REFERENCE, -1));
    assertEquals(List.of("form doubtful"), words(compensated));
    assertEquals(
        "its shape is likelier among the study's units with `house.csv` added back: compensated by"
            + " it, although listed as raw.",
        compensated.get(0).likelyCause());
    List<Doubt> twice = of(claims("over-ear", "house.csv"), plus(raw, REFERENCE, 1));
    assertEquals(List.of("form doubtful"), words(twice));
    assertEquals(
        "its shape is likelier among the study's units as it was published: raw, although listed as"
            + " compensated by `house.csv`.",
        twice.get(0).likelyCause());
    assertEquals(List.of(), words(of(claims("over-ear", "house.csv"), raw)));
  }

  @Test
  void aLeakIsOutsideTheStudy() {
    double[] leaky = unit("over-ear", 9);
    Arrays.setAll(leaky, b -> leaky[b] - 15 / (1 + Math.pow(GRID.band(b).midHz() / 100, 2)));
    Doubt doubt = of(claims("over-ear", ""), leaky).get(0);
    assertEquals("outside the study", doubt.doubt());
    assertTrue(
        doubt
            .likelyCause()
            .matches(
                "its deep bass lies [0-9.]+ dB below the mean of the study's units of `over-ear`"
                    + " [(]doubted from [0-9.]+ dB on[)]: leaky pads or tips, or a kind of its"
                    + " own[.]"),
        doubt.likelyCause());
  }

  @Test
  void noiseAndSmoothingAreTold() {
    double[] raw = unit("over-ear", 10);
    Random random = new Random(3);
    double[] noisy = raw.clone();
    Arrays.setAll(noisy, b -> raw[b] + 0.9 * random.nextGaussian());
    assertTrue(words(of(claims("over-ear", ""), noisy)).contains("noise"));
    double[] smooth = raw.clone();
    for (int b = 2; b < raw.length - 2; b++) {
      smooth[b] = (raw[b - 2] / 2 + raw[b - 1] + raw[b] + raw[b + 1] + raw[b + 2] / 2) / 4;
    }
    Doubt doubt = of(claims("over-ear", ""), smooth).get(0);
    assertEquals("smoothing doubtful", doubt.doubt());
    assertTrue(
        doubt.likelyCause().endsWith("over about 1/3 octave; listed as not smoothed."),
        doubt.likelyCause());
    GraphDoubts.Claims fewPoints =
        new GraphDoubts.Claims(
            "G-1", "g.csv", "over-ear", "", OptionalDouble.of(1), Smoothing.NONE, 6);
    assertEquals(List.of(), of(fewPoints, smooth));
  }

  @Test
  void nothingIsSaidWhereNothingIsKnown() {
    assertEquals(List.of(), of(claims("unknown", ""), unit("in-ear", 7)));
    GraphDoubts few = new GraphDoubts(List.of(profile("over-ear", 3)), Map.of());
    assertEquals(
        List.of(), few.of(claims("over-ear", ""), Levels.copyOf(GRID, unit("in-ear", 7)), b -> 0));
  }

  /** Units seated once show what more seatings have at most, and not what these have. */
  @Test
  void ofMoreSeatingsThanTheUnitsNoiseAloneIsTold() {
    GraphDoubts.Claims five =
        new GraphDoubts.Claims(
            "G-1", "g.csv", "over-ear", "", OptionalDouble.of(5), Smoothing.NONE, DENSE);
    double[] raw = unit("over-ear", 10);
    double[] smooth = raw.clone();
    for (int b = 2; b < raw.length - 2; b++) {
      smooth[b] = (raw[b - 2] / 2 + raw[b - 1] + raw[b] + raw[b + 1] + raw[b + 2] / 2) / 4;
    }
    assertEquals(List.of(), of(five, smooth));
    Random random = new Random(3);
    double[] noisy = raw.clone();
    Arrays.setAll(noisy, b -> raw[b] + 0.9 * random.nextGaussian());
    assertTrue(words(of(five, noisy)).contains("noise"));
  }

  /** NumPy 2.4.6 on the same numbers. */
  @Test
  void theDistanceIsThatOfNumPy() {
    double[][] one = {{0, 1}, {2, 1}, {1, 4}};
    double[][] other = {{5, 0}, {7, 2}, {6, 1}, {6, 5}};
    KindLikelihood likelihood =
        KindLikelihood.of(
            one,
            KindLikelihood.solver(
                KindLikelihood.pooled(
                    List.of(one, other), new KindLikelihood.Shrinkage(0.2, 1, 0.1))));
    assertEquals(6.3529552774567914, likelihood.distance(new double[] {4, 1.5}), 1e-9);
    assertEquals(-3.0343296487537073, likelihood.log(new double[] {4, 1.5}), 1e-9);
  }
}
