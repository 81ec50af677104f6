package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.AnchoredCapture;

/** Made by hand: every finding word for word, and what lies just inside its limit. */
class FindingSentencesTest {
  private static final BandGrid GRID = BandGrid.covering(20, 20_000, 12);

  private int made;

  private AnchoredCapture made(Side side, int seating, double anchorDb, Response response) {
    made++;
    CaptureEntry entry =
        new CaptureEntry(
            "Elm 1", "head", side, seating, "elm-" + made + ".csv", "", "", "", "", made + 1);
    Capture capture = new Capture(entry, response, "sum " + made);
    return new AnchoredCapture(capture, Levels.of(response, GRID), anchorDb);
  }

  private AnchoredCapture seating(int seating, DoubleUnaryOperator levelDb) {
    return made(Side.M, seating, 90, curve(240, 10, 22_000, levelDb));
  }

  private static Response curve(int points, double from, double to, DoubleUnaryOperator levelDb) {
    double[] hz = new double[points];
    Arrays.setAll(hz, i -> from * Math.pow(to / from, i / (points - 1.0)));
    return Response.copyOf(hz, Arrays.stream(hz).map(levelDb).toArray());
  }

  private static List<Group> oneUnit(AnchoredCapture... captures) {
    return Group.of(List.of(captures), unit -> "on-ear");
  }

  private static List<String> sentences(List<Verdict> verdicts) {
    return verdicts.stream().map(v -> v.capture().file() + " " + v.sentence()).toList();
  }

  private static double flat(double hz) {
    return 0;
  }

  /** A first-order high-pass, as a leak makes it. */
  private static DoubleUnaryOperator leak(double cornerHz) {
    return hz -> -10 * Math.log10(1 + Math.pow(cornerHz / hz, 2));
  }

  @Test
  void aLeakIsALostSealAndAStepIsNone() {
    AnchoredCapture best = seating(1, FindingSentencesTest::flat);
    AnchoredCapture good = seating(2, leak(5));
    AnchoredCapture leaking = seating(3, leak(120));
    // As much less bass, but all the way up to 200 Hz: not what a leak does.
    AnchoredCapture soft = seating(4, hz -> hz < 205 ? -9 : 0);
    assertEquals(
        List.of(
            "elm-3.csv lost seal: bass below the unit's best seal is 9.1 dB, but at most 7.0 dB is"
                + " allowed"),
        sentences(SealCheck.of(oneUnit(best, good, leaking, soft))));
  }

  @Test
  void theBestSealCountsNotTheUsualOne() {
    AnchoredCapture[] leaking = {
      seating(1, leak(120)), seating(2, leak(110)), seating(3, leak(130)), seating(4, leak(125))
    };
    List<AnchoredCapture> all = new ArrayList<>(List.of(leaking));
    all.add(seating(5, FindingSentencesTest::flat));
    List<Verdict> verdicts = SealCheck.of(Group.of(all, unit -> "on-ear"));
    assertEquals(List.of(1, 2, 3, 4), verdicts.stream().map(v -> v.capture().seating()).toList());
    assertEquals(List.of(), SealCheck.of(oneUnit(leaking)));
    assertEquals(List.of(), SealCheck.of(oneUnit(leaking[0])));
  }

  /** Air in a leak may resonate at the knee: that makes the leak no yardstick there. */
  @Test
  void aLeakThatResonatesAccusesNoSoundSeating() {
    DoubleUnaryOperator resonant =
        hz -> leak(120).applyAsDouble(hz) + 7 * Math.exp(-Math.pow(Math.log(hz / 190) / 0.3, 2));
    AnchoredCapture best = seating(1, FindingSentencesTest::flat);
    AnchoredCapture good = seating(2, leak(20));
    AnchoredCapture other = seating(3, leak(2));
    assertEquals(
        List.of(
            "elm-4.csv lost seal: bass below the unit's best seal is 9.1 dB, but at most 7.0 dB is"
                + " allowed"),
        sentences(SealCheck.of(oneUnit(best, good, other, seating(4, resonant)))));
  }

  @Test
  void aSeatingApartFromTheOthersIsOdd() {
    AnchoredCapture odd = seating(4, hz -> hz > 3900 && hz < 10_300 ? 2.04 : 0);
    assertEquals(
        List.of(
            "elm-1.csv odd seating: distance from the unit's middle curve, 4 kHz to 10 kHz, is 2.0"
                + " dB, but at most 1.5 dB is allowed"),
        sentences(
            OddSeating.of(
                oneUnit(
                    seating(1, FindingSentencesTest::flat),
                    seating(2, FindingSentencesTest::flat),
                    seating(3, FindingSentencesTest::flat),
                    odd,
                    seating(5, FindingSentencesTest::flat)))));
    assertEquals(List.of(), OddSeating.of(oneUnit(seating(1, FindingSentencesTest::flat), odd)));
  }

  @Test
  void theSameCurveIsFoundAtAnotherLevelAndInAnotherFile() {
    AnchoredCapture first = seating(1, leak(30));
    AnchoredCapture shifted = seating(2, hz -> leak(30).applyAsDouble(hz) - 7.123);
    AnchoredCapture other = seating(3, leak(30.5));
    assertEquals(
        List.of(
            "elm-1.csv has copies: elm-2.csv holds the same curve; it counts once, here",
            "elm-2.csv same content: the file holds the same curve as elm-1.csv (line "
                + first.capture().entry().line()
                + "), which stands first and counts alone"),
        sentences(SameContent.of(List.of(first, shifted, other))));
  }

  @Test
  void aLevelThatJumpedIsNamed() {
    Response flat = curve(240, 10, 22_000, FindingSentencesTest::flat);
    assertEquals(
        List.of(
            "elm-2.csv level jump: distance from the level of the unit's seatings is 3.0 dB, but at"
                + " most 1.0 dB is allowed"),
        sentences(
            LevelJump.of(
                oneUnit(
                    made(Side.M, 1, 90, flat),
                    made(Side.M, 2, 93, flat),
                    made(Side.M, 3, 90.02, flat),
                    made(Side.M, 4, 90.01, flat),
                    made(Side.M, 5, 90, flat),
                    made(Side.M, 6, 90.9, flat)))));
  }

  @Test
  void sidesExchangedOnceAreNamed() {
    List<AnchoredCapture> captures = new ArrayList<>();
    DoubleUnaryOperator bright = hz -> hz > 9800 ? 2 : 0;
    for (int s = 1; s <= 5; s++) {
      captures.add(
          made(
              Side.L, s, 90, curve(240, 10, 22_000, s == 4 ? bright : FindingSentencesTest::flat)));
      captures.add(
          made(
              Side.R, s, 90, curve(240, 10, 22_000, s == 4 ? FindingSentencesTest::flat : bright)));
    }
    assertEquals(
        List.of(
            "elm-8.csv channel imbalance: left against right, 10 kHz to 20 kHz, against the unit's"
                + " other seatings (both sides moved), is 4.0 dB, but at most 3.0 dB is allowed"),
        sentences(ChannelImbalance.of(Group.of(captures, unit -> "on-ear"))));
  }

  /** The side that moved, whichever it is; without another seating it cannot be told. */
  @Test
  void theSideThatMovedIsAccused() {
    DoubleUnaryOperator bright = hz -> hz > 9800 ? 4 : 0;
    List<AnchoredCapture> captures = new ArrayList<>();
    for (int s = 1; s <= 10; s++) {
      captures.add(made(Side.L, s, 90, at(s == 4 ? bright : FindingSentencesTest::flat)));
      captures.add(made(Side.R, s, 90, at(s == 2 ? bright : FindingSentencesTest::flat)));
    }
    assertEquals(
        List.of(
            "elm-4.csv channel imbalance: left against right, 10 kHz to 20 kHz, against the unit's"
                + " other seatings (the right moved), is 4.0 dB, but at most 3.0 dB is allowed",
            "elm-7.csv channel imbalance: left against right, 10 kHz to 20 kHz, against the unit's"
                + " other seatings (the left moved), is 4.0 dB, but at most 3.0 dB is allowed"),
        sentences(ChannelImbalance.of(Group.of(captures, unit -> "on-ear"))));
  }

  @Test
  void whichSideIsWrongCannotBeToldFromOneSeating() {
    List<AnchoredCapture> captures = new ArrayList<>();
    for (int u = 1; u <= 4; u++) {
      double treble = u == 3 ? 4 : 0;
      captures.add(of("Elm " + u, made(Side.L, 1, 90, at(hz -> hz > 9800 ? treble : 0))));
      captures.add(of("Elm " + u, made(Side.R, 1, 90, at(FindingSentencesTest::flat))));
    }
    assertEquals(
        List.of(
            "elm-6.csv channel imbalance: left against right, 10 kHz to 20 kHz (which side is wrong"
                + " cannot be told), is 4.0 dB, but at most 3.0 dB is allowed"),
        sentences(ChannelImbalance.of(Group.of(captures, unit -> "on-ear"))));
  }

  private static Response at(DoubleUnaryOperator levelDb) {
    return curve(240, 10, 22_000, levelDb);
  }

  private static AnchoredCapture of(String unit, AnchoredCapture made) {
    CaptureEntry e = made.capture().entry();
    CaptureEntry own =
        new CaptureEntry(
            unit, e.fixture(), e.side(), e.seating(), e.file(), "", "", "", "", e.line());
    return new AnchoredCapture(
        new Capture(own, made.capture().response(), made.capture().sha256()),
        made.levels(),
        made.anchorDb());
  }

  @Test
  void rippleIsFoundWhereTheOthersAreSmooth() {
    AnchoredCapture rough =
        made(Side.M, 3, 90, curve(240, 10, 22_000, hz -> hz < 200 && odd(hz) ? 0.6 : 0));
    assertEquals(
        List.of(
            "elm-1.csv noisy capture: ripple from point to point, 20 Hz to 200 Hz, is 0.43 dB, but"
                + " at most 0.15 dB is allowed"),
        sentences(
            NoiseCheck.of(
                oneUnit(
                    rough,
                    seating(1, FindingSentencesTest::flat),
                    seating(2, FindingSentencesTest::flat)))));
    // A resonance that all of them show is no ripple, and with nothing to compare nothing is said.
    DoubleUnaryOperator comb = hz -> odd(hz) ? 3 : 0;
    assertEquals(
        List.of(), NoiseCheck.of(oneUnit(seating(1, comb), seating(2, comb), seating(3, comb))));
    assertEquals(List.of(), NoiseCheck.of(oneUnit(rough)));
  }

  private static boolean odd(double hz) {
    return Math.round(239 * Math.log(hz / 10) / Math.log(2200)) % 2 == 1;
  }

  @Test
  void tooFewPointsAndTooNarrowARangeAreNamed() {
    AnchoredCapture sparse = made(Side.M, 1, 90, curve(31, 10, 22_000, FindingSentencesTest::flat));
    AnchoredCapture narrow =
        made(Side.M, 2, 90, curve(240, 50, 16_000, FindingSentencesTest::flat));
    // One point per band, and a sweep from 20.5 Hz, which misses the lowest band only.
    AnchoredCapture justEnough =
        made(Side.M, 3, 90, curve(134, 10, 22_000, FindingSentencesTest::flat));
    AnchoredCapture from20 =
        made(Side.M, 4, 90, curve(240, 20.5, 22_000, FindingSentencesTest::flat));
    assertEquals(
        List.of(
            "elm-1.csv few points: widest gap between points, above 16.7 Hz, is 0.37 octaves, but"
                + " at most 0.12 octaves is allowed",
            "elm-2.csv narrow range: part of the study's range without a level, 50 Hz to 16 kHz"
                + " measured, is 1.67 octaves, but at most 0.17 octaves is allowed"),
        sentences(Completeness.of(List.of(sparse, narrow, justEnough, from20))));
  }

  @Test
  void noVerdictHoldsANumberThatIsNone() {
    CaptureEntry entry = seating(1, FindingSentencesTest::flat).capture().entry();
    assertThrows(
        IllegalArgumentException.class,
        () -> new Verdict(entry, Finding.NOISY, Double.NaN, 1, "", false));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Verdict(entry, Finding.NOISY, 1, Double.POSITIVE_INFINITY, "", false));
  }
}
