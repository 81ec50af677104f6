package org.twinrig.spectrum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;

/** Sounds whose response is known in closed form. */
class SoundSpectrumTest {
  private static final SoundContent IMPULSE =
      new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty());

  private static double[] click(int size, int at, double height) {
    double[] samples = new double[size];
    samples[at] = height;
    return samples;
  }

  private static SoundSpectrum of(double[] samples, double rateHz, SoundContent content)
      throws UnusableSound {
    return SoundSpectrum.of(Signal.copyOf(samples, rateHz), content);
  }

  private static UnusableSound refused(double[] samples, SoundContent content) {
    return assertThrows(UnusableSound.class, () -> of(samples, 48_000, content));
  }

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000, 96_000})
  void aDelayedClickIsFlat(int rateHz) throws Exception {
    SoundSpectrum flat = of(click(rateHz, 1234, 0.5), rateHz, IMPULSE);
    assertEquals(1000.0 * 1234 / rateHz, flat.onsetMs(), 1e-9);
    assertEquals(2, flat.beforeOnsetMs(), 0.01);
    assertEquals(200, flat.lengthMs(), 0.01);
    assertEquals(List.of(), flat.notes());
    assertEquals(5, flat.response().fromHz(), 0.4);
    assertEquals(0.95 * rateHz / 2, flat.response().toHz(), 1);
    assertTrue(flat.response().size() < 700, "flat, but every band has a point of its own");
    for (double hz : List.of(5.5, 20.0, 1000.0, 20_000.0)) {
      assertEquals(20 * Math.log10(0.5), flat.response().levelAt(hz).orElseThrow(), 1e-9);
    }
  }

  /** 500 ms: 2 Hz, which bands of 1/12 octave are as wide as from 35 Hz on. */
  @Test
  void theWindowSetsTheResolution() throws Exception {
    assertEquals(new ImpulseWindow(2, 500, 10), ImpulseWindow.defaults());
    BandGrid grid = BandGrid.covering(20, 20_000, 12);
    for (double ms : List.of(200.0, 500.0)) {
      SoundContent content = new SoundContent(new ImpulseWindow(2, ms, 10), Optional.empty());
      Levels levels = Levels.of(of(click(48_000, 480, 0.5), 48_000, content).response(), grid);
      for (int b = 0; b < grid.size(); b++) {
        assertEquals(grid.band(b).midHz() < 17_320 / ms, levels.isCoarse(b), "band " + b);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000, 96_000})
  void aFilterHasItsLevels(int rateHz) throws Exception {
    Filter filter = new Filter(rateHz).peak(60, 1, 6).peak(3000, 4, 8).peak(9000, 8, -15);
    Response response = of(filter.apply(click(rateHz / 2, 500, 0.25)), rateHz, IMPULSE).response();
    assertClose(filter, -12.0412, response, 0.006, 20);
  }

  /** Farina's sweep of 10 s, with a second harmonic of 10 % and a third of 5 %. */
  @Test
  void aSweepHasItsFiltersLevelsWithoutItsHarmonics() throws Exception {
    int rateHz = 48_000;
    Sweep sweep = new Sweep(10, 22_000, 10, 0, 0);
    Filter filter = new Filter(rateHz).peak(60, 1, 6).peak(3000, 4, 8).peak(9000, 8, -15);
    double[] played = new double[11 * rateHz];
    Signal signal = sweep.signal(rateHz);
    for (int i = 0; i < signal.size(); i++) {
      played[4800 + i] = 0.2 * signal.sample(i);
    }
    double[] recorded = filter.apply(played);
    addHarmonics(recorded, sweep, rateHz);
    SoundSpectrum linear = of(recorded, rateHz, swept(sweep));
    assertEquals(100, linear.onsetMs(), 0.5);
    assertClose(filter, 20 * Math.log10(0.2), linear.response(), 0.05, 20);
    assertClose(filter, 20 * Math.log10(0.2), linear.response(), 0.01, 40);
    assertTrue(linear.response().fromHz() >= 10 && linear.response().toHz() <= 22_000);
  }

  private static void addHarmonics(double[] recorded, Sweep sweep, int rateHz) {
    double scale = sweep.seconds() / Math.log(sweep.toHz() / sweep.fromHz());
    for (int i = 0; i < sweep.size(rateHz); i++) {
      double phase = 2 * Math.PI * sweep.fromHz() * scale * Math.expm1(i / (double) rateHz / scale);
      double hz = sweep.fromHz() * Math.exp(i / (double) rateHz / scale);
      recorded[4800 + i] += 2 * hz < 21_000 ? 0.02 * Math.sin(2 * phase) : 0;
      recorded[4800 + i] += 3 * hz < 21_000 ? 0.01 * Math.sin(3 * phase) : 0;
    }
  }

  @Test
  void fadesOfTheSweepAreAllowedFor() throws Exception {
    Sweep sweep = new Sweep(20, 20_000, 1, 50, 20);
    double[] recorded = new double[60_000];
    Signal signal = sweep.signal(48_000);
    assertEquals(0, signal.sample(0));
    Arrays.setAll(recorded, i -> i < signal.size() ? 0.9 * signal.sample(i) : 0);
    Response response = of(recorded, 48_000, swept(sweep)).response();
    assertEquals(40, response.fromHz(), 1, "half the second harmonic's lead is 50 ms");
    for (double hz : List.of(50.0, 200.0, 1000.0, 19_000.0)) {
      assertEquals(20 * Math.log10(0.9), response.levelAt(hz).orElseThrow(), 0.05, hz + " Hz");
    }
  }

  private static void assertClose(
      Filter filter, double aboveDb, Response response, double toleranceDb, double fromHz) {
    for (double hz = fromHz; hz <= 20_000; hz *= 1.01) {
      assertEquals(
          aboveDb + filter.levelDb(hz),
          response.levelAt(hz).orElseThrow(),
          toleranceDb,
          hz + " Hz");
    }
  }

  /** A window full of noise is the roughest spectrum it can have: bins must be dense enough. */
  @Test
  void bandLevelsOfTheRoughestSpectrumAreThoseOfADenseTransform() throws Exception {
    double[] noise = new double[9700];
    Random random = new Random(5);
    Arrays.setAll(noise, i -> i < 96 ? 0 : 0.1 * random.nextGaussian());
    noise[96] = 0.9;
    Signal signal = Signal.copyOf(noise, 48_000);
    Segment segment = Segment.of(signal, 96, IMPULSE);
    Response ours = Magnitudes.of(segment, 0, Magnitudes.Span.of(segment, IMPULSE));
    BandGrid grid = BandGrid.covering(20, 20_000, 12);
    Levels levels = Levels.of(ours, grid);
    Levels dense = Levels.of(dense(segment, 1 << 20), grid);
    for (int b = 0; b < grid.size(); b++) {
      assertEquals(dense.db(b), levels.db(b), 0.1, grid.band(b).toString());
    }
  }

  private static Response dense(Segment segment, int size) {
    double[] real = new double[size];
    double[] imaginary = new double[size];
    segment.copyTo(real, 0);
    Fourier.forward(real, imaginary);
    double[] hz = new double[size / 2 - 1];
    double[] db = new double[hz.length];
    for (int k = 1; k < size / 2; k++) {
      hz[k - 1] = k * 48_000.0 / size;
      db[k - 1] = 10 * Math.log10(real[k] * real[k] + imaginary[k] * imaginary[k]);
    }
    return Response.copyOf(hz, db);
  }

  @Test
  void aShortFileLosesItsLowBands() throws Exception {
    Filter filter = new Filter(48_000).peak(3000, 2, 6);
    SoundSpectrum spectrum = of(filter.apply(click(1000, 40, 0.5)), 48_000, IMPULSE);
    assertEquals(
        List.of(
            "the file ends 20.0 ms after the onset, before the window does; levels below 50 Hz are left out"),
        spectrum.notes());
    assertTrue(spectrum.response().fromHz() >= 50);
    Levels levels = Levels.of(spectrum.response(), BandGrid.covering(20, 20_000, 12));
    assertFalse(levels.has(0));
    assertTrue(levels.has(30));
  }

  @Test
  void anOffsetIsTakenOffAndNoted() throws Exception {
    double[] samples = click(48_000, 5000, 0.5);
    Arrays.setAll(samples, i -> samples[i] + 0.001);
    SoundSpectrum spectrum = of(samples, 48_000, IMPULSE);
    assertEquals(
        List.of("a constant offset 54.0 dB below the peak was taken off"), spectrum.notes());
    assertEquals(20 * Math.log10(0.5), spectrum.response().levelAt(20).orElseThrow(), 0.001);
  }

  @Test
  void noiseAndAnUnfinishedTailAreNoted() throws Exception {
    double[] noisy = click(48_000, 5000, 0.5);
    Random random = new Random(1);
    Arrays.setAll(noisy, i -> noisy[i] + 0.0005 * random.nextGaussian());
    List<String> notes = of(noisy, 48_000, IMPULSE).notes();
    assertEquals(
        List.of(
            "the rest of the file lies only 20.2 dB below the window: noise may show in the levels"),
        notes);
    double[] ringing = new Filter(48_000).peak(30, 6, 24).apply(click(96_000, 5000, 0.25));
    List<String> tail = of(ringing, 48_000, IMPULSE).notes();
    assertEquals(
        "levels up to 44.7 Hz change by up to 1.5 dB when the window is a quarter shorter: there the"
            + " sound has not died away 200.0 ms after its onset, or is noise; record longer and"
            + " raise `impulse.length_ms`",
        tail.get(tail.size() - 1));
    SoundContent longer = new SoundContent(new ImpulseWindow(2, 1500, 10), Optional.empty());
    assertEquals(List.of(), of(ringing, 48_000, longer).notes());
  }

  @Test
  void aSoundThatIsNoneIsRefused() {
    assertEquals("every sample is zero", refused(new double[100], IMPULSE).getMessage());
    double[] clipped = click(4800, 100, 1);
    clipped[101] = 0.99999;
    assertEquals(1, assertClippedOnlyWith(clipped, 102));
    double[] swing = {0.5, 0.1, 0};
    assertEquals(
        "a window of 0.06 ms tells less than an octave below 22.8 kHz",
        refused(swing, IMPULSE).getMessage());
  }

  private static int assertClippedOnlyWith(double[] two, int third) {
    try {
      of(two, 48_000, IMPULSE);
    } catch (UnusableSound e) {
      return 0;
    }
    double[] three = two.clone();
    three[third] = 1;
    UnusableSound refusal = refused(three, IMPULSE);
    assertEquals(
        "the sound is clipped: 3 samples in a row stand at full scale from sample 101 on",
        refusal.getMessage());
    assertEquals("lower the level and measure again", refusal.remedy());
    return 1;
  }

  @Test
  void aSweepIsNoImpulseResponseAndTheOtherWayRound() {
    Sweep sweep = new Sweep(10, 22_000, 2, 0, 0);
    double[] swept = new double[110_000];
    Signal signal = sweep.signal(48_000);
    Arrays.setAll(
        swept, i -> i >= 480 && i < 480 + signal.size() ? 0.5 * signal.sample(i - 480) : 0);
    UnusableSound asImpulse = refused(swept, IMPULSE);
    assertTrue(
        asImpulse.getMessage().startsWith("the sound does not stand out"), asImpulse.getMessage());
    assertTrue(asImpulse.remedy().startsWith("declare the `sweep`"), asImpulse.remedy());
    UnusableSound asSweep = refused(click(110_000, 5000, 0.5), swept(sweep));
    assertTrue(
        asSweep.remedy().contains("correct `sweep`"), asSweep.getMessage() + asSweep.remedy());
    for (Sweep other :
        List.of(
            new Sweep(10, 22_000, 1, 0, 0),
            new Sweep(20, 20_000, 2, 0, 0),
            new Sweep(10, 22_000, 1.8, 0, 0),
            new Sweep(10, 22_000, 1.95, 0, 0),
            new Sweep(10, 22_000, 2.05, 0, 0))) {
      UnusableSound wrong = refused(swept, swept(other));
      assertTrue(wrong.remedy().contains("correct `sweep`"), wrong.getMessage());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "10 | 25000 | 1 | the sweep runs up to 25 kHz, but a sampling rate of 48 kHz reaches 24 kHz",
        "10 | 22000 | 3 | the recording lasts 2.00 s, less than the sweep of 3.00 s"
      })
  void aRecordingMustHoldTheSweep(double fromHz, double toHz, double seconds, String what) {
    SoundContent swept = swept(new Sweep(fromHz, toHz, seconds, 0, 0));
    assertEquals(what, refused(click(96_000, 10, 0.5), swept).getMessage());
  }

  @Test
  void valuesRefuseNonsense() {
    assertEquals(0, new ImpulseWindow(0, 10, 5).beforeOnsetMs());
    assertThrows(IllegalArgumentException.class, () -> new ImpulseWindow(0, 10, 5.1));
    assertThrows(IllegalArgumentException.class, () -> new ImpulseWindow(-1, 10, 5));
    assertThrows(IllegalArgumentException.class, () -> new ImpulseWindow(0, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> new ImpulseWindow(0, Double.NaN, 0));
    assertEquals(1, new Sweep(10, 20, 1, 500, 500).seconds());
    assertThrows(IllegalArgumentException.class, () -> new Sweep(10, 20, 1, 500, 501));
    assertThrows(IllegalArgumentException.class, () -> new Sweep(20, 20, 1, 0, 0));
    assertThrows(IllegalArgumentException.class, () -> Signal.copyOf(new double[0], 48_000));
    assertThrows(
        IllegalArgumentException.class, () -> Signal.copyOf(new double[] {Double.NaN}, 48_000));
    assertThrows(IllegalArgumentException.class, () -> Signal.copyOf(new double[1], 0));
    double[] source = {0.5};
    Signal signal = Signal.copyOf(source, 48_000);
    source[0] = 0;
    assertEquals(0.5, signal.sample(0));
  }

  /** Farina 2000: the harmonic of order n lies L ln n ahead; an octave of 10 s over 10 octaves. */
  @Test
  void aHarmonicLeadsByTheTimeOfItsInterval() {
    Sweep sweep = new Sweep(20, 20 * 1024, 10, 0, 0);
    assertEquals(1000, sweep.leadMs(2), 1e-9);
    assertEquals(2000, sweep.leadMs(4), 1e-9);
    assertEquals(200, swept(sweep).beforeOnsetMs(), 1e-9);
    assertEquals(50, swept(new Sweep(20, 20 * 1024, 1, 0, 0)).beforeOnsetMs(), 1e-9);
    assertEquals(2, IMPULSE.beforeOnsetMs());
  }

  /** Distortion within 20 dB of the sound lies ahead of it and is not taken for its onset. */
  @Test
  void strongDistortionIsNoOnset() throws Exception {
    Sweep sweep = new Sweep(20, 20_000, 1, 0, 0);
    double scale = 1 / Math.log(1000);
    double[] recorded = new double[60_000];
    for (int i = 0; i < 48_000; i++) {
      double phase = 2 * Math.PI * 20 * scale * Math.expm1(i / 48_000.0 / scale);
      double second = i < 40_000 ? 0.3 * Math.sin(2 * phase) : 0;
      recorded[4800 + i] = 0.5 * Math.sin(phase) + second;
    }
    SoundSpectrum found = of(recorded, 48_000, swept(sweep));
    assertEquals(100, found.onsetMs(), 0.1);
    assertEquals(50, found.beforeOnsetMs(), 0.2, "half of the harmonic's lead, L ln 2 = 100.3 ms");
  }

  @Test
  void aRecordingThatBeganTooLateIsRefused() {
    Sweep sweep = new Sweep(20, 20_000, 1, 0, 0);
    Signal signal = sweep.signal(48_000);
    double[] recorded = new double[50_000];
    Arrays.setAll(recorded, i -> i + 480 < signal.size() ? 0.5 * signal.sample(i + 480) : 0);
    String message = refused(recorded, swept(sweep)).getMessage();
    assertTrue(
        message.matches(
            "divided by the sweep, the response begins 10\\.[0-2] ms before the recording does"),
        "the band limit rings a few samples ahead: " + message);
  }

  /** Full scale of 16 bits is 32767: three in a row on one side are clipped, from the first on. */
  @ParameterizedTest
  @CsvSource({"32767, 1, true", "32766, 1, false", "32767, -1, false", "-32767, 1, true"})
  void threeSamplesAtFullScaleAreClipped(int step, int turn, boolean clipped) throws Exception {
    double[] samples = new double[4800];
    for (int k = 0; k < 3; k++) {
      samples[k] = step / 32_768.0 * (k == 1 ? turn : 1);
    }
    if (clipped) {
      assertEquals(
          "the sound is clipped: 3 samples in a row stand at full scale from sample 1 on",
          refused(samples, IMPULSE).getMessage());
    } else {
      SoundSpectrum.checkLevel(Signal.copyOf(samples, 48_000));
    }
  }

  private static SoundContent swept(Sweep sweep) {
    return new SoundContent(new ImpulseWindow(2, 200, 10), Optional.of(sweep));
  }
}
