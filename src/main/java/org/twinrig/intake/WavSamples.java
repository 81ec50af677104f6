package org.twinrig.intake;

import java.nio.ByteBuffer;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.Signal;

/** The samples of one channel, 1 at full scale. */
final class WavSamples {
  /** Some 90 s at 48 kHz; a capture that long is a mix-up, and would fill the memory. */
  static final int MOST_FRAMES = 1 << 22;

  /** A float sample this far above full scale is no sound. */
  private static final double MOST = 1e6;

  private WavSamples() {}

  /**
   * Decodes a channel.
   *
   * @param channel from 0
   */
  static Signal of(ByteBuffer data, WavFormat format, int channel, Remarks remarks)
      throws UnusableInput {
    int frames = frames(data, format, remarks);
    double[] samples = new double[frames];
    for (int i = 0; i < frames; i++) {
      int at = i * format.frameBytes() + channel * format.sample().bytes();
      samples[i] = sample(data, at, format.sample());
      if (!(Math.abs(samples[i]) <= MOST)) {
        throw remarks.refuse(
            0,
            "sample "
                + (i + 1)
                + (Double.isNaN(samples[i]) ? " is not a number" : " lies far beyond full scale"),
            "export the file again, with full scale at 1");
      }
    }
    return Signal.copyOf(samples, format.rateHz());
  }

  private static int frames(ByteBuffer data, WavFormat format, Remarks remarks)
      throws UnusableInput {
    if (data.capacity() % format.frameBytes() != 0) {
      throw remarks.refuse(
          0,
          "the samples end within one: "
              + data.capacity()
              + " bytes are no multiple of "
              + format.frameBytes(),
          "copy the file again, or export it again");
    }
    int frames = data.capacity() / format.frameBytes();
    if (frames > MOST_FRAMES) {
      throw remarks.refuse(
          0,
          "the sound has " + frames + " samples, but at most " + MOST_FRAMES + " are read",
          "cut it to the response, or to the sweep and a second after it");
    }
    return frames;
  }

  private static double sample(ByteBuffer data, int at, SampleFormat format) {
    return switch (format) {
      case INTEGER_16 -> data.getShort(at) / 0x1p15;
      case INTEGER_24 ->
          ((data.get(at + 2) << 16) | Short.toUnsignedInt(data.getShort(at))) / 0x1p23;
      case INTEGER_32 -> data.getInt(at) / 0x1p31;
      case FLOAT_32 -> data.getFloat(at);
      case FLOAT_64 -> data.getDouble(at);
    };
  }
}
