package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;

/**
 * What the chunk {@code fmt} of a WAV file says.
 *
 * <p>Source: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991;
 * WAVEFORMATEXTENSIBLE as Microsoft documents it in mmreg.h (both from memory).
 */
record WavFormat(SampleFormat sample, int validBits, int channels, int rateHz) {
  private static final int PCM = 1;
  private static final int IEEE_FLOAT = 3;
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
  private static final String REMEDY =
      "export it as PCM of 16, 24 or 32 bits or as 32- or 64-bit float, mono or stereo";

  static WavFormat of(ByteBuffer chunk, Remarks remarks) throws UnusableInput {
    if (chunk.capacity() < PLAIN_BYTES) {
      throw remarks.refuse(
          0, "the sound file's format chunk is too short", "export the file again");
    }
    int channels = Short.toUnsignedInt(chunk.getShort(2));
    long rateHz = Integer.toUnsignedLong(chunk.getInt(4));
    int frameBytes = Short.toUnsignedInt(chunk.getShort(12));
    SampleFormat sample = sample(chunk, remarks);
    if (channels < 1 || channels > 2) {
      throw remarks.refuse(
          0,
          "the sound file has " + Numbers.count(channels, "channel", "channels"),
          "export one or two channels");
    }
    if (rateHz < LEAST_RATE_HZ || rateHz > MOST_RATE_HZ) {
      throw remarks.refuse(
          0,
          "the sound file states a sampling rate of " + rateHz + " Hz",
          "rates from 8000 Hz to 768000 Hz are read: export the file again");
    }
    if (frameBytes != channels * sample.bytes()) {
      throw remarks.refuse(
          0,
          "the sound file's format contradicts itself: "
              + Numbers.count(channels, "channel", "channels")
              + " of "
              + sample.words()
              + " take "
              + channels * sample.bytes()
              + " bytes, but it states "
              + frameBytes,
          "export the file again");
    }
    return new WavFormat(sample, validBits(chunk, sample, remarks), channels, (int) rateHz);
  }

  int frameBytes() {
    return channels * sample.bytes();
  }

  /** Fewer than a sample has room for where the extensible format says so; 0 there says nothing. */
  private static int validBits(ByteBuffer chunk, SampleFormat sample, Remarks remarks)
      throws UnusableInput {
    int room = 8 * sample.bytes();
    boolean extensible = Short.toUnsignedInt(chunk.getShort(0)) == EXTENSIBLE;
    boolean whole = sample != SampleFormat.FLOAT_32 && sample != SampleFormat.FLOAT_64;
    int stated = extensible && whole ? Short.toUnsignedInt(chunk.getShort(VALID_BITS_AT)) : 0;
    if (stated > room) {
      throw remarks.refuse(
          0,
          "the sound file's format contradicts itself: it states "
              + stated
              + " valid bits in samples of "
              + room,
          "export the file again");
    }
    return stated == 0 ? room : stated;
  }

  private static SampleFormat sample(ByteBuffer chunk, Remarks remarks) throws UnusableInput {
    int tag = tag(chunk, remarks);
    int bits = Short.toUnsignedInt(chunk.getShort(14));
    return known(tag, bits)
        .orElseThrow(
            () ->
                remarks.refuse(
                    0,
                    tag == PCM || tag == IEEE_FLOAT
                        ? "the sound file has samples of "
                            + bits
                            + "-bit "
                            + (tag == PCM ? "integer" : "float")
                        : "the sound file is coded in format " + tag + ", not as plain samples",
                    REMEDY));
  }

  private static Optional<SampleFormat> known(int tag, int bits) {
    return switch (tag + ":" + bits) {
      case PCM + ":16" -> Optional.of(SampleFormat.INTEGER_16);
      case PCM + ":24" -> Optional.of(SampleFormat.INTEGER_24);
      case PCM + ":32" -> Optional.of(SampleFormat.INTEGER_32);
      case IEEE_FLOAT + ":32" -> Optional.of(SampleFormat.FLOAT_32);
      case IEEE_FLOAT + ":64" -> Optional.of(SampleFormat.FLOAT_64);
      default -> Optional.empty();
    };
  }

  /** The format tag, that of the subformat where the format is extensible. */
  private static int tag(ByteBuffer chunk, Remarks remarks) throws UnusableInput {
    int tag = Short.toUnsignedInt(chunk.getShort(0));
    if (tag != EXTENSIBLE) {
      return tag;
    }
    byte[] tail = new byte[SUBFORMAT_TAIL.length];
    if (chunk.capacity() >= EXTENSIBLE_BYTES) {
      chunk.get(SUBFORMAT_AT + 2, tail);
    }
    if (!Arrays.equals(tail, SUBFORMAT_TAIL)) {
      throw remarks.refuse(0, "the sound file's extensible format is not a known one", REMEDY);
    }
    return Short.toUnsignedInt(chunk.getShort(SUBFORMAT_AT));
  }
}
