package org.twinrig.intake;

/** How one sample stands in a sound file. */
public enum SampleFormat {
  /** Two bytes, whole numbers. */
  INTEGER_16("16-bit integer", 2),
  /** Three bytes, whole numbers. */
  INTEGER_24("24-bit integer", 3),
  /** Four bytes, whole numbers. */
  INTEGER_32("32-bit integer", 4),
  /** Four bytes, IEEE 754 single precision. */
  FLOAT_32("32-bit float", 4),
  /** Eight bytes, IEEE 754 double precision. */
  FLOAT_64("64-bit float", 8);

  private final String words;
  private final int bytes;

  SampleFormat(String words, int bytes) {
    this.words = words;
    this.bytes = bytes;
  }

  /** The format in words: for example {@code 24-bit integer}. */
  public String words() {
    return words;
  }

  /**
   * The format in words, with the bits that are used where these are fewer.
   *
   * @param validBits how many bits of a sample are used
   * @return for example {@code 32-bit integer, of which 24 bits are used}
   */
  public String words(int validBits) {
    return validBits == 8 * bytes ? words : words + ", of which " + validBits + " bits are used";
  }

  /** Bytes of one sample of one channel. */
  int bytes() {
    return bytes;
  }
}
