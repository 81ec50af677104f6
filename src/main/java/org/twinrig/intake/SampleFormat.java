package org.twinrig.intake;

import java.util.Optional;
import java.util.stream.Stream;

/** How one sample stands in a sound file: whole numbers, or IEEE 754 of either precision. */
public enum SampleFormat {
  INTEGER_16(SampleFormat.PCM, 16),
  INTEGER_24(SampleFormat.PCM, 24),
  INTEGER_32(SampleFormat.PCM, 32),
  FLOAT_32(SampleFormat.IEEE_FLOAT, 32),
  FLOAT_64(SampleFormat.IEEE_FLOAT, 64);

  static final int PCM = 1;
  static final int IEEE_FLOAT = 3;

  private final int tag;
  final int bits;

  SampleFormat(int tag, int bits) {
    this.tag = tag;
    this.bits = bits;
  }

  /** The format of a WAV file's format tag and bits per sample. */
  static Optional<SampleFormat> of(int tag, int bits) {
    return Stream.of(values()).filter(f -> f.tag == tag && f.bits == bits).findFirst();
  }

  /** In words: for example {@code 24-bit integer}. */
  static String words(int tag, int bits) {
    return bits + "-bit " + (tag == PCM ? "integer" : "float");
  }

  String words() {
    return words(tag, bits);
  }

  /** Bytes of one sample of one channel. */
  int bytes() {
    return bits / 8;
  }

  boolean isWhole() {
    return tag == PCM;
  }
}
