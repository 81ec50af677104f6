package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.capture.Side;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;
import org.twinrig.spectrum.Filter;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.Signal;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.Sweep;

/** WAV files made in the test: every format, and every fault with its whole message. */
class CaptureSoundTest {
  private static final SoundContent IMPULSE =
      new SoundContent(new ImpulseWindow(2, 200, 10), Optional.empty());

  private static double[] click(int size, int at, double height) {
    double[] samples = new double[size];
    samples[at] = height;
    return samples;
  }

  private static String refusal(byte[] bytes) {
    return assertThrows(UnusableInput.class, () -> CaptureBytes.read(bytes)).getMessage();
  }

  /** Through bytes and back: closed form from 20 Hz to 20 kHz, in 16 bits from 40 Hz. */
  @ParameterizedTest
  @EnumSource(SampleFormat.class)
  void everyFormatHasTheFiltersLevels(SampleFormat format) throws Exception {
    Filter filter = new Filter(48_000).peak(200, 1, 6).peak(3000, 4, 8).peak(9000, 8, -15);
    double[] samples = filter.apply(click(24_000, 480, 0.4));
    Reading plain = CaptureBytes.read(WavBytes.of(format).file(samples));
    Reading extensible = CaptureBytes.read(WavBytes.of(format).asExtensible().file(samples));
    assertEquals(plain.response(), extensible.response());
    String told = "The sound is WAV, " + format.words() + ", 48000 Hz, one channel (any side)";
    assertEquals(told, plain.understood().get(1).substring(0, told.length()));
    double toleranceDb = format == SampleFormat.INTEGER_16 ? 0.05 : 0.006;
    for (double hz = 20; hz < 20_000; hz *= 1.01) {
      assertEquals(
          20 * Math.log10(0.4) + filter.levelDb(hz),
          plain.response().levelAt(hz).orElseThrow(),
          toleranceDb,
          format + " at " + hz + " Hz");
    }
  }

  /** The JDK's own writer, javax.sound.sampled, as a second source of whole-number files. */
  @ParameterizedTest
  @EnumSource(
      value = SampleFormat.class,
      names = {"INTEGER_16", "INTEGER_24", "INTEGER_32"})
  void readsWhatTheJdkWrites(SampleFormat format, @TempDir Path folder) throws Exception {
    int bytes = format.bytes();
    byte[] data = new byte[20_000 * bytes];
    data[400 * bytes + bytes - 1] = 0x40;
    AudioFormat audio =
        new AudioFormat(
            AudioFormat.Encoding.PCM_SIGNED, 48_000, 8 * bytes, 1, bytes, 48_000, false);
    Path file = folder.resolve("a.wav");
    try (AudioInputStream in =
        new AudioInputStream(new ByteArrayInputStream(data), audio, 20_000)) {
      AudioSystem.write(in, javax.sound.sampled.AudioFileFormat.Type.WAVE, file.toFile());
    }
    Response response = CaptureFile.read(file, "a.wav").response();
    assertEquals(20 * Math.log10(0.5), response.levelAt(1000).orElseThrow(), 1e-9);
  }

  @Test
  void saysWhatAnImpulseResponseWasTakenToBe() throws Exception {
    assertEquals(
        """
        capture.txt
          A curve of 606 points from 4.21 Hz to 22.8 kHz, with levels from -6.0 dB to -6.0 dB.
          The sound is WAV, 24-bit integer, 48000 Hz, one channel (any side), 12000 samples (0.250 s).
          It was taken for an impulse response.
          The onset lies at 10.000 ms; the window opens 2.0 ms before it and closes 240.0 ms after it, its ends raised cosines of up to 10.0 ms.
          The resolution is 4.17 Hz: bands that are narrower are coarse points.
          Levels are relative to full scale: one sample at full scale is 0 dB at every frequency.
          Note: the file ends 240.0 ms after the onset, before the window does; levels below 4.17 Hz are left out.
        """,
        withoutHash(
            CaptureBytes.read(WavBytes.of(SampleFormat.INTEGER_24).file(click(12_000, 480, 0.5)))));
  }

  /**
   * wValidBitsPerSample stands in bytes 38 and 39 of the file, after RIFF's head and the chunk's.
   */
  @Test
  void tellsTheBitsThatAreUsedFromTheRoomForThem() throws Exception {
    byte[] file = WavBytes.of(SampleFormat.INTEGER_32).asExtensible().file(click(600, 40, 0.5));
    assertTrue(bits(with(file, 38, (short) 24)).contains(", 32-bit integer, of which 24 bits are"));
    assertTrue(bits(with(file, 38, (short) 32)).contains(", 32-bit integer, 48000 Hz"));
    assertTrue(bits(with(file, 38, (short) 0)).contains(", 32-bit integer, 48000 Hz"));
    assertTrue(
        bits(with(file, 38, (short) 12))
            .contains("an impulse response in 12 bits loses its tail below one step"));
  }

  private static String bits(byte[] file) throws Exception {
    return CaptureBytes.read(file).report();
  }

  @Test
  void saysWhatASweepWasTakenToBe(@TempDir Path folder) throws Exception {
    Sweep sweep = new Sweep(20, 20_000, 1, 0, 0);
    Signal played = sweep.signal(48_000);
    double[] samples = new double[60_000];
    Arrays.setAll(
        samples, i -> i >= 4800 && i < 52_800 ? 0.5 * played.sample(i - 4800) + 0.01 : 0.01);
    Path file = folder.resolve("a.wav");
    Files.write(file, WavBytes.of(SampleFormat.FLOAT_32).file(samples));
    Reading reading = CaptureFile.read(file, "a.wav", swept(sweep), Side.M);
    assertEquals(
        """
          The sound is WAV, 32-bit float, 48000 Hz, one channel (any side), 60000 samples (1.250 s).
          It was taken for the recording of an exponential sweep from 20 Hz to 20 kHz in 1.00 s and divided by that sweep; the second harmonic lies 100.3 ms ahead of the response.
          The onset lies at 99.938 ms; the window opens 50.2 ms before it and closes 200.0 ms after it, its ends raised cosines of up to 10.0 ms.
          The resolution is 5 Hz: bands that are narrower are coarse points.
          Levels are relative to full scale: a recording equal to the sweep at full scale is 0 dB.
          Note: the mean of the recording, 1.3 % of full scale, was taken off.
        """,
        withoutHash(reading).lines().skip(2).collect(Collectors.joining("\n", "", "\n")));
  }

  private static String withoutHash(Reading reading) {
    String text = reading.report();
    return text.substring(0, text.indexOf("  SHA-256"));
  }

  @Test
  void aStereoFileNeedsASide(@TempDir Path folder) throws Exception {
    double[] samples = new double[24_000];
    samples[960] = 0.5;
    samples[963] = -0.25;
    Path file = folder.resolve("both.wav");
    Files.write(file, WavBytes.of(SampleFormat.FLOAT_32).withChannels(2).file(samples));
    assertEquals(
        "both.wav: the sound file has two channels, left and right, but stands for one curve (side"
            + " M); name it in two rows, side L (channel 1) and side R (channel 2), or export one"
            + " channel",
        assertThrows(UnusableInput.class, () -> CaptureFile.read(file, "both.wav")).getMessage());
    Reading left = CaptureFile.read(file, "both.wav", IMPULSE, Side.L);
    Reading right = CaptureFile.read(file, "both.wav", IMPULSE, Side.R);
    assertEquals(20 * Math.log10(0.5), left.response().levelAt(1000).orElseThrow(), 1e-9);
    assertEquals(20 * Math.log10(0.25), right.response().levelAt(1000).orElseThrow(), 1e-9);
    assertEquals(List.of(left, right), CaptureFile.readAll(file, "both.wav", IMPULSE));
    assertEquals(
        "  The sound is WAV, 32-bit float, 48000 Hz, channel 2 of 2 (side R), 12000 samples (0.250"
            + " s).",
        right.report().lines().skip(2).findFirst().orElseThrow());
  }

  @Test
  void anOddChunkBetweenIsSteppedOver() throws Exception {
    byte[] plain = WavBytes.of(SampleFormat.FLOAT_32).file(click(12_000, 480, 0.5));
    ByteBuffer padded = ByteBuffer.allocate(plain.length + 12).order(ByteOrder.LITTLE_ENDIAN);
    padded.put(plain, 0, 12).put("note".getBytes(StandardCharsets.US_ASCII)).putInt(3);
    padded.put(new byte[4]).put(plain, 12, plain.length - 12).putInt(4, padded.capacity() - 8);
    assertEquals(CaptureBytes.read(plain).response(), CaptureBytes.read(padded.array()).response());
  }

  /** A name and a spoiled file, and after the name the message as a person reads it. */
  @SuppressWarnings("ArrayRecordComponent")
  record Spoiled(String what, byte[] bytes) {
    @Override
    public String toString() {
      return what;
    }
  }

  static Stream<Spoiled> spoiled() {
    WavBytes plain = WavBytes.of(SampleFormat.INTEGER_16);
    byte[] good = plain.file(click(600, 40, 0.5));
    double[] gap = click(600, 40, 0.5);
    gap[41] = Double.NaN;
    double[] loud = click(600, 40, 0.5);
    loud[0] = 1e9;
    byte[] data = new byte[1200];
    return Stream.of(
        new Spoiled(
            "the sound file ends within its head; copy the file again, or export it again",
            Arrays.copyOf(good, 11)),
        new Spoiled(
            "the file is of the RIFF family, but holds 'AVI'; export the sound as WAV, or the response as text",
            with(good, 8, "AVI ")),
        new Spoiled(
            "the sound file is cut off: the head promises 1244 bytes, but the file has 1000; copy the file again, or export it again",
            Arrays.copyOf(good, 1000)),
        new Spoiled(
            "the sound file is cut off: the chunk 'data' promises 1200 bytes, but the file has 1000; copy the file again, or export it again",
            with(Arrays.copyOf(good, 1000), 4, 992)),
        new Spoiled(
            "the sound file is cut off: the chunk 'data' promises 2147483647 bytes, but the file has 1244; copy the file again, or export it again",
            with(good, 40, Integer.MAX_VALUE)),
        new Spoiled(
            "the sound file states no size for its samples: the recording was not finished; open it in a sound editor and save it again",
            with(good, 40, -1)),
        new Spoiled(
            "the sound file states no size for its samples: the recording was not finished; open it in a sound editor and save it again",
            with(good, 40, 0)),
        new Spoiled(
            "the sound file has no 'data' chunk; copy the file again, or export it again",
            with(good, 36, "junk")),
        new Spoiled(
            "the sound file has no 'fmt ' chunk; copy the file again, or export it again",
            with(good, 12, "junk")),
        new Spoiled(
            "the sound file has two chunks 'data'; export one recording per file", twice(good)),
        new Spoiled(
            "the sound file's format chunk is too short; export the file again",
            WavBytes.file(new byte[14], data)),
        new Spoiled(
            "the sound file has samples of 8-bit integer; export it as PCM of 16, 24 or 32 bits or as 32- or 64-bit float, mono or stereo",
            new WavBytes(1, 8, 1, 48_000, false).file(1, 0)),
        new Spoiled(
            "the sound file is coded in format 2, not as plain samples; export it as PCM of 16, 24 or 32 bits or as 32- or 64-bit float, mono or stereo",
            with(good, 20, (short) 2)),
        new Spoiled(
            "the sound file has 3 channels; export one or two channels",
            plain.withChannels(3).file(1, 0, 0)),
        new Spoiled(
            "the sound file has 0 channels; export one or two channels", with(good, 22, (short) 0)),
        new Spoiled(
            "the sound file states a sampling rate of 7999 Hz; rates from 8000 Hz to 768000 Hz are read: export the file again",
            plain.withRateHz(7999).file(1, 0)),
        new Spoiled(
            "the sound file states a sampling rate of 768001 Hz; rates from 8000 Hz to 768000 Hz are read: export the file again",
            plain.withRateHz(768_001).file(1, 0)),
        new Spoiled(
            "the sound file's format contradicts itself: 1 channel of 16-bit integer take 2 bytes, but it states 4; export the file again",
            with(good, 32, (short) 4)),
        new Spoiled(
            "the sound file's extensible format is not a known one; export it as PCM of 16, 24 or 32 bits or as 32- or 64-bit float, mono or stereo",
            with(plain.asExtensible().file(click(600, 40, 0.5)), 50, (short) 7)),
        new Spoiled(
            "the sound file's format contradicts itself: it states 24 valid bits in samples of 16; export the file again",
            with(plain.asExtensible().file(click(600, 40, 0.5)), 38, (short) 24)),
        new Spoiled(
            "the samples end within one: 1199 bytes are no multiple of 2; copy the file again, or export it again",
            WavBytes.file(plain.format(), new byte[1199])),
        new Spoiled(
            "every sample is zero; export the channel that was recorded",
            WavBytes.file(plain.format(), data)),
        new Spoiled(
            "sample 42 is not a number; export the file again, with full scale at 1",
            WavBytes.of(SampleFormat.FLOAT_64).file(gap)),
        new Spoiled(
            "sample 1 lies far beyond full scale; export the file again, with full scale at 1",
            WavBytes.of(SampleFormat.FLOAT_32).file(loud)),
        new Spoiled(
            "the sound is clipped: 3 samples in a row stand at full scale from sample 1 on; lower the level and measure again",
            plain.file(1, 1, 1, 0)),
        new Spoiled(
            "the sound has 4194305 samples, but at most 4194304 are read; cut it to the response, or to the sweep and a second after it",
            WavBytes.file(plain.format(), new byte[2 * (WavFile.MOST_FRAMES + 1)])));
  }

  @ParameterizedTest
  @MethodSource("spoiled")
  void isRefusedWithReasonAndRemedy(Spoiled spoiled) {
    assertEquals("capture.txt: " + spoiled.what(), refusal(spoiled.bytes()));
  }

  private static byte[] with(byte[] bytes, int at, String text) {
    byte[] changed = bytes.clone();
    ByteBuffer.wrap(changed).put(at, text.getBytes(StandardCharsets.US_ASCII));
    return changed;
  }

  private static byte[] with(byte[] bytes, int at, int value) {
    byte[] changed = bytes.clone();
    ByteBuffer.wrap(changed).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
    return changed;
  }

  private static byte[] with(byte[] bytes, int at, short value) {
    byte[] changed = bytes.clone();
    ByteBuffer.wrap(changed).order(ByteOrder.LITTLE_ENDIAN).putShort(at, value);
    return changed;
  }

  private static byte[] twice(byte[] good) {
    byte[] both = Arrays.copyOf(good, good.length + 1208);
    System.arraycopy(good, 36, both, good.length, 1208);
    return with(both, 4, both.length - 8);
  }

  @Property(tries = 300)
  void anyBytesAfterAHeadAreReadOrRefused(@ForAll @Size(max = 400) byte[] bytes)
      throws IOException {
    ByteBuffer file = ByteBuffer.allocate(12 + bytes.length).order(ByteOrder.LITTLE_ENDIAN);
    file.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(4 + bytes.length);
    file.put("WAVE".getBytes(StandardCharsets.US_ASCII)).put(bytes);
    assertReadOrRefused(file.array());
  }

  @Property(tries = 300)
  void aDamagedFileIsReadOrRefused(
      @ForAll @IntRange(min = 0, max = 2443) int place,
      @ForAll byte value,
      @ForAll @IntRange(min = 0, max = 2444) int length,
      @ForAll boolean cut) {
    byte[] bytes = WavBytes.of(SampleFormat.FLOAT_32).file(click(600, 40, 0.5));
    bytes[place] = value;
    assertReadOrRefused(cut ? Arrays.copyOf(bytes, length) : bytes);
  }

  @Property(tries = 300)
  void anySamplesAreReadOrRefused(
      @ForAll @Size(min = 2, max = 400) byte[] data, @ForAll SampleFormat format) {
    assertReadOrRefused(WavBytes.file(WavBytes.of(format).format(), data));
  }

  private static void assertReadOrRefused(byte[] bytes) {
    try {
      Reading reading = CaptureBytes.read(bytes);
      assertTrue(reading.response().size() >= 2);
      assertFalse(reading.report().contains("NaN"));
    } catch (UnusableInput refusal) {
      assertTrue(refusal.getMessage().startsWith("capture.txt:"), refusal.getMessage());
      assertFalse(refusal.getMessage().contains("\n"), refusal.getMessage());
    }
  }

  private static SoundContent swept(Sweep sweep) {
    return new SoundContent(new ImpulseWindow(2, 200, 10), Optional.of(sweep));
  }
}
