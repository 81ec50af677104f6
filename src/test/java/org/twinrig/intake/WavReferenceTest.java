package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.ReferenceTable;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Side;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.Sweep;

/**
 * Files written by scipy.io.wavfile against the levels scipy.signal.sosfreqz gives for the same
 * filter (a peak and a high-pass); {@code reference/wav/make_wav_reference.py} made both.
 */
class WavReferenceTest {
  private static final Path FOLDER = Path.of("src/test/resources/reference/wav");
  private static final SoundContent SWEPT =
      new SoundContent(new ImpulseWindow(2, 200, 10), Optional.of(new Sweep(10, 22_000, 4, 0, 0)));

  private static Response read(String name, SoundContent content, Side side) throws Exception {
    return CaptureFile.read(FOLDER.resolve(name), name, content, side).response();
  }

  /**
   * Thinning may take 0.005 dB. In 16 bits the tail of the high-pass is rounded away: 0.3 dB at 20
   * Hz, where the level is 18 dB below the passband's.
   */
  @ParameterizedTest
  @CsvSource({
    "impulse_48000_int16.wav, 48000, 6.020599913, 0.3",
    "impulse_48000_int24.wav, 48000, 0, 0.006",
    "impulse_48000_int32.wav, 48000, 0, 0.006",
    "impulse_48000_float32.wav, 48000, 0, 0.006",
    "impulse_48000_float64.wav, 48000, 0, 0.006",
    "impulse_44100_int24.wav, 44100, 0, 0.006",
    "impulse_96000_int24.wav, 96000, 0, 0.006"
  })
  void anImpulseResponseHasTheFiltersLevels(
      String name, int rateHz, double aboveDb, double toleranceDb) throws Exception {
    Response response =
        read(name, new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty()), Side.M);
    double worstDb = worstDb(response, rateHz, aboveDb);
    assertTrue(worstDb <= toleranceDb, name + " is off by " + worstDb + " dB");
  }

  @Test
  void eachSideOfAStereoFileIsItsOwnChannel() throws Exception {
    String name = "impulse_48000_stereo_float32.wav";
    Response left =
        read(name, new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty()), Side.L);
    Response right =
        read(name, new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty()), Side.R);
    assertEquals(
        read(
            "impulse_48000_float32.wav",
            new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty()),
            Side.M),
        left);
    assertTrue(worstDb(right, 48_000, 20 * Math.log10(0.5)) <= 0.006);
  }

  /** The recording carries 10 % of second and 5 % of third harmonic, which must not show. */
  @Test
  void aSweepHasTheFiltersLevelsWithoutItsHarmonics() throws Exception {
    Response response = read("sweep_48000_int16.wav", SWEPT, Side.M);
    double lowDb = worstDb(response, 48_000, 0, 20, 40);
    assertTrue(lowDb <= 0.06, "off by " + lowDb + " dB below 40 Hz");
    double worstDb = worstDb(response, 48_000, 0, 40, 20_000);
    assertTrue(worstDb <= 0.01, "off by " + worstDb + " dB");
    assertTrue(response.fromHz() >= 10 && response.fromHz() < 12, response.toString());
    assertTrue(response.toHz() <= 22_000 && response.toHz() > 21_990, response.toString());
  }

  /** The filter's levels, taken over bands on a grid much finer than the file's own points. */
  @Test
  void bandLevelsAreThoseOfTheFilter() throws Exception {
    Response response =
        read(
            "impulse_48000_float64.wav",
            new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty()),
            Side.M);
    List<Map<String, String>> rows = ReferenceTable.rows("wav/levels_48000.csv");
    Response golden =
        Response.copyOf(ReferenceTable.column(rows, "hz"), ReferenceTable.column(rows, "level_db"));
    BandGrid grid = BandGrid.covering(25, 18_000, 12);
    Levels ours = Levels.of(response, grid);
    Levels theirs = Levels.of(golden, grid);
    for (int b = 0; b < grid.size(); b++) {
      // Thinning may take 0.005 dB; between golden points the curve bends by up to 0.003 dB.
      assertEquals(theirs.db(b), ours.db(b), 0.008, grid.band(b).toString());
    }
    assertFalse(Levels.of(response, BandGrid.covering(3, 10, 12)).has(0));
  }

  private static double worstDb(Response response, int rateHz, double aboveDb) {
    return worstDb(response, rateHz, aboveDb, 20, 20_000);
  }

  private static double worstDb(
      Response response, int rateHz, double aboveDb, double fromHz, double toHz) {
    List<Map<String, String>> rows = ReferenceTable.rows("wav/levels_" + rateHz + ".csv");
    assertTrue(rows.size() > 230);
    double worst = 0;
    for (Map<String, String> row : rows) {
      double hz = Double.parseDouble(row.get("hz"));
      if (hz < fromHz || hz > toHz) {
        continue;
      }
      double levelDb = response.levelAt(Double.parseDouble(row.get("hz"))).orElseThrow();
      worst =
          Math.max(worst, Math.abs(levelDb - aboveDb - Double.parseDouble(row.get("level_db"))));
    }
    return worst;
  }
}
