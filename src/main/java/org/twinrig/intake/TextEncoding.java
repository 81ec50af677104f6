package org.twinrig.intake;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How bytes stand for characters. */
public enum TextEncoding {
  /** UTF-8, of which plain ASCII is a part. */
  UTF_8("UTF-8", StandardCharsets.UTF_8),
  /** ISO 8859-1; taken when the bytes are no valid UTF-8. */
  LATIN_1("Latin-1", StandardCharsets.ISO_8859_1),
  /** UTF-16, low byte first. */
  UTF_16LE("UTF-16, low byte first", StandardCharsets.UTF_16LE),
  /** UTF-16, high byte first. */
  UTF_16BE("UTF-16, high byte first", StandardCharsets.UTF_16BE);

  private final String words;
  private final Charset charset;

  TextEncoding(String words, Charset charset) {
    this.words = words;
    this.charset = charset;
  }

  /** The encoding in words: for example {@code UTF-8}. */
  public String words() {
    return words;
  }

  Charset charset() {
    return charset;
  }
}
