package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** A WAV file made of a test's own samples, as every tag and size can be set. */
public record WavBytes(int tag, int bits, int channels, int rateHz, boolean extensible) {
  private static final byte[] SUBFORMAT_TAIL = {
    0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xaa, 0, 0x38, (byte) 0x9b, 0x71
  };

  /** Mono, 48 kHz. */
  public static WavBytes of(SampleFormat format) {
    return switch (format) {
      case INTEGER_16 -> new WavBytes(1, 16, 1, 48_000, false);
      case INTEGER_24 -> new WavBytes(1, 24, 1, 48_000, false);
      case INTEGER_32 -> new WavBytes(1, 32, 1, 48_000, false);
      case FLOAT_32 -> new WavBytes(3, 32, 1, 48_000, false);
      case FLOAT_64 -> new WavBytes(3, 64, 1, 48_000, false);
    };
  }

  public WavBytes withChannels(int other) {
    return new WavBytes(tag, bits, other, rateHz, extensible);
  }

  public WavBytes withRateHz(int other) {
    return new WavBytes(tag, bits, channels, other, extensible);
  }

  public WavBytes asExtensible() {
    return new WavBytes(tag, bits, channels, rateHz, true);
  }

  /** Interleaved samples, 1 at full scale; whole numbers are rounded and held within the scale. */
  public byte[] file(double... samples) {
    ByteBuffer data = ByteBuffer.allocate(samples.length * bits / 8).order(ByteOrder.LITTLE_ENDIAN);
    for (double sample : samples) {
      put(data, sample);
    }
    return file(format(), data.array());
  }

  /** A file of a format chunk and a data chunk as they are. */
  static byte[] file(byte[] format, byte[] data) {
    ByteBuffer file =
        ByteBuffer.allocate(28 + format.length + data.length + data.length % 2)
            .order(ByteOrder.LITTLE_ENDIAN);
    file.put(ascii("RIFF")).putInt(file.capacity() - 8).put(ascii("WAVE"));
    file.put(ascii("fmt ")).putInt(format.length).put(format);
    file.put(ascii("data")).putInt(data.length).put(data);
    return file.array();
  }

  byte[] format() {
    ByteBuffer chunk = ByteBuffer.allocate(extensible ? 40 : 16).order(ByteOrder.LITTLE_ENDIAN);
    int frameBytes = channels * bits / 8;
    chunk.putShort((short) (extensible ? 0xfffe : tag)).putShort((short) channels);
    chunk.putInt(rateHz).putInt(rateHz * frameBytes);
    chunk.putShort((short) frameBytes).putShort((short) bits);
    if (extensible) {
      chunk.putShort((short) 22).putShort((short) bits).putInt(3);
      chunk.putShort((short) tag).put(SUBFORMAT_TAIL);
    }
    return chunk.array();
  }

  private void put(ByteBuffer data, double sample) {
    if (tag == 3 && bits == 64) {
      data.putDouble(sample);
    } else if (tag == 3) {
      data.putFloat((float) sample);
    } else {
      double steps = Math.pow(2, bits - 1);
      long whole = (long) Math.max(-steps, Math.min(steps - 1, Math.rint(sample * steps)));
      for (int b = 0; b < bits / 8; b++) {
        data.put((byte) (whole >> (8 * b)));
      }
    }
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
