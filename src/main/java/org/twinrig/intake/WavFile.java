package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.Signal;

/**
 * A WAV file. Every size a header states is held against the bytes there are; nothing is allocated
 * by it. The JDK's {@code javax.sound.sampled} would not do: it opens a cut-off file and gives it
 * the length its head states.
 *
 * <p>Source: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991,
 * "Resource Interchange File Format" and "Waveform Audio File Format"; WAVEFORMATEXTENSIBLE as
 * Microsoft documents it in mmreg.h (all from memory).
 */
final class WavFile {
  /** Some 90 s at 48 kHz; a capture that long is a mix-up, and would fill the memory. */
  static final int MOST_FRAMES = 1 << 22;

  private static final int HEAD_BYTES = 12;
  private static final int CHUNK_HEAD_BYTES = 8;

  /** Recorders that stream write this, or 0, when they never come back to fill in the size. */
  private static final long UNFINISHED = 0xffff_ffffL;

  private static final int EXTENSIBLE = 0xfffe;
  private static final int PLAIN_BYTES = 16;
  private static final int EXTENSIBLE_BYTES = 40;
  private static final int VALID_BITS_AT = 18;
  private static final int SUBFORMAT_AT = 24;

  /** The last 14 bytes of a subformat that continues a plain format tag. */
  private static final byte[] SUBFORMAT_TAIL = {
    0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xaa, 0, 0x38, (byte) 0x9b, 0x71
  };

  /** Telephone speech and the fastest converters of measurement. */
  private static final long LEAST_RATE_HZ = 8000;

  private static final long MOST_RATE_HZ = 768_000;

  /** A float sample this far above full scale is no sound. */
  private static final double MOST_SAMPLE = 1e6;

  private static final String COPY_AGAIN = "copy the file again, or export it again";
  private static final String EXPORT_AGAIN = "export the file again";
  private static final String EXPORT_PLAIN =
      "export it as PCM of 16, 24 or 32 bits or as 32- or 64-bit float, mono or stereo";

  private final ByteBuffer bytes;
  private final Remarks remarks;
  private ByteBuffer format;
  private ByteBuffer data;
  final SampleFormat sample;

  /** How many bits of a sample are used, the upper ones. */
  final int validBits;

  final int channels;
  final int rateHz;

  WavFile(byte[] content, Remarks remarks) throws UnusableInput {
    this.bytes = ByteBuffer.wrap(content).order(ByteOrder.LITTLE_ENDIAN);
    this.remarks = remarks;
    checkHead();
    walk();
    if (format == null || data == null) {
      throw remarks.refuse(
          "the sound file has no '" + (format == null ? "fmt " : "data") + "' chunk", COPY_AGAIN);
    }
    if (format.capacity() < PLAIN_BYTES) {
      throw remarks.refuse("the sound file's format chunk is too short", EXPORT_AGAIN);
    }
    this.channels = Short.toUnsignedInt(format.getShort(2));
    long rate = Integer.toUnsignedLong(format.getInt(4));
    this.sample = sampleFormat();
    checkFormat(rate);
    this.rateHz = (int) rate;
    this.validBits = statedBits();
  }

  /** Whether the content is a RIFF file, whatever its name says. */
  static boolean isBegunBy(byte[] bytes) {
    return bytes.length >= 4 && name(ByteBuffer.wrap(bytes), 0).equals("RIFF");
  }

  /** The samples of a channel, from 1; 1 at full scale. */
  Signal channel(int channel) throws UnusableInput {
    double[] samples = new double[frames()];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = sampleAt((i * channels + channel - 1) * sample.bytes());
      if (!(Math.abs(samples[i]) <= MOST_SAMPLE)) {
        throw remarks.refuse(
            "sample "
                + (i + 1)
                + (Double.isNaN(samples[i]) ? " is not a number" : " lies far beyond full scale"),
            "export the file again, with full scale at 1");
      }
    }
    return Signal.copyOf(samples, rateHz);
  }

  private int frames() throws UnusableInput {
    int frameBytes = channels * sample.bytes();
    if (data.capacity() % frameBytes != 0) {
      throw remarks.refuse(
          "the samples end within one: "
              + data.capacity()
              + " bytes are no multiple of "
              + frameBytes,
          COPY_AGAIN);
    }
    int frames = data.capacity() / frameBytes;
    if (frames > MOST_FRAMES) {
      throw remarks.refuse(
          "the sound has " + frames + " samples, but at most " + MOST_FRAMES + " are read",
          "cut it to the response, or to the sweep and a second after it");
    }
    return frames;
  }

  private double sampleAt(int at) {
    return switch (sample) {
      case INTEGER_16 -> data.getShort(at) / 0x1p15;
      case INTEGER_24 ->
          ((data.get(at + 2) << 16) | Short.toUnsignedInt(data.getShort(at))) / 0x1p23;
      case INTEGER_32 -> data.getInt(at) / 0x1p31;
      case FLOAT_32 -> data.getFloat(at);
      case FLOAT_64 -> data.getDouble(at);
    };
  }

  private void checkHead() throws UnusableInput {
    if (bytes.capacity() < HEAD_BYTES) {
      throw remarks.refuse("the sound file ends within its head", COPY_AGAIN);
    }
    if (!name(bytes, 8).equals("WAVE")) {
      throw remarks.refuse(
          "the file is of the RIFF family, but holds " + Remarks.excerpt(name(bytes, 8)),
          "export the sound as WAV, or the response as text");
    }
    long stated = size(4) + CHUNK_HEAD_BYTES;
    if (size(4) != UNFINISHED && size(4) != 0 && stated > bytes.capacity() + 1L) {
      throw cutOff("the head promises " + stated + " bytes");
    }
  }

  /** Walks over the chunks, each at an even place. */
  private void walk() throws UnusableInput {
    long at = HEAD_BYTES;
    while (at + CHUNK_HEAD_BYTES <= bytes.capacity()) {
      String name = name(bytes, (int) at);
      long size = size((int) at + 4);
      long start = at + CHUNK_HEAD_BYTES;
      if (name.equals("data") && (size == UNFINISHED || size == 0)) {
        throw remarks.refuse(
            "the sound file states no size for its samples: the recording was not finished",
            "open it in a sound editor and save it again");
      }
      if (start + size > bytes.capacity()) {
        throw cutOff("the chunk " + Remarks.excerpt(name) + " promises " + size + " bytes");
      }
      keep(name, bytes.slice((int) start, (int) size).order(ByteOrder.LITTLE_ENDIAN));
      at = start + size + size % 2;
    }
    if (at < bytes.capacity()) {
      remarks.note(0, "bytes after the last chunk were left out");
    }
  }

  private void keep(String name, ByteBuffer content) throws UnusableInput {
    boolean twice = name.equals("fmt ") ? format != null : name.equals("data") && data != null;
    if (twice) {
      throw remarks.refuse(
          "the sound file has two chunks '" + name + "'", "export one recording per file");
    }
    switch (name) {
      case "fmt " -> format = content;
      case "data" -> data = content;
      default -> {}
    }
  }

  private UnusableInput cutOff(String promise) {
    return remarks.refuse(
        "the sound file is cut off: " + promise + ", but the file has " + bytes.capacity(),
        COPY_AGAIN);
  }

  private long size(int at) {
    return Integer.toUnsignedLong(bytes.getInt(at));
  }

  /** Four characters; what cannot be printed stands as a question mark. */
  private static String name(ByteBuffer bytes, int at) {
    byte[] four = new byte[4];
    bytes.get(at, four);
    return new String(four, StandardCharsets.ISO_8859_1).replaceAll("[^ -~]", "?");
  }

  private SampleFormat sampleFormat() throws UnusableInput {
    int tag = tag();
    int bits = Short.toUnsignedInt(format.getShort(14));
    boolean plain = tag == SampleFormat.PCM || tag == SampleFormat.IEEE_FLOAT;
    return SampleFormat.of(tag, bits)
        .orElseThrow(
            () ->
                remarks.refuse(
                    plain
                        ? "the sound file has samples of " + SampleFormat.words(tag, bits)
                        : "the sound file is coded in format " + tag + ", not as plain samples",
                    EXPORT_PLAIN));
  }

  /** The format tag, that of the subformat where the format is extensible. */
  private int tag() throws UnusableInput {
    int tag = Short.toUnsignedInt(format.getShort(0));
    if (tag != EXTENSIBLE) {
      return tag;
    }
    byte[] tail = new byte[SUBFORMAT_TAIL.length];
    if (format.capacity() >= EXTENSIBLE_BYTES) {
      format.get(SUBFORMAT_AT + 2, tail);
    }
    if (!Arrays.equals(tail, SUBFORMAT_TAIL)) {
      throw remarks.refuse("the sound file's extensible format is not a known one", EXPORT_PLAIN);
    }
    return Short.toUnsignedInt(format.getShort(SUBFORMAT_AT));
  }

  private void checkFormat(long rate) throws UnusableInput {
    String count = Numbers.count(channels, "channel", "channels");
    if (channels < 1 || channels > 2) {
      throw remarks.refuse("the sound file has " + count, "export one or two channels");
    }
    if (rate < LEAST_RATE_HZ || rate > MOST_RATE_HZ) {
      throw remarks.refuse(
          "the sound file states a sampling rate of " + rate + " Hz",
          "rates from 8000 Hz to 768000 Hz are read: export the file again");
    }
    int stated = Short.toUnsignedInt(format.getShort(12));
    if (stated != channels * sample.bytes()) {
      throw contradicts(
          count
              + " of "
              + sample.words()
              + " take "
              + channels * sample.bytes()
              + " bytes, but it states "
              + stated);
    }
  }

  /** Fewer than a sample has room for where the extensible format says so; 0 there says nothing. */
  private int statedBits() throws UnusableInput {
    boolean extensible = Short.toUnsignedInt(format.getShort(0)) == EXTENSIBLE;
    int stated =
        extensible && sample.isWhole() ? Short.toUnsignedInt(format.getShort(VALID_BITS_AT)) : 0;
    if (stated > sample.bits) {
      throw contradicts("it states " + stated + " valid bits in samples of " + sample.bits);
    }
    return stated == 0 ? sample.bits : stated;
  }

  private UnusableInput contradicts(String how) {
    return remarks.refuse("the sound file's format contradicts itself: " + how, EXPORT_AGAIN);
  }
}
